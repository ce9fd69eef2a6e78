// SPDX-License-Identifier: MIT
// Ramps and holds of one servo output; see pulse_output.h. Positions are ticks in 16.16.
#include "pulse_output.h"

void PulseOutput::setLimits(const PulseLimits& limits) {
  limits_ = limits;
  toRest();
}

void PulseOutput::place(uint32_t position) {
  const InterruptLock lock;
  position_ = position;
}

void PulseOutput::toRest() {
  target_ = limits_.rest;
  rampLeftMs_ = 0;
  holdMs_ = 0;
  place(static_cast<uint32_t>(limits_.rest) << 16);
}

void PulseOutput::drive(uint16_t width, uint16_t rampMs, uint16_t holdMs) {
  const bool renewal = holdMs_ > 0 && width == target_;
  holdMs_ = holdMs;
  if (renewal) return;
  target_ = width;
  rampLeftMs_ = rampMs;
  const uint32_t goal = static_cast<uint32_t>(width) << 16;
  if (rampMs == 0) place(goal);
  else stepPerMs_ = static_cast<int32_t>(goal - position_) / rampMs;
}

bool PulseOutput::advance(uint8_t ms) {
  if (holdMs_ == 0) return false;
  for (uint8_t i = 0; i < ms && rampLeftMs_ > 0; ++i) {
    --rampLeftMs_;
    place(rampLeftMs_ == 0 ? static_cast<uint32_t>(target_) << 16 : position_ + static_cast<uint32_t>(stepPerMs_));
  }
  if (holdMs_ > ms) {
    holdMs_ -= ms;
    return false;
  }
  toRest();
  return true;
}

uint16_t PulseOutput::perMille(uint16_t width) const {
  const uint16_t far = away(width);
  if (far == 0) return 0;
  const uint16_t most = span(width);
  if (most == 0) return 1000;
  return static_cast<uint16_t>((static_cast<uint32_t>(far) * 1000 + most - 1) / most);
}

bool PulseOutput::beyond(uint16_t perMille) const {
  const uint16_t far = away(width());
  return far != 0 && static_cast<uint32_t>(far) * 1000 > static_cast<uint32_t>(span(width())) * perMille;
}
