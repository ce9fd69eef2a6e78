// SPDX-License-Identifier: MIT
// The smallest test bench for the logic: named tests that register themselves, expectations that count and go on.
#pragma once
#include <stdint.h>

#include <functional>
#include <iostream>
#include <string>
#include <vector>

struct Test {
  std::string name;
  std::function<void()> run;
};

std::vector<Test>& allTests();
extern int failuresInTest;
/** Where the golden vectors are. */
extern std::string vectorFolder;

struct TestEntry {
  TestEntry(const char* name, std::function<void()> run) { allTests().push_back({name, run}); }
};

template <class A, class B>
void expectSame(const A& got, const B& wanted, const char* what, const char* file, int line) {
  const auto a = static_cast<long long>(got);
  const auto b = static_cast<long long>(wanted);
  if (a == b) return;
  ++failuresInTest;
  std::cout << "  " << file << ":" << line << " " << what << ": got " << a << ", wanted " << b << "\n";
}

#define JOIN2(a, b) a##b
#define JOIN(a, b) JOIN2(a, b)
#define TEST(name)                                                  \
  static void JOIN(test, __LINE__)();                               \
  static const TestEntry JOIN(entry, __LINE__)(name, JOIN(test, __LINE__)); \
  static void JOIN(test, __LINE__)()
#define EXPECT(got, wanted) expectSame((got), (wanted), #got, __FILE__, __LINE__)
