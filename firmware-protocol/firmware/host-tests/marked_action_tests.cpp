// SPDX-License-Identifier: MIT
// Nothing moves by a marked action whose conditions are gone when it fires, and nothing changes under one that waits.
#include "fake_rig.h"
#include "test.h"

namespace {
uint8_t markThrottle(FakeRig& f, uint16_t width, uint16_t atSample) {
  return f.rig.burst({1, tap::packWide, 4000, kActionThrottle, width, 300, atSample}, f.detail);
}
}  // namespace

TEST("while a throttle action waits neither the feed nor the capture input changes") {
  FakeRig f;
  f.coast();
  f.stopMotor();
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
  f.coast();
  f.stopMotor();
  EXPECT(markThrottle(f, 3500, 3000), 0);
  f.rig.guard.reset();
  f.ms(350);
  EXPECT(f.eventCame(kEventAction), false);
  EXPECT(f.rig.throttle.shown(), 3000);
}

TEST("the throttle wants the wide tap in the scan list too, as a burst ends") {
  FakeRig f;
  f.coast();
  f.stopMotor();
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
