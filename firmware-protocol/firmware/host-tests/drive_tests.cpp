// SPDX-License-Identifier: MIT
// Drives: every reason to refuse one, ramps, holds, the rules of the throttle, the fail-safe test.
#include "fake_rig.h"
#include "test.h"

TEST("a steering drive is refused until live, limits, width, hold and rail are right") {
  FakeRig f;
  f.rig.stream(true, f.detail);
  f.pressStop();
  EXPECT(f.drive(kOutputSteering, 3100), kReasonNotLive);
  EXPECT(f.goLive(), 0);
  EXPECT(f.drive(kOutputSteering, 3100), kReasonLimitsNotSet);
  EXPECT(f.bit(kOutputBitSteeringPulses), false);
  EXPECT(f.rig.driveLimits({1, kOutputSteering, 2200, 3000, 3800}, f.detail), 0);
  EXPECT(f.bit(kOutputBitSteeringPulses), true);
  EXPECT(f.drive(kOutputSteering, 2199), kReasonOutOfRange);
  EXPECT(f.drive(kOutputSteering, 3801), kReasonOutOfRange);
  EXPECT(f.drive(kOutputSteering, 3100, 0, 0), kReasonOutOfRange);
  EXPECT(f.drive(kOutputSteering, 3100, 0, 1001), kReasonOutOfRange);
  EXPECT(f.drive(kOutputSteering, 3100), kReasonRailDown);
  EXPECT(f.drive(kOutputSteering, 3000), 0);
  f.raw[tap::railVoltage] = 359;
  f.ms(3);
  EXPECT(f.drive(kOutputSteering, 3100), 0);
  EXPECT(f.drive(2, 3100), kReasonOutOfRange);
  f.rig.scanList({1, {0, 1, 3, 4}, 7}, f.detail);
  f.ms(60);
  EXPECT(f.drive(kOutputSteering, 3100), kReasonTapNotScanned);
  EXPECT(f.rig.burst({1, 3, 0, kActionSteering, 3100, 100, 5}, f.detail), kReasonTapNotScanned);
}

TEST("widths of a session stay between 800 and 2200 us, with rest between low and high") {
  FakeRig f;
  EXPECT(f.rig.driveLimits({1, 0, 1599, 3000, 4000}, f.detail), kReasonOutOfRange);
  EXPECT(f.rig.driveLimits({1, 0, 1600, 3000, 4401}, f.detail), kReasonOutOfRange);
  EXPECT(f.rig.driveLimits({1, 0, 3000, 3000, 3000}, f.detail), kReasonOutOfRange);
  EXPECT(f.rig.driveLimits({1, 0, 2000, 1999, 4000}, f.detail), kReasonOutOfRange);
  EXPECT(f.rig.driveLimits({1, 0, 2000, 4001, 4000}, f.detail), kReasonOutOfRange);
  EXPECT(f.rig.driveLimits({1, 2, 2000, 3000, 4000}, f.detail), kReasonOutOfRange);
  EXPECT(f.rig.driveLimits({1, 0, 1600, 3000, 4400}, f.detail), 0);
}

TEST("limits cannot change under a drive, nor the throttle's neutral with the feed on") {
  FakeRig f;
  f.powerUp();
  EXPECT(f.rig.driveLimits({1, kOutputThrottle, 2000, 3100, 4000}, f.detail), kReasonBusy);
  f.drive(kOutputSteering, 3500);
  EXPECT(f.rig.driveLimits({1, kOutputSteering, 2200, 3000, 3800}, f.detail), kReasonBusy);
}

TEST("a ramp takes equal steps of 1 ms and ends exactly at its width") {
  FakeRig f;
  f.powerUp();
  f.drive(kOutputSteering, 3700, 70, 1000);
  for (int step = 1; step <= 70; ++step) {
    f.ms(1);
    EXPECT(f.rig.steering.shown() >= 3000 + 10 * step - 1 && f.rig.steering.shown() <= 3000 + 10 * step, true);
  }
  EXPECT(f.rig.steering.shown(), 3700);
  f.drive(kOutputSteering, 2300, 7, 1000);
  f.ms(7);
  EXPECT(f.rig.steering.shown(), 2300);
}

