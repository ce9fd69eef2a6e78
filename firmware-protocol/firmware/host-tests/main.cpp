// SPDX-License-Identifier: MIT
// Runs every registered test and says how many passed; fails when one did, or when there were none.
#include "test.h"

std::vector<Test>& allTests() {
  static std::vector<Test> tests;
  return tests;
}
int failuresInTest = 0;
std::string vectorFolder;

int main(int count, char** arguments) {
  vectorFolder = count > 1 ? arguments[1] : "../vectors";
  int passed = 0;
  int failed = 0;
  for (const Test& test : allTests()) {
    failuresInTest = 0;
    test.run();
    if (failuresInTest == 0) ++passed;
    else {
      ++failed;
      std::cout << "FAILED " << test.name << "\n";
    }
  }
  std::cout << passed << " passed, " << failed << " failed\n";
  return failed == 0 && passed > 0 ? 0 : 1;
}
