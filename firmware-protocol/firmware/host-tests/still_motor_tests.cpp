// SPDX-License-Identifier: MIT
// The feed never opens on command, nor before its 1.5 s, while the motor may turn: ways round that, each tried.
// And nothing moves by a marked action whose conditions are gone.
#include "fake_rig.h"
#include "test.h"

namespace {
void spin(FakeRig& f) {
  f.powerUp();
  f.proveMotor();
  f.drive(kOutputThrottle, 3500, 0, 1000);
  f.ms(100);
}
/** Throttle at rest, the motor turns on by itself. */
void coast(FakeRig& f) {
  spin(f);
  f.motorFollows = false;
  f.drive(kOutputThrottle, 3000);
  f.ms(20);
}
void stopMotor(FakeRig& f) {
  f.edgeTicks = 0;
  f.ms(100);
}
/** Limited, then full, of a rig that is live already. */
void feedUp(FakeRig& f) {
  f.ms(50);
  f.raw[tap::controllerVoltage] = 0;
  EXPECT(f.feed(kFeedLevelLimited), 0);
  f.raw[tap::controllerVoltage] = 770;
  f.ms(50);
  EXPECT(f.feed(kFeedLevelFull), 0);
}
uint8_t hallSupply(FakeRig& f, uint8_t on, uint16_t ms) { return f.rig.setSwitch(kSwitchHallSupply, on, ms, f.detail); }
uint8_t markThrottle(FakeRig& f, uint16_t width, uint16_t atSample) {
  return f.rig.burst({1, tap::packWide, 4000, kActionThrottle, width, 300, atSample}, f.detail);
}
}  // namespace

TEST("looking away from a coasting motor is refused, and the feed stays") {
  FakeRig f;
  coast(f);
  EXPECT(f.rig.capture(kCaptureSourceNone), kReasonNotStill);
  EXPECT(f.rig.capture(kCaptureSourceReceiver1), kReasonNotStill);
  EXPECT(f.rig.capture(kCaptureSourceHallA), 0);
  EXPECT(f.feed(kFeedLevelOff), kReasonNotStill);
  stopMotor(f);
  EXPECT(f.rig.capture(kCaptureSourceReceiver1), 0);
  EXPECT(f.feed(kFeedLevelOff), 0);
}

TEST("looking away and back does not make a motor without edges stand still") {
  FakeRig f;
  f.powerUp();
  f.ms(MotorMotion::kAfterResetMs);
  EXPECT(f.rig.capture(kCaptureSourceReceiver1), 0);
  f.ms(2600);
  EXPECT(f.drive(kOutputThrottle, 3020), 0);
  f.ms(50);
  f.drive(kOutputThrottle, 3000);
  f.ms(200);
  EXPECT(f.rig.capture(kCaptureSourceNone), kReasonNotStill);
  EXPECT(f.rig.capture(kCaptureSourceHallA), kReasonNotStill);
  EXPECT(f.feed(kFeedLevelOff), kReasonNotStill);
  f.rig.safeAll(f.now);
  f.ms(1499);
  EXPECT(f.rig.feed.full(), true);
  f.ms(600);
  EXPECT(f.rig.feed.on(), false);
  EXPECT(f.rig.capture(kCaptureSourceHallA), 0);
}

TEST("going live again while the motor coasts does not make it stand still") {
  FakeRig f;
  coast(f);
  f.rig.safeAll(f.now);
  f.ms(2001);
  EXPECT(f.rig.state(), kStateSafe);
  EXPECT(f.goLive(), 0);
  feedUp(f);
  EXPECT(f.feed(kFeedLevelOff), kReasonNotStill);
  EXPECT(f.feed(kFeedLevelLimited), kReasonNotStill);
  f.rig.safeAll(f.now);
  f.ms(1499);
  EXPECT(f.rig.feed.full(), true);
  f.ms(2);
  EXPECT(f.rig.feed.on(), false);
}

TEST("what is not known of the motor outlives the feed, a trip and a look elsewhere") {
  FakeRig f;
  coast(f);
  f.stopOpen = true;
  f.ms(2100);
  f.stopOpen = false;
  f.ms(10);
  EXPECT(f.rig.clearTrip(f.detail), 0);
  EXPECT(f.rig.feed.on(), false);
  EXPECT(f.rig.capture(kCaptureSourceNone), 0);
  f.ms(100);
  EXPECT(f.rig.capture(kCaptureSourceHallA), 0);
  f.edgeTicks = 0;
  EXPECT(f.goLive(), 0);
  feedUp(f);
  EXPECT(f.feed(kFeedLevelOff), kReasonNotStill);
}