TEST("a drive ends by itself, goes to rest at once and says so; the same width renews it without a new ramp") {
  FakeRig f;
  f.powerUp();
  f.drive(kOutputSteering, 3600, 600, 500);
  f.ms(300);
  EXPECT(f.rig.steering.shown() / 10, 330);
  f.drive(kOutputSteering, 3600, 600, 500);
  f.ms(300);
  EXPECT(f.rig.steering.shown(), 3600);
  f.ms(199);
  EXPECT(f.rig.steering.shown(), 3600);
  f.ms(1);
  EXPECT(f.rig.steering.shown(), 3000);
  uint32_t output = 9;
  EXPECT(f.eventCame(kEventDriveEnded, &output), true);
  EXPECT(output, kOutputSteering);
}

TEST("the throttle waits for feed, wide current tap and 2.5 s of neutral with the rail up") {
  FakeRig f;
  f.prepare();
  f.goLive();
  f.raw[tap::railVoltage] = 614;
  f.ms(20);
  EXPECT(f.drive(kOutputThrottle, 3020), kReasonFeedOff);
  EXPECT(f.drive(kOutputThrottle, 3000), 0);
  f.feed(kFeedLevelLimited);
  f.raw[tap::controllerVoltage] = 770;
  f.ms(50);
  EXPECT(f.drive(kOutputThrottle, 3020), kReasonFeedOff);
  EXPECT(f.feed(kFeedLevelFull), 0);
  f.rig.scanList({1, {0, 4, 2, 3}, 7}, f.detail);
  f.ms(10);
  EXPECT(f.drive(kOutputThrottle, 3020), kReasonTapNotScanned);
  f.rig.scanList({1, {0, 5, 2, 4}, 7}, f.detail);
  f.ms(10);
  EXPECT(f.drive(kOutputThrottle, 3020), kReasonNeutralTooShort);
  f.raw[tap::railVoltage] = 100;
  f.ms(10);
  f.raw[tap::railVoltage] = 614;
  f.ms(2490);
  EXPECT(f.drive(kOutputThrottle, 3020), kReasonNeutralTooShort);
  f.ms(20);
  EXPECT(f.drive(kOutputThrottle, 3020), 0);
}

TEST("until six edges came the throttle grows by 2 % at most, 40 ms apart") {
  FakeRig f;
  f.powerUp();
  EXPECT(f.drive(kOutputThrottle, 3021), kReasonFirstStep);
  EXPECT(f.detail, 20);
  EXPECT(f.drive(kOutputThrottle, 2979), kReasonFirstStep);
  EXPECT(f.drive(kOutputThrottle, 3020), 0);
  EXPECT(f.drive(kOutputThrottle, 3040), kReasonFirstStep);
  EXPECT(f.detail, 20);
  f.ms(40);
  EXPECT(f.drive(kOutputThrottle, 3040), 0);
  f.edgeTicks = 4000;
  f.ms(9);
  EXPECT(f.drive(kOutputThrottle, 3250), kReasonFirstStep);
  f.ms(10);
  EXPECT(f.drive(kOutputThrottle, 3250), 0);
}

TEST("edges of a receiver prove nothing") {
  FakeRig f;
  f.powerUp();
  f.ms(MotorMotion::kAfterResetMs);
  EXPECT(f.rig.capture(kCaptureSourceReceiver1), 0);
  f.ms(2600);
  f.edgeTicks = 4000;
  EXPECT(f.drive(kOutputThrottle, 3020), 0);
  f.ms(100);
  EXPECT(f.drive(kOutputThrottle, 3100), kReasonFirstStep);
  EXPECT(f.rig.capture(kCaptureSourceHallA), kReasonBusy);
}

