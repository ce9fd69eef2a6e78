// SPDX-License-Identifier: MIT
// One servo output: limits of the session, the width now, a ramp in equal steps of 1 ms, and the end of a drive.
// The timer interrupt reads width(); it does not know what hangs on the output.
#pragma once
#include <stdint.h>

#include "interrupt_lock.h"

struct PulseLimits {
  uint16_t low = 0;
  uint16_t rest = 0;
  uint16_t high = 0;
};

class PulseOutput {
 public:
  /** Also brings the output to the new rest. */
  void setLimits(const PulseLimits& limits);
  bool limitsSet() const { return limits_.high != 0; }
  const PulseLimits& limits() const { return limits_; }
  bool allows(uint16_t width) const { return width >= limits_.low && width <= limits_.high; }

  void run() { running_ = limitsSet(); }
  void stop() { running_ = false; }
  bool running() const { return running_; }
  /** The same width again renews the hold and leaves the ramp as it is. */
  void drive(uint16_t width, uint16_t rampMs, uint16_t holdMs);
  void toRest();
  /** True when a drive came to its end by itself. */
  bool advance(uint8_t ms);

  /** Ticks, whether pulses run or not. */
  uint16_t width() const { return static_cast<uint16_t>(position_ >> 16); }
  /** What the pin shows: 0 while no pulses. */
  uint16_t shown() const { return running_ ? width() : 0; }
  bool atRest() const { return holdMs_ == 0 || (target_ == limits_.rest && rampLeftMs_ == 0); }
  /** Distance of a width from rest, in thousandths of the span on its side. */
  uint16_t perMille(uint16_t width) const;
  /** Whether the width now is further out than so many thousandths; without a division. */
  bool beyond(uint16_t perMille) const;

 private:
  void place(uint32_t position);
  uint16_t away(uint16_t width) const { return width >= limits_.rest ? width - limits_.rest : limits_.rest - width; }
  uint16_t span(uint16_t width) const {
    return width >= limits_.rest ? limits_.high - limits_.rest : limits_.rest - limits_.low;
  }

  PulseLimits limits_;
  uint32_t position_ = 0;
  int32_t stepPerMs_ = 0;
  uint16_t target_ = 0;
  uint16_t rampLeftMs_ = 0;
  uint16_t holdMs_ = 0;
  volatile bool running_ = false;
};
