// SPDX-License-Identifier: MIT
// The supervisor's turn every millisecond: what must be noticed, what ends by itself, the safe order.
// Times come from rig time, so a late turn loses nothing. Knows no command.
#include "rig.h"

namespace {
constexpr uint16_t kBleederMs = 10000;
/** 1 V at the controller-side tap. */
constexpr uint16_t kBledRaw = 102;
/** 10 A out of the pack on the wide tap: beyond any error of its zero. */
constexpr uint16_t kOutOfPackRaw = 205;
/** 1 A on the narrow pack tap, 0.5 A on the rail tap: power that a thermistor should feel. */
constexpr uint16_t kMotorPowerRaw = 246;
constexpr uint16_t kRailPowerRaw = 153;
}  // namespace

void Rig::start(uint8_t resetCause, Tick now) {
  lastTurn_ = now;
  sampler.fastLimit(trips.limit(kLimitPackWideFast).level);
  events.put(kEventRestarted, now, resetCause);
  if (resetCause == kResetCauseWatchdog) trip(kTripWatchdog, tap::none, 0, now);
  if (resetCause == kResetCauseBrownOut) trip(kTripBrownOut, tap::none, 0, now);
  publish();
}

uint8_t Rig::elapsed(Tick now) {
  uint8_t ms = 0;
  while (now - lastTurn_ >= kTicksPerMs && ms < 250) {
    lastTurn_ += kTicksPerMs;
    ++ms;
  }
  return ms;
}

void Rig::supervise(Tick now, bool stopOpen) {
  const uint8_t ms = elapsed(now);
  if (ms == 0) return;
  stop.sample(stopOpen, ms);
  watchConverter(ms);
  watchEdges(ms);
  watchLines(now);
  watchTrips(now, ms);
  finishAction();
  watchMotion(ms);
  sampler.readings.age(ms);
  advanceFailSafe(now, ms);
  advanceDrives(now, ms);
  watchThrottle(now, ms);
  advanceLoads(now, ms);
  watchFeed(now, ms);
  watchBleeder(now, ms);
  switches.advance(ms, mayLoseSight());
  advanceOrder(now, ms);
  publish();
}

void Rig::watchConverter(uint8_t ms) {
  const uint8_t conversions = sampler.conversions();
  converterIdleMs_ = conversions != conversionsSeen_ ? 0 : converterIdleMs_ > 255 - ms ? 255 : converterIdleMs_ + ms;
  conversionsSeen_ = conversions;
}

void Rig::watchEdges(uint8_t ms) {
  const InterruptLock lock;
  edgeACame_ = edges.edgesA != edgesSeen_;
  edgesSeen_ = edges.edgesA;
  edgeAgeMs_ = edgeACame_ ? 0 : edgeAgeMs_ > 255 - ms ? 255 : edgeAgeMs_ + ms;
  for (uint8_t& count : edges.inThisMs) count = 0;
}

bool Rig::hearing() const {
  const bool supplied = switches.on(kSwitchHallSupply) || feed.on();
  return captureSource_ == kCaptureSourceHallA && edges.masked == 0 && supplied;
}

/** While the fail-safe test keeps the pulses back the controller decides, not the throttle at rest. */
void Rig::watchMotion(uint8_t ms) {
  const uint16_t edgesBC = static_cast<uint16_t>(edges.edgesB << 8 | edges.edgesC);
  const bool edgeA = edgeACame_ && captureSource_ == kCaptureSourceHallA;
  motion.advance(ms, {hearing(), edgeA, edgesBC != edgesBCSeen_, throttle.atRest() && !failSafe.running()});
  edgesBCSeen_ = edgesBC;
}

/** A masked line is told once; it is a trip only where the Hall lines guard a powered motor. */
void Rig::watchLines(Tick now) {
  const uint8_t fresh = edges.masked & static_cast<uint8_t>(~maskedSeen_);
  maskedSeen_ = edges.masked;
  if (fresh == 0) return;
  ++noisyLines_;
  if (live() && feed.on() && switches.on(kSwitchHallSupply)) trip(kTripNoisyLine, fresh, edges.edgesA, now);
}

void Rig::watchTrips(Tick now, uint8_t ms) {
  if (!live() && state_ != kStateEnding) return;
  if (live() && host.lost(now)) return trip(kTripHostLost, tap::none, host.worstGapMs(), now);
  if (stop.open()) return trip(kTripStopLine, tap::none, 0, now);
  if (!converterAlive()) return trip(kTripConverter, tap::none, 0, now);
  const Situation situation = {
      feed.full(),
      sampler.readings.live(tap::packNarrow) && sampler.readings.raw(tap::packNarrow) > kMotorPowerRaw,
      sampler.readings.live(tap::railCurrent) && sampler.readings.raw(tap::railCurrent) > kRailPowerRaw,
      turnTicks(),
      sampler.shortCount(),
  };
  const TripCause cause = trips.look(sampler.readings, situation, ms);
  if (cause.code != kTripNone) trip(cause.code, cause.place, cause.raw, now);
}

uint32_t Rig::turnTicks() const {
  const InterruptLock lock;
  if (captureSource_ != kCaptureSourceHallA || !turning()) return 0xFFFFFF;
  return static_cast<uint32_t>(edges.distance) + edges.distanceBefore;
}

