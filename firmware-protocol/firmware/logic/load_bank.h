// SPDX-License-Identifier: MIT
// The resistors on the rail (10, 4.7, 2.2 ohm): which are on, for how long, and the heat they hold.
// The account starts full after a reset, because nobody knows what happened before it. Energies in microjoule.
#pragma once
#include <stdint.h>

class LoadBank {
 public:
  /** Whether the bank could take this mask for so long at this rail voltage (raw code of one conversion). */
  bool cool(uint8_t mask, uint16_t ms, uint16_t railRaw) const;
  /** Milliseconds until it could, for the answer. */
  uint16_t waitMs(uint8_t mask, uint16_t ms, uint16_t railRaw) const;
  void on(uint8_t mask, uint16_t ms);
  void off();
  /** True when the bank switched itself off. */
  bool advance(uint8_t ms, uint16_t railRaw);
  uint8_t mask() const { return mask_; }
  uint32_t heldMicrojoule() const { return held_; }

  /** Taken for the rail while its tap is stale: 8.4 V, the highest setting. */
  static constexpr uint16_t kAssumedRaw = 860;
  static constexpr uint32_t kCapacity = 30000000;
  static constexpr uint16_t kLeakPerMs = 3000;

 private:
  uint8_t mask_ = 0;
  uint16_t leftMs_ = 0;
  uint32_t held_ = kCapacity;
};
