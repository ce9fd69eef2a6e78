// SPDX-License-Identifier: MIT
// What opens, keeps and ends a live session: stream, conditions, beats, trips cleared, limits moved, lines looked at.
// Commands are called with the supervisor held; frames and ids are not known here.
#include "refusal.h"
#include "rig.h"

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

uint8_t Rig::clearTrip(uint16_t& detail) {
  detail = tripCode_;
  if (state_ != kStateTripped) return kDone;
  if (ordering_) return kReasonBusy;
  if (stop.open()) return kReasonStopOpen;
  tripCode_ = kTripNone;
  tripPlace_ = tap::none;
  edges.masked = 0;
  setState(kStateSafe);
  return kDone;
}

uint8_t Rig::limit(const MsgLimit& wish, uint16_t& detail) {
  detail = wish.which;
  if (wish.which >= kLimits) return kReasonOutOfRange;
  detail = wish.level;
  if (!trips.tighten(wish.which, {wish.level, wish.ms})) return kReasonOutOfRange;
  if (wish.which == kLimitPackWideFast) sampler.fastLimit(wish.level);
  return kDone;
}

uint8_t Rig::watch(uint8_t thermistors) {
  if (thermistors > 15) return kReasonOutOfRange;
  trips.watchThermistors(thermistors);
  return kDone;
}

/** Not with the feed on while the motor may turn: its edges are what tells when the feed may open. */
bool Rig::mayLoseSight() const { return !feed.on() || motion.knownSlow(); }

uint8_t Rig::capture(uint8_t source) {
  if (source > kCaptureSourceNone) return kReasonOutOfRange;
  if (!throttle.atRest() || failSafe.running() || throttleActionWaits()) return kReasonBusy;
  if (source != captureSource_) {
    if (!mayLoseSight()) return kReasonNotStill;
    guard.reset();
  }
  captureSource_ = source;
  edges.masked = 0;
  return kDone;
}
