// SPDX-License-Identifier: MIT
// Hall supply, bleeder and pack load: on until told or for a time. The pack load runs 1 s at most, then rests 9 s.
#pragma once
#include <stdint.h>

#include "generated_messages.h"

class Switches {
 public:
  static constexpr uint8_t kCount = 3;
  static constexpr uint16_t kPackLoadMs = 1000;
  static constexpr uint16_t kPackLoadRestMs = 9000;

  bool on(uint8_t which) const { return on_[which]; }
  bool packLoadRested() const { return restMs_ == 0; }
  uint16_t packLoadRestMs() const { return restMs_; }
  /** The pack load asked for again runs out when it would have. */
  void set(uint8_t which, bool on, uint16_t ms) {
    if (which == kSwitchPackLoad && on_[which] && on) return;
    if (which == kSwitchPackLoad && on_[which] && !on) restMs_ = kPackLoadRestMs;
    on_[which] = on;
    leftMs_[which] = ms;
  }
  /** The Hall supply outlasts its time while `hallMayGo` is false. */
  void advance(uint8_t ms, bool hallMayGo) {
    restMs_ = restMs_ > ms ? restMs_ - ms : 0;
    for (uint8_t which = 0; which < kCount; ++which) expire(which, ms, which != kSwitchHallSupply || hallMayGo);
  }

 private:
  void expire(uint8_t which, uint8_t ms, bool mayGo) {
    if (leftMs_[which] == 0) return;
    if (leftMs_[which] > ms) leftMs_[which] -= ms;
    else if (mayGo) set(which, false, 0);
  }
  bool on_[kCount] = {};
  uint16_t leftMs_[kCount] = {};
  /** Starts tired after a reset, like every account of heat here. */
  uint16_t restMs_ = kPackLoadRestMs;
};
