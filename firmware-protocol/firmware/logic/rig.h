// SPDX-License-Identifier: MIT
// The rig: every part of it, the state machine safe / live / ending / tripped, and what leaves it for the pins.
// It knows no register: the chip's layer (or a test) feeds it time, conversions, edges and the stop line.
#pragma once
#include <stdint.h>

#include "edge_count.h"
#include "event_queue.h"
#include "fail_safe_test.h"
#include "feed.h"
#include "host_watch.h"
#include "load_bank.h"
#include "motor_motion.h"
#include "pulse_output.h"
#include "readings.h"
#include "scan_sampler.h"
#include "stop_line.h"
#include "store.h"
#include "switches.h"
#include "throttle_guard.h"
#include "ticks.h"
#include "trip_watch.h"

/** A receiver rail is up above 3.5 V. */
constexpr uint16_t kRailUpRaw = 358;

class Rig {
 public:
  Rig() : sampler(edges) {}

  // ---- the chip's side
  /** Once after a reset: the cause decides whether a trip stands. */
  void start(uint8_t resetCause, Tick now);
  /** The supervisor's turn, about every millisecond. */
  void supervise(Tick now, bool stopOpen);
  /** The action marked in a burst, from the converter interrupt while nobody else changes the rig: a load acts at
   *  once, a pulse with the supervisor's next turn, which is well before its next frame. */
  void fireAction(Tick now);
  /** Shift registers, without the multiplexer's address (bits 5..7 of the first). */
  uint8_t firstRegister() const;
  uint8_t secondRegister() const;
  bool converterAlive() const { return converterIdleMs_ < kConverterDeadMs; }
  /** The dead-man may be toggled: a dead converter must not open the feed before the safe order does. */
  bool holdsOutputs() const { return converterAlive() || ordering_; }
  uint16_t throttlePeriod() const { return throttlePeriod_; }
  uint16_t steeringPeriod() const { return steeringPeriod_; }

  // ---- commands; each gives 0 or the reason of a refusal and fills `detail`
  uint8_t stream(bool on, uint16_t& detail);
  uint8_t scanList(const MsgScanList& wish, uint16_t& detail);
  uint8_t burst(const MsgBurst& wish, uint16_t& detail);
  uint8_t goLive(uint32_t session, Tick now, uint16_t& detail);
  uint8_t beat(uint32_t session, Tick now);
  uint8_t safeAll(Tick now);
  uint8_t drive(const MsgDrive& wish, uint16_t& detail);
  uint8_t load(uint8_t mask, uint16_t ms, uint16_t& detail);
  uint8_t feedTo(uint8_t level, Tick now, uint16_t& detail);
  uint8_t limit(const MsgLimit& wish, uint16_t& detail);
  uint8_t driveLimits(const MsgDriveLimits& wish, uint16_t& detail);
  uint8_t frame(uint16_t period, uint8_t digital, uint16_t& detail);
  uint8_t clearTrip(uint16_t& detail);
  uint8_t setSwitch(uint8_t which, uint8_t on, uint16_t ms, uint16_t& detail);
  uint8_t capture(uint8_t source);
  uint8_t failSafeTest(uint16_t ms, uint16_t& detail);
  uint8_t watch(uint8_t thermistors);

  // ---- what answers tell
  uint8_t state() const { return state_; }
  uint16_t missing() const;
  MsgState stateMessage(uint8_t id) const;
  uint16_t outputBits() const;
  uint16_t noisyLines() const { return noisyLines_; }
  bool takeStateNews();
  bool hasStateNews() const { return stateNews_; }

  EdgeCount edges;
  ScanSampler sampler;
  StopLine stop;
  HostWatch host;
  PulseOutput steering;
  PulseOutput throttle;
  ThrottleGuard guard;
  MotorMotion motion;
  LoadBank loads;
  Feed feed;
  FailSafeTest failSafe;
  TripWatch trips;
  Switches switches;
  EventQueue events;
  Store store;

