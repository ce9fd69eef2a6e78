// SPDX-License-Identifier: MIT
// The load bank's heat; see load_bank.h. Power is V squared over R, with V from the raw rail code.
#include "load_bank.h"

namespace {
constexpr uint8_t kMasks = 8;
/** Conductance of each mask in mS: 100, 213 and 455 for 10, 4.7 and 2.2 ohm. */
constexpr uint16_t kMilliSiemens[kMasks] = {0, 100, 213, 313, 455, 555, 668, 768};

/** Milliwatts, which are microjoules a millisecond. One code is 10 V / 1024, so V^2 = raw^2 * 100 / 2^20. */
uint32_t milliwatt(uint8_t mask, uint16_t railRaw) {
  const uint32_t square = static_cast<uint32_t>(railRaw) * railRaw;
  return ((square * kMilliSiemens[mask & (kMasks - 1)]) >> 10) * 100 >> 10;
}
}  // namespace

bool LoadBank::cool(uint8_t mask, uint16_t ms, uint16_t railRaw) const {
  return held_ + milliwatt(mask, railRaw) * ms <= kCapacity;
}

uint16_t LoadBank::waitMs(uint8_t mask, uint16_t ms, uint16_t railRaw) const {
  const uint32_t wanted = milliwatt(mask, railRaw) * ms;
  if (wanted > kCapacity) return 0xFFFF;
  const uint32_t over = held_ + wanted - kCapacity;
  return static_cast<uint16_t>((over + kLeakPerMs - 1) / kLeakPerMs);
}

void LoadBank::on(uint8_t mask, uint16_t ms) {
  mask_ = mask;
  leftMs_ = ms;
}

void LoadBank::off() { on(0, 0); }

bool LoadBank::advance(uint8_t ms, uint16_t railRaw) {
  const uint32_t leak = static_cast<uint32_t>(kLeakPerMs) * ms;
  if (mask_ != 0) held_ += milliwatt(mask_, railRaw) * ms;
  held_ = held_ > leak ? held_ - leak : 0;
  if (mask_ == 0) return false;
  leftMs_ = leftMs_ > ms ? leftMs_ - ms : 0;
  if (leftMs_ > 0 && held_ <= kCapacity) return false;
  off();
  return true;
}
