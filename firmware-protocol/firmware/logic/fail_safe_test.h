// SPDX-License-Identifier: MIT
// Throttle pulses stop on purpose; how long until the motor slows? Done when an electrical turn takes 30 % longer
// than before, or when the time is up. Distances in ticks.
#pragma once
#include <stdint.h>

#include "ticks.h"

class FailSafeTest {
 public:
  static constexpr uint16_t kNotSlowed = 0xFFFF;
  static constexpr uint16_t kLongestMs = 2000;

  void begin(uint32_t turnTicks, uint16_t longestMs) {
    wanted_ = turnTicks + turnTicks * 3 / 10;
    longestMs_ = longestMs;
    elapsedMs_ = 0;
    running_ = true;
  }
  void cancel() { running_ = false; }
  bool running() const { return running_; }
  /** True when the test is over: the last turn, or the wait for the next edge, is long enough, or time is up. */
  bool advance(uint8_t ms, uint32_t turnTicks, Tick sinceEdge) {
    elapsedMs_ += ms;
    const bool slowed = turnTicks >= wanted_ || sinceEdge >= wanted_;
    if (!slowed && elapsedMs_ < longestMs_) return false;
    running_ = false;
    if (!slowed) elapsedMs_ = kNotSlowed;
    return true;
  }
  uint16_t resultMs() const { return elapsedMs_; }

 private:
  uint32_t wanted_ = 0;
  uint16_t longestMs_ = 0;
  uint16_t elapsedMs_ = 0;
  bool running_ = false;
};
