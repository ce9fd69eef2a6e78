// SPDX-License-Identifier: MIT
// What the rig does on a command, and every reason to refuse one. Called with the supervisor held.
// Knows nothing of frames and ids.
#include "rig.h"

namespace {
constexpr uint8_t kDone = 0;
/** 2 V above nothing on the polarity tap: 2.5 V plus a sixth of the pack. */
constexpr uint16_t kPolarityRaw = 512 + 68;
constexpr uint16_t kDigitalPeriodMin = 6000;
constexpr uint16_t kPeriodMax = 50000;
/** With the feed on a burst blinds the other taps, so it ends after 5 s. */
constexpr uint16_t kFedBurstSamples = 48000;

uint8_t refuse(uint16_t& detail, uint16_t value, uint8_t reason) {
  detail = value;
  return reason;
}
}  // namespace

uint8_t Rig::notLive() const {
  if (state_ == kStateTripped) return kReasonTripped;
  return live() ? kDone : kReasonNotLive;
}

bool Rig::supplyGood() const { return sampler.readings.fresh(tap::reference) && sampler.readings.raw(tap::reference) <= kSupplyLowRaw; }

uint16_t Rig::missing() const {
  uint16_t bits = 0;
  if (!sampler.streaming()) bits |= 1 << kConditionStreamOff;
  if (stop.open()) bits |= 1 << kConditionStopOpen;
  if (!stop.seen()) bits |= 1 << kConditionStopNotSeen;
  if (state_ == kStateTripped) bits |= 1 << kConditionTripLatched;
  if (!supplyGood()) bits |= 1 << kConditionSupplyLow;
  if (!converterAlive()) bits |= 1 << kConditionConverterDead;
  return bits;
}

uint8_t Rig::stream(bool on, uint16_t&) {
  if (!on && live()) return kReasonBusy;
  sampler.stream(on);
  return kDone;
}

uint8_t Rig::scanList(const MsgScanList& wish, uint16_t& detail) {
  ScanList list;
  list.slow = detail = wish.slow;
  if (wish.slow > kMultiplexerChannel) return kReasonOutOfRange;
  for (uint8_t i = 0; i < kFastPerScan; ++i) {
    list.fast[i] = detail = wish.fast[i];
    if (wish.fast[i] >= kMultiplexerChannel) return kReasonOutOfRange;
  }
  detail = kMultiplexerChannel;
  if (live() && wish.slow != kMultiplexerChannel) return kReasonTapNotScanned;
  detail = tap::packWide;
  if (!throttle.atRest() && !list.holds(tap::packWide)) return kReasonTapNotScanned;
  sampler.scan(list);
  return kDone;
}

uint8_t Rig::mayAct(const MsgBurst& wish, uint16_t& detail) const {
  if (wish.action == kActionNone) return kDone;
  detail = wish.action;
  if (wish.action > kActionThrottle) return kReasonOutOfRange;
  detail = wish.atSample;
  if (wish.samples != 0 && wish.atSample >= wish.samples) return kReasonOutOfRange;
  if (wish.action == kActionLoad) return mayLoad(static_cast<uint8_t>(wish.actionArg), wish.actionMs, detail);
  const uint8_t output = wish.action == kActionSteering ? kOutputSteering : kOutputThrottle;
  return mayDrive(output, wish.actionArg, wish.actionMs, detail);
}

uint8_t Rig::burst(const MsgBurst& wish, uint16_t& detail) {
  if (!sampler.streaming()) return kReasonNotStreaming;
  if (sampler.bursting()) return kReasonBusy;
  detail = wish.channel;
  if (wish.channel >= kMultiplexerChannel) return kReasonOutOfRange;
  const bool throttled = !throttle.atRest() || wish.action == kActionThrottle;
  if (throttled && wish.channel != tap::packWide) return refuse(detail, tap::packWide, kReasonTapNotScanned);
  if (feed.on() && (wish.samples == 0 || wish.samples > kFedBurstSamples)) return refuse(detail, kFedBurstSamples, kReasonOutOfRange);
  const uint8_t refused = mayAct(wish, detail);
  if (refused != kDone) return refused;
  action_ = wish.action;
  actionArgument_ = wish.actionArg;
  actionMs_ = wish.actionMs;
  sampler.burst(wish.channel, wish.samples);
  if (wish.action != kActionNone) sampler.actionAt(wish.atSample);
  return kDone;
}

