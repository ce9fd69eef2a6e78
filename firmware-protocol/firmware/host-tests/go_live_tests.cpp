// SPDX-License-Identifier: MIT
// Nothing goes live before its conditions hold; a silent host, the stop line and safeAll end it in the safe order.
#include "fake_rig.h"
#include "test.h"

TEST("going live is refused until each condition holds, in the order told") {
  FakeRig f;
  f.ms(30);
  EXPECT(f.goLive(), kReasonNotStreaming);
  EXPECT(f.detail, 1 << kConditionStreamOff | 1 << kConditionStopNotSeen);
  f.rig.stream(true, f.detail);
  f.stopOpen = true;
  f.ms(30);
  EXPECT(f.goLive(), kReasonStopOpen);
  f.stopOpen = false;
  f.ms(5);
  EXPECT(f.goLive(), kReasonStopNotSeen);
  f.pressStop();
  f.rig.scanList({1, {0, 1, 2, 3}, 7}, f.detail);
  f.ms(100);
  EXPECT(f.goLive(), 0);
  EXPECT(f.rig.state(), kStateLive);
}

TEST("a supply below 4.5 V or never measured keeps the rig from going live") {
  FakeRig f;
  f.prepare();
  f.raw[tap::reference] = 569;
  f.ms(20);
  EXPECT(f.goLive(), kReasonSupplyLow);
  EXPECT(f.detail, 1 << kConditionSupplyLow);
  f.raw[tap::reference] = 568;
  f.ms(20);
  f.rig.scanList({1, {0, 1, 2, 3}, 6}, f.detail);
  f.ms(100);
  EXPECT(f.goLive(), kReasonSupplyLow);
  f.rig.scanList({1, {0, 1, 2, 3}, 7}, f.detail);
  f.ms(20);
  EXPECT(f.goLive(), 0);
}

TEST("a dead converter keeps the rig from going live") {
  FakeRig f;
  f.prepare();
  f.converterRuns = false;
  f.ms(6);
  EXPECT(f.goLive(), kReasonSupplyLow);
  EXPECT(f.detail, 1 << kConditionConverterDead);
}

TEST("a line that is open from the start is not a press") {
  FakeRig f;
  f.stopOpen = true;
  f.ms(300);
  f.stopOpen = false;
  f.ms(300);
  EXPECT(f.rig.stop.seen(), false);
  EXPECT(f.bit(kOutputBitAskStop), true);
  EXPECT(f.rig.secondRegister() >> 4 & 1, 1);
  f.pressStop();
  EXPECT(f.rig.stop.seen(), true);
  EXPECT(f.rig.secondRegister() >> 4 & 1, 0);
}

TEST("a press shorter than 20 ms is not a press") {
  FakeRig f;
  f.ms(50);
  f.stopOpen = true;
  f.ms(15);
  f.stopOpen = false;
  f.ms(300);
  EXPECT(f.rig.stop.seen(), false);
}

TEST("the same session is acknowledged again, another one refused; a beat of another one does not count") {
  FakeRig f;
  f.prepare();
  f.goLive();
  EXPECT(f.goLive(), 0);
  EXPECT(f.rig.goLive(5, f.now, f.detail), kReasonWrongSession);
  EXPECT(f.rig.beat(5, f.now), kReasonWrongSession);
  f.beats = false;
  for (int i = 0; i < 9; ++i) {
    f.ms(11);
    f.rig.beat(5, f.now);
  }
  EXPECT(f.rig.state(), kStateLive);
  f.ms(1);
  EXPECT(f.tripCode(), kTripHostLost);
}

TEST("the host is lost at exactly 100 ms of rig time without a beat") {
  FakeRig f;
  f.prepare();
  f.beats = false;
  f.goLive();
  f.ms(99);
  EXPECT(f.rig.state(), kStateLive);
  f.ms(1);
  EXPECT(f.rig.state(), kStateTripped);
  EXPECT(f.tripCode(), kTripHostLost);
  EXPECT(f.eventCame(kEventTrip), true);
}