void Rig::watchThrottle(Tick now, uint8_t ms) {
  const bool rest = throttle.running() && throttle.atRest();
  const bool railDown = sampler.readings.fresh(tap::railVoltage) && !railUp();
  guard.neutral(rest && railUp(), railDown, ms);
  const bool open = throttle.running() && throttle.beyond(ThrottleGuard::kHallPerMille);
  const bool missing = guard.missesEdges(open, hallEdges(), ms);
  if (live() && missing) trip(kTripNoHall, tap::none, throttle.width(), now);
}

void Rig::advanceDrives(Tick now, uint8_t ms) {
  if (steering.advance(ms)) events.put(kEventDriveEnded, now, kOutputSteering);
  if (throttle.advance(ms)) events.put(kEventDriveEnded, now, kOutputThrottle);
}

void Rig::advanceFailSafe(Tick now, uint8_t ms) {
  if (!failSafe.running()) return;
  // What is not heard has not slowed.
  const bool heard = hearing();
  if (!failSafe.advance(ms, heard ? turnTicks() : 0, heard ? sinceEdge(now) : 0)) return;
  guard.failSafe(failSafe.resultMs());
  throttle.toRest();
  throttle.run();
  events.put(kEventFailSafe, now, failSafe.resultMs());
}

/** The last edge may be younger than `now`, which was taken when the turn began. */
Tick Rig::sinceEdge(Tick now) const {
  const InterruptLock lock;
  const Tick since = now - edges.lastEdge();
  return since >> 31 ? 0 : since;
}

uint16_t Rig::railRawForHeat() const {
  return sampler.readings.fresh(tap::railVoltage) ? sampler.readings.raw(tap::railVoltage) : LoadBank::kAssumedRaw;
}

void Rig::advanceLoads(Tick now, uint8_t ms) {
  if (loads.advance(ms, railRawForHeat())) events.put(kEventLoadOff, now, 0);
}

void Rig::watchFeed(Tick now, uint8_t ms) {
  if (!sampler.readings.fresh(tap::controllerVoltage) || !sampler.readings.fresh(tap::packVoltage)) return;
  const Feed::News news = feed.watch(ms, sampler.readings.raw(tap::controllerVoltage), sampler.readings.raw(tap::packVoltage));
  if (news == Feed::News::filled) events.put(kEventFirstPower, now, feed.sinceMs());
  if (news == Feed::News::shorted) setFeed(kFeedLevelOff, now);
}

/** With the feed off the bleeder must empty the controller's side; if it can't, the feed is not off. */
void Rig::watchBleeder(Tick now, uint8_t ms) {
  const bool looking = switches.on(kSwitchBleeder) && !feed.on() && sampler.readings.fresh(tap::controllerVoltage);
  if (!looking || sampler.readings.raw(tap::controllerVoltage) < kBledRaw) {
    bleederMs_ = 0;
    return;
  }
  bleederMs_ += ms;
  if (bleederMs_ < kBleederMs) return;
  bleederMs_ = 0;
  trip(kTripStuckFeed, tap::controllerVoltage, sampler.readings.raw(tap::controllerVoltage), now);
}

void Rig::trip(uint8_t code, uint8_t place, uint16_t raw, Tick now) {
  if (state_ == kStateTripped) return;
  tripCode_ = code;
  tripPlace_ = place;
  tripRaw_ = raw;
  tripTick_ = now;
  const bool driven = live();
  setState(kStateTripped);
  events.put(kEventTrip, now, code);
  if (driven) beginOrder(now);
}

/** Throttle to neutral, steering to rest, loads off; pulses keep running; the feed and the pulses follow in time. */
void Rig::beginOrder(Tick now) {
  sampler.cancelAction();
  failSafe.cancel();
  throttle.toRest();
  throttle.run();
  steering.toRest();
  if (loads.mask() != 0) events.put(kEventLoadOff, now, 0);
  loads.off();
  switches.set(kSwitchPackLoad, false, 0);
  ordering_ = true;
  orderMs_ = 0;
}

bool Rig::shorted() const {
  const bool out = sampler.readings.live(tap::packWide) && sampler.readings.raw(tap::packWide) > kOutOfPackRaw;
  return out && sampler.shortCount() >= kShortCounts;
}

void Rig::advanceOrder(Tick now, uint8_t ms) {
  if (!ordering_) return;
  orderMs_ += ms;
  if (feed.on() && (shorted() || motion.knownSlow() || orderMs_ >= kFeedOffMs)) setFeed(kFeedLevelOff, now);
  if (orderMs_ < kPulsesStopMs) return;
  ordering_ = false;
  throttle.stop();
  steering.stop();
  if (state_ == kStateEnding) setState(kStateSafe);
}

void Rig::setFeed(uint8_t level, Tick now) {
  if (level == feed.level()) return;
  feed.set(level);
  if (level == kFeedLevelOff) guard.reset();
  else switches.set(kSwitchBleeder, false, 0);
  events.put(kEventFeed, now, level);
}

void Rig::setState(uint8_t state) {
  state_ = state;
  stateNews_ = true;
}

bool Rig::takeStateNews() {
  const bool news = stateNews_;
  stateNews_ = false;
  return news;
}

void Rig::publish() {
  const BlockStatus status = {state_, tripCode_, outputBits(), steering.shown(), throttle.shown()};
  const InterruptLock lock;
  sampler.status = status;
}