TEST("a motor that turns although the throttle never moved keeps the feed") {
  FakeRig f;
  f.powerUp();
  f.ms(MotorMotion::kAfterResetMs);
  f.edgeTicks = 4000;
  f.ms(50);
  EXPECT(f.feed(kFeedLevelOff), kReasonNotStill);
  stopMotor(f);
  EXPECT(f.feed(kFeedLevelOff), 0);
}

TEST("edges of lines B and C alone keep the feed too") {
  FakeRig f;
  coast(f);
  f.edgeTicks = 0;
  for (int i = 0; i < 20; ++i) {
    f.rig.edges.edgeB();
    f.ms(20);
    EXPECT(f.feed(kFeedLevelOff), kReasonNotStill);
  }
  f.ms(100);
  EXPECT(f.feed(kFeedLevelOff), 0);
}

TEST("for 10 s after a reset nobody knows whether the motor turns") {
  FakeRig f;
  f.powerUp();
  EXPECT(f.feed(kFeedLevelOff), kReasonNotStill);
  EXPECT(f.rig.capture(kCaptureSourceNone), kReasonNotStill);
  f.ms(10000 - 3100);
  EXPECT(f.feed(kFeedLevelOff), kReasonNotStill);
  f.ms(400);
  EXPECT(f.feed(kFeedLevelOff), 0);
}

TEST("the Hall supply stays on while the motor may turn, also when its time is up") {
  FakeRig f;
  f.prepare();
  f.goLive();
  EXPECT(hallSupply(f, 1, 5000), 0);
  feedUp(f);
  f.raw[tap::railVoltage] = 614;
  f.ms(2600);
  f.proveMotor();
  f.motorFollows = false;
  f.ms(50);
  EXPECT(hallSupply(f, 0, 0), kReasonNotStill);
  f.ms(4000);
  EXPECT(f.bit(kOutputBitHallSupply), true);
  stopMotor(f);
  EXPECT(f.bit(kOutputBitHallSupply), false);
}

TEST("without supply to the Hall lines silence is no standstill") {
  FakeRig f;
  f.prepare();
  hallSupply(f, 1, 0);
  f.goLive();
  feedUp(f);
  f.raw[tap::railVoltage] = 614;
  f.ms(2600);
  f.proveMotor();
  f.motorFollows = false;
  f.rig.safeAll(f.now);
  f.ms(2001);
  EXPECT(hallSupply(f, 0, 0), 0);
  f.edgeTicks = 0;
  f.ms(200);
  EXPECT(f.goLive(), 0);
  feedUp(f);
  EXPECT(f.feed(kFeedLevelOff), kReasonNotStill);
}

TEST("a noisy line between makes what was heard worthless") {
  FakeRig f;
  coast(f);
  f.storm(EdgeCount::hallB, 25);
  f.edgeTicks = 0;
  f.ms(100);
  EXPECT(f.tripCode(), kTripNone);
  EXPECT(f.feed(kFeedLevelOff), kReasonNotStill);
  EXPECT(f.rig.capture(kCaptureSourceHallA), 0);
  f.ms(100);
  EXPECT(f.feed(kFeedLevelOff), kReasonNotStill);
  f.edgeTicks = 4000;
  f.ms(50);
  stopMotor(f);
  EXPECT(f.feed(kFeedLevelOff), 0);
}

TEST("a push that no edge has answered yet is not a standing motor") {
  FakeRig f;
  spin(f);
  f.drive(kOutputThrottle, 3000);
  stopMotor(f);
  f.motorFollows = false;
  f.drive(kOutputThrottle, 3500, 0, 5);
  f.ms(40);
  EXPECT(f.rig.throttle.atRest(), true);
  EXPECT(f.feed(kFeedLevelOff), kReasonNotStill);
  f.edgeTicks = 4000;
  f.ms(10);
  f.edgeTicks = 0;
  f.ms(29);
  EXPECT(f.feed(kFeedLevelOff), kReasonNotStill);
  f.ms(40);
  EXPECT(f.feed(kFeedLevelOff), 0);
}

