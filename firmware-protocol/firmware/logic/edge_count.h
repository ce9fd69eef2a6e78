// SPDX-License-Identifier: MIT
// What the Hall interrupts keep: running counts, the stamp of the last captured edge, the storm guard.
// A line with more than 24 edges in a millisecond is masked until somebody asks for it again.
#pragma once
#include <stdint.h>

#include "ticks.h"

struct EdgeCount {
  static constexpr uint8_t kStorm = 24;
  enum Line : uint8_t { captured = 1, hallB = 2, hallC = 4 };

  uint8_t edgesB = 0;
  uint8_t edgesC = 0;
  uint8_t badHall = 0;
  uint16_t edgesA = 0;
  Tick lastEdge = 0;
  /** Two last distances make one electrical turn; 65535: that or more. */
  uint16_t distance = 0xFFFF;
  uint16_t distanceBefore = 0xFFFF;
  uint8_t inThisMs[3] = {};
  volatile uint8_t masked = 0;

  /** One captured edge; gives the distance to the one before, saturated. */
  uint16_t capture(Tick at) {
    const Tick gap = at - lastEdge;
    distanceBefore = distance;
    distance = gap > 0xFFFF ? 0xFFFF : static_cast<uint16_t>(gap);
    lastEdge = at;
    ++edgesA;
    guard(0, captured);
    return distance;
  }
  void edgeB() {
    ++edgesB;
    guard(1, hallB);
  }
  void edgeC() {
    ++edgesC;
    guard(2, hallC);
  }
  /** Three lines 120 degrees apart are never all alike. */
  void state(bool a, bool b, bool c) {
    if (a == b && b == c) ++badHall;
  }

 private:
  void guard(uint8_t index, uint8_t line) {
    if (++inThisMs[index] > kStorm) masked |= line;
  }
};
