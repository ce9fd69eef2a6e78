// SPDX-License-Identifier: MIT
// Pulses on command: every reason to refuse a drive, limits and frames of the outputs, the fail-safe test.
#include "refusal.h"
#include "rig.h"

namespace {
constexpr uint16_t kDigitalPeriodMin = 6000;
constexpr uint16_t kPeriodMax = 50000;
}  // namespace

uint8_t Rig::mayThrottle(uint16_t width, uint16_t& detail) const {
  const uint16_t perMille = throttle.perMille(width);
  if (perMille == 0) return kDone;
  if (failSafe.running()) return kReasonBusy;
  if (!feed.full()) return refuse(detail, feed.level(), kReasonFeedOff);
  const bool seen = sampler.converts(tap::packWide) && sampler.list().holds(tap::packWide);
  if (!seen) return refuse(detail, tap::packWide, kReasonTapNotScanned);
  return guard.refuse(perMille, detail);
}

uint8_t Rig::mayDrive(uint8_t output, uint16_t width, uint16_t holdMs, uint16_t& detail) const {
  const uint8_t refused = notLive();
  if (refused != kDone) return refused;
  detail = output;
  if (output > kOutputThrottle) return kReasonOutOfRange;
  const PulseOutput& pulses = output == kOutputSteering ? steering : throttle;
  if (!pulses.limitsSet()) return kReasonLimitsNotSet;
  detail = width;
  if (width < kPulseMinTicks || width > kPulseMaxTicks || !pulses.allows(width)) return kReasonOutOfRange;
  detail = holdMs;
  if (holdMs == 0 || holdMs > kDriveMaxMs) return kReasonOutOfRange;
  if (width == pulses.limits().rest) return kDone;
  detail = tap::railVoltage;
  if (!sampler.readings.fresh(tap::railVoltage)) return kReasonTapNotScanned;
  detail = sampler.readings.raw(tap::railVoltage);
  if (!railUp()) return kReasonRailDown;
  return output == kOutputThrottle ? mayThrottle(width, detail) : kDone;
}

uint8_t Rig::drive(const MsgDrive& wish, uint16_t& detail) {
  const uint8_t refused = mayDrive(wish.output, wish.width, wish.holdMs, detail);
  if (refused == kDone) doDrive(wish.output, wish.width, wish.rampMs, wish.holdMs);
  return refused;
}

void Rig::doDrive(uint8_t output, uint16_t width, uint16_t rampMs, uint16_t holdMs) {
  if (output == kOutputSteering) return steering.drive(width, rampMs, holdMs);
  if (width != throttle.limits().rest) motion.pushed();
  guard.accepted(throttle.perMille(width), hallEdges());
  throttle.drive(width, rampMs, holdMs);
}

uint8_t Rig::driveLimits(const MsgDriveLimits& wish, uint16_t& detail) {
  detail = wish.output;
  if (wish.output > kOutputThrottle) return kReasonOutOfRange;
  detail = wish.low;
  if (wish.low < kPulseMinTicks || wish.low >= wish.high) return kReasonOutOfRange;
  detail = wish.high;
  if (wish.high > kPulseMaxTicks) return kReasonOutOfRange;
  detail = wish.rest;
  if (wish.rest < wish.low || wish.rest > wish.high) return kReasonOutOfRange;
  PulseOutput& pulses = wish.output == kOutputSteering ? steering : throttle;
  const bool held = !pulses.atRest() || ordering_ || (wish.output == kOutputThrottle && feed.on());
  if (held) return kReasonBusy;
  PulseLimits limits;
  limits.low = wish.low;
  limits.rest = wish.rest;
  limits.high = wish.high;
  pulses.setLimits(limits);
  if (live()) pulses.run();
  return kDone;
}

/** The throttle keeps the longest whole multiple of the steering's frame that stays within 50 Hz. */
uint8_t Rig::frame(uint16_t period, uint8_t digital, uint16_t& detail) {
  detail = digital != 0 ? kDigitalPeriodMin : kFramePeriodMinTicks;
  if (period < detail) return kReasonOutOfRange;
  detail = kPeriodMax;
  if (period > kPeriodMax) return kReasonOutOfRange;
  uint16_t multiple = period;
  while (multiple < kFramePeriodMinTicks) multiple += period;
  const InterruptLock lock;
  steeringPeriod_ = period;
  throttlePeriod_ = multiple;
  return kDone;
}

uint8_t Rig::failSafeTest(uint16_t ms, uint16_t& detail) {
  const uint8_t refused = notLive();
  if (refused != kDone) return refused;
  detail = ms;
  if (ms == 0 || ms > FailSafeTest::kLongestMs) return kReasonOutOfRange;
  if (!feed.full()) return kReasonFeedOff;
  if (failSafe.running()) return kReasonBusy;
  detail = edges.edgesA;
  if (throttle.atRest() || !turning() || captureSource_ != kCaptureSourceHallA) return kReasonNotTurning;
  failSafe.begin(turnTicks(), ms);
  throttle.toRest();
  throttle.stop();
  return kDone;
}