void Rig::fireAction(Tick now) {
  actionTick_ = now;
  actionSample_ = sampler.sampleNumber() - 1;
  if (action_ == kActionLoad) loads.on(static_cast<uint8_t>(actionArgument_), actionMs_);
  actionFired_ = true;
}

void Rig::finishAction() {
  if (!actionFired_) return;
  actionFired_ = false;
  events.put(kEventAction, actionTick_, actionSample_);
  if (!live() || action_ == kActionLoad) return;
  doDrive(action_ == kActionSteering ? kOutputSteering : kOutputThrottle, actionArgument_, 0, actionMs_);
}

uint8_t Rig::goLive(uint32_t session, Tick now, uint16_t& detail) {
  if (live()) return host.owns(session) ? kDone : kReasonWrongSession;
  detail = missing();
  if (state_ == kStateTripped) return kReasonTripped;
  if (ordering_) return kReasonBusy;
  if (!sampler.streaming()) return kReasonNotStreaming;
  if (stop.open()) return kReasonStopOpen;
  if (!stop.seen()) return kReasonStopNotSeen;
  if (detail != 0) return kReasonSupplyLow;
  trips.forget();
  guard.reset();
  edges.masked = 0;
  host.begin(session, now);
  setState(kStateLive);
  steering.run();
  throttle.run();
  return kDone;
}

uint8_t Rig::beat(uint32_t session, Tick now) {
  if (!live()) return kDone;
  if (!host.owns(session)) return kReasonWrongSession;
  host.beat(now);
  return kDone;
}

uint8_t Rig::safeAll(Tick now) {
  if (!live()) return kDone;
  setState(kStateEnding);
  beginOrder(now);
  return kDone;
}

uint8_t Rig::mayThrottle(uint16_t width, uint16_t& detail) const {
  const uint16_t perMille = throttle.perMille(width);
  if (perMille == 0) return kDone;
  if (failSafe.running()) return kReasonBusy;
  if (!feed.full()) return refuse(detail, feed.level(), kReasonFeedOff);
  if (!sampler.converts(tap::packWide)) return refuse(detail, tap::packWide, kReasonTapNotScanned);
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
  guard.accepted(throttle.perMille(width), hallEdges());
  throttle.drive(width, rampMs, holdMs);
}

uint8_t Rig::mayLoad(uint8_t mask, uint16_t ms, uint16_t& detail) const {
  const uint8_t refused = notLive();
  if (refused != kDone) return refused;
  detail = mask;
  if (mask > 7) return kReasonOutOfRange;
  detail = ms;
  if (mask != 0 && (ms == 0 || ms > kLoadMaxMs)) return kReasonOutOfRange;
  detail = loads.waitMs(mask, ms, railRawForHeat());
  return loads.cool(mask, ms, railRawForHeat()) ? kDone : kReasonLoadHot;
}

uint8_t Rig::load(uint8_t mask, uint16_t ms, uint16_t& detail) {
  const uint8_t refused = mayLoad(mask, ms, detail);
  if (refused == kDone) loads.on(mask, mask == 0 ? 0 : ms);
  return refused;
}

uint8_t Rig::mayFeedLimited(uint16_t& detail) const {
  const ScanList& list = sampler.list();
  constexpr uint8_t needed[] = {tap::packVoltage, tap::controllerVoltage, kMultiplexerChannel};
  for (const uint8_t channel : needed)
    if (!list.holds(channel) || sampler.bursting()) return refuse(detail, channel, kReasonTapNotScanned);
  if (!sampler.readings.fresh(tap::polarity)) return refuse(detail, tap::polarity, kReasonTapNotScanned);
  detail = sampler.readings.raw(tap::polarity);
  return detail > kPolarityRaw ? kDone : kReasonPolarity;
}

