// SPDX-License-Identifier: MIT
// The last raw code of every converter input and how long ago it came. Written by the converter interrupt,
// aged by the supervisor. Places 0..6 are channels, 8..15 the multiplexer's inputs; the wire names taps the same way.
#pragma once
#include <stdint.h>

#include "interrupt_lock.h"

namespace tap {
constexpr uint8_t packVoltage = 0;
constexpr uint8_t packNarrow = 1;
constexpr uint8_t railVoltage = 2;
constexpr uint8_t railCurrent = 3;
constexpr uint8_t controllerVoltage = 4;
constexpr uint8_t packWide = 5;
constexpr uint8_t firstThermistor = 8;
constexpr uint8_t reference = 12;
constexpr uint8_t polarity = 14;
/** On the wire: no tap. */
constexpr uint8_t none = 255;
}  // namespace tap

class Readings {
 public:
  static constexpr uint8_t kPlaces = 16;
  static constexpr uint8_t kNever = 255;
  /** Multiplexed inputs come every 7.5 ms, the others every millisecond. */
  static constexpr uint8_t kFreshMs = 50;

  Readings() {
    for (uint8_t& age : ageMs_) age = kNever;
  }
  /** From the converter interrupt. */
  void put(uint8_t place, uint16_t raw) {
    raw_[place] = raw;
    ageMs_[place] = 0;
  }
  /** A conversion that comes between reading and writing an age is overlooked until the next one. */
  void age(uint8_t ms) {
    for (uint8_t& age : ageMs_) age = age > kNever - ms ? kNever : age + ms;
  }
  uint16_t raw(uint8_t place) const {
    const InterruptLock lock;
    return raw_[place];
  }
  bool fresh(uint8_t place) const { return ageMs_[place] <= kFreshMs; }
  /** Converted since the supervisor's last turn but one: for what acts within milliseconds. */
  bool live(uint8_t place) const { return ageMs_[place] <= 3; }

 private:
  uint16_t raw_[kPlaces] = {};
  uint8_t ageMs_[kPlaces];
};