TEST("the fail-safe test cannot be passed by looking away or losing the line") {
  for (const bool noisy : {false, true}) {
    FakeRig f;
    f.powerUp();
    f.edgeTicks = 4000;
    for (uint16_t width = 3020; width <= 3100; width += 20) {
      f.drive(kOutputThrottle, width);
      f.ms(50);
    }
    EXPECT(f.rig.failSafeTest(400, f.detail), 0);
    f.ms(5);
    EXPECT(f.rig.capture(kCaptureSourceNone), kReasonBusy);
    if (noisy) f.rig.edges.masked = EdgeCount::captured;
    if (noisy) f.edgeTicks = 0;
    f.ms(500);
    uint32_t value = 0;
    EXPECT(f.eventCame(kEventFailSafe, &value), true);
    EXPECT(value, 65535);
    EXPECT(f.rig.stateMessage(0).throttleCap, 300);
  }
}

TEST("a short limit set low does not open the feed while the current is small or negative") {
  FakeRig f;
  coast(f);
  f.raw[tap::packWide] = 140;
  EXPECT(f.rig.limit({1, kLimitPackWideFast, 100, 0}, f.detail), 0);
  f.ms(10);
  EXPECT(f.tripCode(), kTripShortCircuit);
  EXPECT(f.rig.feed.full(), true);
  f.raw[tap::packWide] = 210;
  f.ms(5);
  EXPECT(f.rig.feed.on(), false);
}

TEST("a stopped converter trips, and the feed is held through the order all the same") {
  FakeRig f;
  coast(f);
  f.converterRuns = false;
  for (int i = 0; i < 1490; ++i) {
    f.ms(1);
    EXPECT(f.rig.holdsOutputs(), true);
  }
  EXPECT(f.tripCode(), kTripConverter);
  EXPECT(f.rig.feed.full(), true);
  f.ms(600);
  EXPECT(f.rig.feed.on(), false);
  EXPECT(f.rig.holdsOutputs(), false);
}

TEST("while a throttle action waits neither the feed nor the capture input changes") {
  FakeRig f;
  coast(f);
  stopMotor(f);
  EXPECT(markThrottle(f, 3300, 3000), 0);
  EXPECT(f.feed(kFeedLevelOff), kReasonBusy);
  EXPECT(f.rig.capture(kCaptureSourceNone), kReasonBusy);
  f.ms(320);
  EXPECT(f.rig.throttle.shown(), 3300);
}

TEST("a marked action that no longer fits its output's limits is dropped, and no event tells of it") {
  FakeRig f;
  f.powerUp();
  EXPECT(f.rig.burst({1, tap::packWide, 4000, kActionSteering, 3700, 300, 1000}, f.detail), 0);
  EXPECT(f.rig.driveLimits({1, kOutputSteering, 2200, 3000, 3600}, f.detail), 0);
  f.ms(150);
  EXPECT(f.eventCame(kEventAction), false);
  EXPECT(f.rig.steering.shown(), 3000);
}

TEST("a throttle action is dropped when the throttle's rules began anew before it fired") {
  FakeRig f;
  coast(f);
  stopMotor(f);
  EXPECT(markThrottle(f, 3500, 3000), 0);
  f.rig.guard.reset();
  f.ms(350);
  EXPECT(f.eventCame(kEventAction), false);
  EXPECT(f.rig.throttle.shown(), 3000);
}

TEST("the throttle wants the wide tap in the scan list too, as a burst ends") {
  FakeRig f;
  coast(f);
  stopMotor(f);
  EXPECT(f.rig.scanList({1, {0, 1, 2, 4}, 7}, f.detail), 0);
  EXPECT(markThrottle(f, 3300, 100), kReasonTapNotScanned);
  EXPECT(f.rig.burst({1, tap::packWide, 4000, kActionNone, 0, 0, 0}, f.detail), 0);
  f.ms(10);
  EXPECT(f.drive(kOutputThrottle, 3300), kReasonTapNotScanned);
}

TEST("the pack load cannot be held on by asking again") {
  FakeRig f;
  f.prepare();
  f.goLive();
  f.ms(9000);
  EXPECT(f.rig.setSwitch(kSwitchPackLoad, 1, 1000, f.detail), 0);
  f.ms(900);
  EXPECT(f.rig.setSwitch(kSwitchPackLoad, 1, 1000, f.detail), 0);
  f.ms(101);
  EXPECT(f.bit(kOutputBitPackLoad), false);
}

TEST("the feed cannot be raised under an open throttle") {
  FakeRig f;
  f.powerUp();
  f.ms(MotorMotion::kAfterResetMs);
  EXPECT(f.feed(kFeedLevelLimited), 0);
  f.ms(50);
  f.rig.throttle.drive(3300, 0, 1000);
  EXPECT(f.feed(kFeedLevelFull), kReasonNotStill);
}
