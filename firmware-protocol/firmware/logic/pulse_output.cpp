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
  const bool above = width >= limits_.rest;
  const uint16_t away = above ? width - limits_.rest : limits_.rest - width;
  const uint16_t span = above ? limits_.high - limits_.rest : limits_.rest - limits_.low;
  if (span == 0) return away == 0 ? 0 : 1000;
  return static_cast<uint16_t>((static_cast<uint32_t>(away) * 1000 + span - 1) / span);
}
