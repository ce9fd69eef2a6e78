// SPDX-License-Identifier: MIT
// First power; see feed.h.
#include "feed.h"

void Feed::set(uint8_t level) {
  if (level != kFeedLevelFull) filled_ = false;
  if (level == kFeedLevelLimited) bestRaw_ = packRaw_ = 0;
  level_ = level;
  sinceMs_ = 0;
}

uint16_t Feed::bestPerMille() const {
  return packRaw_ == 0 ? 0 : static_cast<uint16_t>(static_cast<uint32_t>(bestRaw_) * 1000 / packRaw_);
}

Feed::News Feed::watch(uint8_t ms, uint16_t controllerRaw, uint16_t packRaw) {
  sinceMs_ = sinceMs_ > 0xFFFF - ms ? 0xFFFF : sinceMs_ + ms;
  if (level_ != kFeedLevelLimited) return News::none;
  if (controllerRaw < kShortRaw && sinceMs_ >= kShortMs) return News::shorted;
  if (sinceMs_ > kFirstPowerMs || filled_) return News::none;
  if (controllerRaw > bestRaw_) {
    bestRaw_ = controllerRaw;
    packRaw_ = packRaw;
  }
  filled_ = packRaw > 0 && static_cast<uint32_t>(controllerRaw) * 100 >= static_cast<uint32_t>(packRaw) * kFirstPowerPerCent;
  return filled_ ? News::filled : News::none;
}
