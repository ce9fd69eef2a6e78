// SPDX-License-Identifier: MIT
// What a trip names: its tap, or none.
#include "fake_rig.h"
#include "test.h"

TEST("a trip without a tap names none, nor does a rig without a trip or with one cleared") {
  const auto tap = [](const FakeRig& f) { return f.rig.stateMessage(0).tripTap; };
  FakeRig silent;
  silent.prepare();
  EXPECT(tap(silent), 255);
  silent.goLive();
  silent.beats = false;
  silent.ms(120);
  EXPECT(silent.tripCode(), kTripHostLost);
  EXPECT(tap(silent), 255);
  FakeRig pressed;
  pressed.prepare();
  pressed.goLive();
  pressed.stopOpen = true;
  pressed.ms(5);
  EXPECT(pressed.tripCode(), kTripStopLine);
  EXPECT(tap(pressed), 255);
  FakeRig deaf;
  deaf.powerUp();
  for (uint16_t width = 3020; width <= 3160; width += 20) {
    deaf.drive(kOutputThrottle, width);
    deaf.ms(50);
  }
  deaf.ms(500);
  EXPECT(deaf.tripCode(), kTripNoHall);
  EXPECT(tap(deaf), 255);
  FakeRig stopped;
  stopped.powerUp();
  stopped.converterRuns = false;
  stopped.ms(10);
  EXPECT(stopped.tripCode(), kTripConverter);
  EXPECT(tap(stopped), 255);
  FakeRig fast;
  fast.powerUp();
  fast.edgeTicks = 990;
  fast.ms(100);
  EXPECT(fast.tripCode(), kTripOverSpeed);
  EXPECT(tap(fast), 255);
}

TEST("the tap of a trip is forgotten with it") {
  FakeRig f;
  f.powerUp();
  f.raw[tap::packWide] = 359;
  f.ms(400);
  EXPECT(f.rig.stateMessage(0).tripTap, tap::packWide);
  f.raw[tap::packWide] = 154;
  f.ms(2000);
  EXPECT(f.rig.clearTrip(f.detail), 0);
  EXPECT(f.rig.stateMessage(0).tripTap, 255);
}

TEST("after a watchdog or brown-out reset the trip names no tap") {
  for (const uint8_t cause : {kResetCauseWatchdog, kResetCauseBrownOut}) {
    Rig rig;
    rig.start(cause, 0);
    EXPECT(rig.state(), kStateTripped);
    EXPECT(rig.stateMessage(0).tripTap, 255);
  }
}