TEST("the throttle is capped until the fail-safe test is passed") {
  FakeRig f;
  f.powerUp();
  f.motorFollows = true;
  f.edgeTicks = 4000;
  EXPECT(f.rig.failSafeTest(1000, f.detail), kReasonNotTurning);
  for (uint16_t width = 3020; width <= 3300; width += 20) {
    EXPECT(f.drive(kOutputThrottle, width), 0);
    f.ms(50);
  }
  EXPECT(f.drive(kOutputThrottle, 3301), kReasonThrottleCap);
  EXPECT(f.detail, 300);
  EXPECT(f.rig.failSafeTest(2001, f.detail), kReasonOutOfRange);
  EXPECT(f.rig.failSafeTest(1000, f.detail), 0);
  EXPECT(f.bit(kOutputBitThrottlePulses), false);
  EXPECT(f.drive(kOutputThrottle, 3200), kReasonBusy);
  EXPECT(f.rig.failSafeTest(1000, f.detail), kReasonBusy);
  f.ms(100);
  uint32_t value = 0;
  EXPECT(f.eventCame(kEventFailSafe, &value), true);
  EXPECT(value <= 10 && value >= 4, true);
  EXPECT(f.rig.throttle.shown(), 3000);
  EXPECT(f.rig.stateMessage(0).throttleCap, 1000);
  EXPECT(f.drive(kOutputThrottle, 4000), 0);
}

TEST("a motor that does not slow within half a second keeps the cap, and one that never slows is said so") {
  FakeRig f;
  f.powerUp();
  f.edgeTicks = 4000;
  for (uint16_t width = 3020; width <= 3100; width += 20) {
    f.drive(kOutputThrottle, width);
    f.ms(50);
  }
  f.rig.failSafeTest(800, f.detail);
  f.ms(801);
  uint32_t value = 0;
  EXPECT(f.eventCame(kEventFailSafe, &value), true);
  EXPECT(value, 65535);
  EXPECT(f.rig.stateMessage(0).throttleCap, 300);
  f.events.clear();
  f.drive(kOutputThrottle, 3100);
  f.ms(20);
  f.rig.failSafeTest(800, f.detail);
  f.ms(600);
  f.edgeTicks = 6000;
  f.ms(20);
  EXPECT(f.eventCame(kEventFailSafe, &value), true);
  EXPECT(value > 600, true);
  EXPECT(f.rig.stateMessage(0).throttleCap, 300);
}

TEST("feed off begins the throttle's rules anew") {
  FakeRig f;
  f.powerUp();
  f.proveMotor();
  EXPECT(f.rig.stateMessage(0).throttleCap, 1000);
  f.ms(100);
  EXPECT(f.feed(kFeedLevelOff), 0);
  EXPECT(f.rig.stateMessage(0).throttleCap, 300);
}

TEST("no edge for half a second above 15 % throttle is a trip, below it is not") {
  FakeRig f;
  f.powerUp();
  for (uint16_t width = 3020; width <= 3140; width += 20) {
    f.drive(kOutputThrottle, width);
    f.ms(50);
  }
  f.ms(900);
  EXPECT(f.tripCode(), kTripNone);
  f.drive(kOutputThrottle, 3140);
  f.ms(41);
  f.drive(kOutputThrottle, 3160);
  f.ms(499);
  EXPECT(f.tripCode(), kTripNone);
  f.ms(2);
  EXPECT(f.tripCode(), kTripNoHall);
}

TEST("scan list, burst and capture stay fit for a throttle away from rest") {
  FakeRig f;
  f.powerUp();
  f.drive(kOutputThrottle, 3020);
  EXPECT(f.rig.scanList({1, {0, 1, 2, 4}, 7}, f.detail), kReasonTapNotScanned);
  EXPECT(f.rig.burst({1, 2, 1000, kActionNone, 0, 0, 0}, f.detail), kReasonTapNotScanned);
  EXPECT(f.rig.burst({1, 5, 1000, kActionNone, 0, 0, 0}, f.detail), 0);
  EXPECT(f.rig.burst({1, 5, 1000, kActionNone, 0, 0, 0}, f.detail), kReasonBusy);
}

TEST("frames: 60 Hz at most unless digital, 333 Hz then; the throttle keeps a multiple") {
  FakeRig f;
  EXPECT(f.rig.frame(33332, 0, f.detail), kReasonOutOfRange);
  EXPECT(f.rig.frame(33333, 0, f.detail), 0);
  EXPECT(f.rig.frame(5999, 1, f.detail), kReasonOutOfRange);
  EXPECT(f.rig.frame(50001, 1, f.detail), kReasonOutOfRange);
  EXPECT(f.rig.frame(6000, 1, f.detail), 0);
  EXPECT(f.rig.steeringPeriod(), 6000);
  EXPECT(f.rig.throttlePeriod(), 36000);
}
