// SPDX-License-Identifier: MIT
// What the Hall interrupts keep: running counts, the stamp of the last captured edge, the storm guard.
// A line with more than 24 edges in a millisecond is masked until somebody asks for it again.
#pragma once
#include <stdint.h>

#include "ticks.h"

/** In an interrupt a call costs the saving of every register it might use. */
#define IN_INTERRUPT __attribute__((always_inline)) inline

struct EdgeCount {
  static constexpr uint8_t kStorm = 24;
  enum Line : uint8_t { captured = 1, hallB = 2, hallC = 4 };

  uint8_t edgesB = 0;
  uint8_t edgesC = 0;
  uint8_t badHall = 0;
  uint16_t edgesA = 0;
  /** Two last distances make one electrical turn; 65535: that or more. */
  uint16_t distance = 0xFFFF;
  uint16_t distanceBefore = 0xFFFF;
  uint8_t inThisMs[3] = {};
  volatile uint8_t masked = 0;

  Tick lastEdge() const { return static_cast<Tick>(lastRounds_) << 16 | lastCount_; }
  /** One captured edge, as rounds of the timer and its count: 32 bits at once cost this compiler too many registers.
   *  Gives the distance to the one before, saturated. */
  IN_INTERRUPT uint16_t capture(uint16_t rounds, uint16_t count) {
    const uint16_t lastCount = lastCount_;
    uint16_t whole = rounds - lastRounds_;
    lastRounds_ = rounds;
    lastCount_ = count;
    if (count < lastCount) --whole;
    distanceBefore = distance;
    distance = whole == 0 ? count - lastCount : 0xFFFF;
    ++edgesA;
    return distance;
  }
  IN_INTERRUPT void edgeB() { ++edgesB; }
  IN_INTERRUPT void edgeC() { ++edgesC; }
  /** To be asked once after each edge: true when the line is to be masked, which it is from now on. */
  IN_INTERRUPT bool storms(Line line) {
    // Lines are bits 0 to 2.
    if (++inThisMs[line >> 1] <= kStorm) return false;
    masked |= line;
    return true;
  }
  /** A bit for each line that is high, wherever it stands; three lines 120 degrees apart are never all alike. */
  IN_INTERRUPT void state(uint8_t high, uint8_t all) {
    if (high == 0 || high == all) ++badHall;
  }

 private:
  uint16_t lastRounds_ = 0;
  uint16_t lastCount_ = 0;
};
