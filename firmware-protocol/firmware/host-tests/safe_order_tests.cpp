// SPDX-License-Identifier: MIT
// The safe order: rest and loads at once, pulses keep running, the feed opens when the motor is slow or after 1.5 s,
// pulses stop after 2 s. At once only in a short circuit.
#include "fake_rig.h"
#include "test.h"

namespace {
void spin(FakeRig& f) {
  f.powerUp();
  f.proveMotor();
  f.drive(kOutputThrottle, 3500, 0, 1000);
  f.drive(kOutputSteering, 3500, 0, 1000);
  f.ms(20);
}
}  // namespace

TEST("safeAll brings both outputs to rest at once while pulses run on, and takes the loads off") {
  FakeRig f;
  f.powerUp();
  f.ms(12000);
  f.drive(kOutputSteering, 3500, 0, 1000);
  EXPECT(f.load(1, 500), 0);
  EXPECT(f.rig.firstRegister() & 7, 1);
  EXPECT(f.rig.safeAll(f.now), 0);
  EXPECT(f.rig.state(), kStateEnding);
  EXPECT(f.rig.steering.shown(), 3000);
  EXPECT(f.rig.throttle.shown(), 3000);
  EXPECT(f.rig.firstRegister() & 7, 0);
  f.ms(1999);
  EXPECT(f.bit(kOutputBitSteeringPulses), true);
  EXPECT(f.bit(kOutputBitThrottlePulses), true);
  EXPECT(f.rig.state(), kStateEnding);
  f.ms(2);
  EXPECT(f.bit(kOutputBitSteeringPulses), false);
  EXPECT(f.rig.state(), kStateSafe);
}

TEST("with a motor that never moved the feed opens at the first turn") {
  FakeRig f;
  f.powerUp();
  f.ms(MotorMotion::kAfterResetMs);
  f.rig.safeAll(f.now);
  f.ms(1);
  EXPECT(f.rig.feed.on(), false);
}

TEST("with a turning motor the feed waits until no edge came for 30 ms") {
  FakeRig f;
  spin(f);
  f.motorFollows = false;
  f.rig.safeAll(f.now);
  f.ms(200);
  EXPECT(f.rig.feed.full(), true);
  f.edgeTicks = 70000;
  f.ms(100);
  EXPECT(f.rig.feed.on(), false);
  EXPECT(f.bit(kOutputBitThrottlePulses), true);
}

TEST("a motor that keeps turning loses the feed after 1.5 s, still before the pulses stop") {
  FakeRig f;
  spin(f);
  f.motorFollows = false;
  f.rig.safeAll(f.now);
  f.ms(1499);
  EXPECT(f.rig.feed.full(), true);
  f.ms(2);
  EXPECT(f.rig.feed.on(), false);
  EXPECT(f.bit(kOutputBitThrottlePulses), true);
}

TEST("a motor without edges counts as turning: the feed waits its 1.5 s") {
  FakeRig f;
  f.powerUp();
  f.drive(kOutputThrottle, 3020, 0, 1000);
  f.ms(50);
  f.rig.safeAll(f.now);
  f.ms(1400);
  EXPECT(f.rig.feed.full(), true);
  f.ms(101);
  EXPECT(f.rig.feed.on(), false);
}

TEST("in a short circuit the feed opens at once, and within 5 ms of the first conversion") {
  FakeRig f;
  spin(f);
  f.motorFollows = false;
  f.raw[tap::packWide] = 900;
  f.ms(3);
  EXPECT(f.tripCode(), kTripShortCircuit);
  EXPECT(f.rig.feed.on(), false);
  EXPECT(f.rig.throttle.shown(), 3000);
  EXPECT(f.rig.firstRegister() & 0x18, 0);
}

TEST("two conversions beyond the short limit are not a short circuit") {
  FakeRig f;
  spin(f);
  EXPECT(f.rig.burst({1, tap::packWide, 4000, kActionNone, 0, 0, 0}, f.detail), 0);
  f.ms(1);
  for (int i = 0; i < 50; ++i) {
    f.raw[tap::packWide] = 900;
    f.conversions(2);
    f.rig.supervise(f.now += kTicksPerMs, false);
    EXPECT(f.tripCode(), kTripNone);
    f.raw[tap::packWide] = 200;
    f.conversions(9);
  }
  f.raw[tap::packWide] = 900;
  f.conversions(3);
  f.rig.supervise(f.now += kTicksPerMs, false);
  EXPECT(f.tripCode(), kTripShortCircuit);
}

TEST("a trip during the order keeps the order running") {
  FakeRig f;
  spin(f);
  f.motorFollows = false;
  f.rig.safeAll(f.now);
  f.ms(1000);
  f.stopOpen = true;
  f.ms(10);
  EXPECT(f.rig.state(), kStateTripped);
  f.ms(600);
  EXPECT(f.rig.feed.on(), false);
  f.ms(500);
  EXPECT(f.bit(kOutputBitThrottlePulses), false);
  EXPECT(f.rig.state(), kStateTripped);
}

TEST("safeAll is acknowledged in every state") {
  FakeRig f;
  EXPECT(f.rig.safeAll(f.now), 0);
  f.prepare();
  EXPECT(f.rig.safeAll(f.now), 0);
  EXPECT(f.rig.state(), kStateSafe);
  f.goLive();
  f.stopOpen = true;
  f.ms(10);
  EXPECT(f.rig.safeAll(f.now), 0);
  EXPECT(f.rig.state(), kStateTripped);
}

TEST("a marked action and a fail-safe test are dropped by the order") {
  FakeRig f;
  spin(f);
  EXPECT(f.rig.burst({1, tap::packWide, 2000, kActionThrottle, 3400, 100, 1000}, f.detail), 0);
  f.rig.safeAll(f.now);
  f.ms(200);
  EXPECT(f.eventCame(kEventAction), false);
  EXPECT(f.rig.throttle.shown(), 3000);
}

TEST("nothing is driven while the order runs") {
  FakeRig f;
  spin(f);
  f.rig.safeAll(f.now);
  EXPECT(f.drive(kOutputThrottle, 3100), kReasonNotLive);
  EXPECT(f.drive(kOutputSteering, 3100), kReasonNotLive);
  EXPECT(f.load(1, 10), kReasonNotLive);
  EXPECT(f.feed(kFeedLevelFull), kReasonNotLive);
  EXPECT(f.goLive(), kReasonBusy);
}
