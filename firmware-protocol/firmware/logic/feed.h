// SPDX-License-Identifier: MIT
// The path from the pack to the controller: off, through 10 ohm, full. Watches the capacitor fill, finds a short,
// and says whether the full path may close. Works on raw codes of the two voltage taps.
#pragma once
#include <stdint.h>

#include "generated_messages.h"

class Feed {
 public:
  enum class News : uint8_t { none, filled, shorted };

  void set(uint8_t level);
  uint8_t level() const { return level_; }
  bool on() const { return level_ != kFeedLevelOff; }
  bool full() const { return level_ == kFeedLevelFull; }
  /** The limited feed is on and has filled the capacitor in time. */
  bool mayCloseFully() const { return level_ == kFeedLevelLimited && filled_; }
  uint16_t bestPerMille() const;
  /** Raw codes of controller side and pack, as of now; only while both taps are fresh. */
  News watch(uint8_t ms, uint16_t controllerRaw, uint16_t packRaw);
  uint16_t sinceMs() const { return sinceMs_; }

  /** 0.1 V at the tap. */
  static constexpr uint16_t kShortRaw = 10;
  static constexpr uint16_t kShortMs = 300;

 private:
  uint8_t level_ = kFeedLevelOff;
  bool filled_ = false;
  uint16_t sinceMs_ = 0;
  uint16_t bestRaw_ = 0;
  uint16_t packRaw_ = 0;
};