 private:
  static constexpr uint8_t kConverterDeadMs = 5;

  uint8_t elapsed(Tick now);
  void watchConverter(uint8_t ms);
  void watchLines(Tick now);
  void watchEdges(uint8_t ms);
  void watchMotion(uint8_t ms);
  void watchTrips(Tick now, uint8_t ms);
  void watchFeed(Tick now, uint8_t ms);
  void watchBleeder(Tick now, uint8_t ms);
  void watchThrottle(Tick now, uint8_t ms);
  void advanceDrives(Tick now, uint8_t ms);
  void advanceFailSafe(Tick now, uint8_t ms);
  void advanceLoads(Tick now, uint8_t ms);
  void advanceOrder(Tick now, uint8_t ms);
  void publish();

  void trip(uint8_t code, uint8_t place, uint16_t raw, Tick now);
  void beginOrder(Tick now);
  void setState(uint8_t state);
  void setFeed(uint8_t level, Tick now);
  /** Edges of Hall line A would be noticed. */
  bool hearing() const;
  bool mayLoseSight() const;
  bool turning() const { return edgeAgeMs_ < MotorMotion::kSlowEdgeMs; }
  uint32_t turnTicks() const;
  Tick sinceEdge(Tick now) const;
  /** Captured edges, counted only while they come from the motor. */
  uint16_t hallEdges() const { return captureSource_ == kCaptureSourceHallA ? edgesSeen_ : 0; }
  bool railUp() const { return sampler.readings.fresh(tap::railVoltage) && sampler.readings.raw(tap::railVoltage) > kRailUpRaw; }
  uint16_t railRawForHeat() const;
  /** The wide tap is beyond the short limit, and the current comes out of the pack. */
  bool shorted() const;
  bool supplyGood() const;
  bool live() const { return state_ == kStateLive; }
  uint8_t notLive() const;
  uint8_t mayLoad(uint8_t mask, uint16_t ms, uint16_t& detail) const;
  uint8_t mayDrive(uint8_t output, uint16_t width, uint16_t holdMs, uint16_t& detail) const;
  uint8_t mayThrottle(uint16_t width, uint16_t& detail) const;
  uint8_t mayFeed(uint8_t level, uint16_t& detail) const;
  uint8_t mayFeedLimited(uint16_t& detail) const;
  uint8_t mayLoadPack(uint16_t ms, uint16_t& detail) const;
  uint8_t mayAct(const MsgBurst& wish, uint16_t& detail) const;
  bool blindsThrottle(const MsgBurst& wish) const;
  bool throttleActionWaits() const;
  bool actionStillFits() const;
  void finishAction();
  void doDrive(uint8_t output, uint16_t width, uint16_t rampMs, uint16_t holdMs);

  uint8_t state_ = kStateSafe;
  uint8_t tripCode_ = kTripNone;
  uint8_t tripPlace_ = tap::none;
  uint16_t tripRaw_ = 0;
  Tick tripTick_ = 0;
  volatile bool stateNews_ = false;
  Tick lastTurn_ = 0;
  uint8_t conversionsSeen_ = 0;
  uint8_t converterIdleMs_ = 0;
  uint16_t edgesSeen_ = 0;
  uint8_t edgeAgeMs_ = 255;
  bool edgeACame_ = false;
  uint16_t edgesBCSeen_ = 0;
  uint8_t maskedSeen_ = 0;
  uint16_t noisyLines_ = 0;
  uint8_t captureSource_ = kCaptureSourceHallA;
  bool ordering_ = false;
  uint16_t orderMs_ = 0;
  uint16_t bleederMs_ = 0;
  uint16_t steeringPeriod_ = 40000;
  uint16_t throttlePeriod_ = 40000;
  uint8_t action_ = kActionNone;
  uint16_t actionArgument_ = 0;
  uint16_t actionMs_ = 0;
  volatile bool actionFired_ = false;
  Tick actionTick_ = 0;
  uint32_t actionSample_ = 0;
};