uint8_t Rig::feedTo(uint8_t level, Tick now, uint16_t& detail) {
  detail = level;
  if (level > kFeedLevelFull) return kReasonOutOfRange;
  if (level == feed.level()) return live() || level == kFeedLevelOff ? kDone : notLive();
  const uint8_t refused = notLive();
  if (refused != kDone) return refused;
  uint8_t reason = kDone;
  if (level < feed.level() && (!throttle.atRest() || !motorKnownSlow())) reason = kReasonNotStill;
  else if (level == kFeedLevelLimited && !feed.on()) reason = mayFeedLimited(detail);
  else if (level == kFeedLevelFull && !feed.mayCloseFully()) reason = refuse(detail, feed.bestPerMille(), kReasonNoFirstPower);
  if (reason == kDone) setFeed(level, now);
  return reason;
}

uint8_t Rig::limit(const MsgLimit& wish, uint16_t& detail) {
  detail = wish.which;
  if (wish.which >= kLimits) return kReasonOutOfRange;
  detail = wish.level;
  if (!trips.tighten(wish.which, {wish.level, wish.ms})) return kReasonOutOfRange;
  if (wish.which == kLimitPackWideFast) sampler.fastLimit(wish.level);
  return kDone;
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

uint8_t Rig::clearTrip(uint16_t& detail) {
  detail = tripCode_;
  if (state_ != kStateTripped) return kDone;
  if (ordering_) return kReasonBusy;
  if (stop.open()) return kReasonStopOpen;
  tripCode_ = kTripNone;
  edges.masked = 0;
  setState(kStateSafe);
  return kDone;
}

uint8_t Rig::setSwitch(uint8_t which, uint8_t on, uint16_t ms, uint16_t& detail) {
  detail = which;
  if (which >= Switches::kCount || on > 1) return kReasonOutOfRange;
  if (which == kSwitchBleeder && on && feed.on()) return kReasonBusy;
  if (which == kSwitchPackLoad && on) {
    const uint8_t refused = notLive();
    if (refused != kDone) return refused;
    detail = ms;
    if (ms == 0 || ms > Switches::kPackLoadMs) return kReasonOutOfRange;
    detail = switches.packLoadRestMs();
    if (!switches.packLoadRested()) return kReasonLoadHot;
  }
  switches.set(which, on != 0, ms);
  return kDone;
}

uint8_t Rig::capture(uint8_t source) {
  if (source > kCaptureSourceNone) return kReasonOutOfRange;
  if (!throttle.atRest()) return kReasonBusy;
  if (source != captureSource_) guard.reset();
  captureSource_ = source;
  edges.masked = 0;
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

uint8_t Rig::watch(uint8_t thermistors) {
  if (thermistors > 15) return kReasonOutOfRange;
  trips.watchThermistors(thermistors);
  return kDone;
}

MsgState Rig::stateMessage(uint8_t id) const {
  return {id, state_, tripCode_, tripPlace_, tripRaw_, tripTick_, missing(), guard.cap()};
}

uint16_t Rig::outputBits() const {
  uint16_t bits = loads.mask();
  if (feed.level() == kFeedLevelLimited) bits |= 1 << kOutputBitFeedLimited;
  if (feed.full()) bits |= 1 << kOutputBitFeedFull;
  if (switches.on(kSwitchHallSupply)) bits |= 1 << kOutputBitHallSupply;
  if (switches.on(kSwitchBleeder)) bits |= 1 << kOutputBitBleeder;
  if (switches.on(kSwitchPackLoad)) bits |= 1 << kOutputBitPackLoad;
  if (steering.running()) bits |= 1 << kOutputBitSteeringPulses;
  if (throttle.running()) bits |= 1 << kOutputBitThrottlePulses;
  if (stop.open()) bits |= 1 << kOutputBitStopOpen;
  if (stop.seen()) bits |= 1 << kOutputBitStopSeen;
  else bits |= 1 << kOutputBitAskStop;
  return bits;
}

uint8_t Rig::firstRegister() const { return static_cast<uint8_t>(outputBits() & 0x1F); }

uint8_t Rig::secondRegister() const {
  uint8_t bits = captureSource_;
  if (switches.on(kSwitchHallSupply)) bits |= 1 << 2;
  if (switches.on(kSwitchBleeder)) bits |= 1 << 3;
  if (!stop.seen()) bits |= 1 << 4;
  if (switches.on(kSwitchPackLoad)) bits |= 1 << 5;
  return bits;
}