TEST("a beat at 99 ms keeps the rig live, and the worst gap is kept") {
  FakeRig f;
  f.prepare();
  f.beats = false;
  f.goLive();
  f.ms(99);
  f.rig.beat(0xCAFE0001, f.now);
  f.ms(99);
  EXPECT(f.rig.state(), kStateLive);
  EXPECT(f.rig.host.worstGapMs(), 99);
}

TEST("beats do not wake a rig that is not live, and it needs none") {
  FakeRig f;
  f.prepare();
  f.beats = false;
  f.ms(1000);
  EXPECT(f.rig.beat(1, f.now), 0);
  EXPECT(f.rig.state(), kStateSafe);
}

TEST("rig time wraps without losing the host, a drive or a scan") {
  FakeRig f(0xFFFFFFFF - 8000 * kTicksPerMs);
  f.powerUp();
  f.ms(4000);
  EXPECT(f.now > 0x80000000, true);
  f.drive(kOutputSteering, 3400, 1000, 1000);
  f.ms(700);
  while (f.now > 0x80000000) f.ms(1);
  EXPECT(f.rig.state(), kStateLive);
  f.drive(kOutputSteering, 3400, 100, 1000);
  f.ms(999);
  EXPECT(f.rig.steering.shown(), 3400);
  f.ms(1);
  EXPECT(f.rig.steering.shown(), 3000);
  EXPECT(f.rig.state(), kStateLive);
  f.beats = false;
  f.ms(101);
  EXPECT(f.tripCode(), kTripHostLost);
}

TEST("the stop line trips within 5 ms while live, and only shows while not") {
  FakeRig f;
  f.prepare();
  f.stopOpen = true;
  f.ms(5);
  EXPECT(f.rig.state(), kStateSafe);
  EXPECT(f.bit(kOutputBitStopOpen), true);
  f.stopOpen = false;
  f.ms(50);
  f.goLive();
  f.ms(10);
  f.stopOpen = true;
  f.ms(3);
  EXPECT(f.tripCode(), kTripStopLine);
}

TEST("a trip is latched until cleared, after the order and with the stop line closed") {
  FakeRig f;
  f.prepare();
  f.goLive();
  f.stopOpen = true;
  f.ms(10);
  EXPECT(f.rig.clearTrip(f.detail), kReasonBusy);
  EXPECT(f.goLive(), kReasonTripped);
  EXPECT(f.drive(kOutputSteering, 3100), kReasonTripped);
  EXPECT(f.load(1, 100), kReasonTripped);
  f.ms(2100);
  EXPECT(f.rig.clearTrip(f.detail), kReasonStopOpen);
  f.stopOpen = false;
  f.ms(10);
  EXPECT(f.rig.clearTrip(f.detail), 0);
  EXPECT(f.rig.state(), kStateSafe);
  EXPECT(f.goLive(), 0);
}

TEST("after a watchdog or brown-out reset the trip stands, after others not") {
  for (const uint8_t cause : {kResetCauseWatchdog, kResetCauseBrownOut, kResetCausePowerOn, kResetCauseExternal}) {
    Rig rig;
    rig.start(cause, 0);
    const bool trips = cause == kResetCauseWatchdog || cause == kResetCauseBrownOut;
    EXPECT(rig.state(), trips ? kStateTripped : kStateSafe);
    const MsgEvent first = rig.events.take();
    EXPECT(first.kind, kEventRestarted);
    EXPECT(first.value, cause);
    if (trips) EXPECT(rig.stateMessage(0).trip, cause == kResetCauseWatchdog ? kTripWatchdog : kTripBrownOut);
  }
}

TEST("the stream cannot be stopped nor the multiplexer left while live") {
  FakeRig f;
  f.prepare();
  f.goLive();
  EXPECT(f.rig.stream(false, f.detail), kReasonBusy);
  EXPECT(f.rig.scanList({1, {0, 1, 2, 3}, 6}, f.detail), kReasonTapNotScanned);
}
