// SPDX-License-Identifier: MIT
// The feed never opens on command, nor before its 1.5 s, while the motor may turn: ways round that, each tried.
#include "fake_rig.h"
#include "test.h"

namespace {
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
}  // namespace

TEST("looking away from a coasting motor is refused, and the feed stays") {
  FakeRig f;
  f.coast();
  EXPECT(f.rig.capture(kCaptureSourceNone), kReasonNotStill);
  EXPECT(f.rig.capture(kCaptureSourceReceiver1), kReasonNotStill);
  EXPECT(f.rig.capture(kCaptureSourceHallA), 0);
  EXPECT(f.feed(kFeedLevelOff), kReasonNotStill);
  f.stopMotor();
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
  f.coast();
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
  f.coast();
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
  f.stopMotor();
  EXPECT(f.feed(kFeedLevelOff), 0);
}

TEST("edges of lines B and C alone keep the feed too") {
  FakeRig f;
  f.coast();
  f.edgeTicks = 0;
  for (int i = 0; i < 20; ++i) {
    f.rig.edges.edgeB();
    f.ms(20);
    EXPECT(f.feed(kFeedLevelOff), kReasonNotStill);
  }
  f.ms(100);
  EXPECT(f.feed(kFeedLevelOff), 0);
}

TEST("a last edge on B or C after a long gap does not make a motor that ran down one that may turn") {
  FakeRig f;
  f.coast();
  f.edgeTicks = 0;
  f.ms(60);
  f.rig.edges.edgeC();
  f.ms(5);
  EXPECT(f.feed(kFeedLevelOff), kReasonNotStill);
  f.ms(40);
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
  f.stopMotor();
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
  f.coast();
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
  f.stopMotor();
  EXPECT(f.feed(kFeedLevelOff), 0);
}

TEST("a push that no edge has answered yet is not a standing motor") {
  FakeRig f;
  f.coast();
  f.stopMotor();
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
  f.coast();
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
  f.coast();
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
