// SPDX-License-Identifier: MIT
// Every measured trip: its level, its time, what it names, and that limits move to the safe side only.
#include "fake_rig.h"
#include "test.h"

namespace {
/** Live with everything well; then one reading goes bad. Milliseconds until the trip, or 0 when none came in `mostMs`. */
uint32_t tripAfter(FakeRig& f, uint32_t mostMs) {
  for (uint32_t ms = 1; ms <= mostMs; ++ms) {
    f.ms(1);
    if (f.tripCode() != kTripNone) return ms;
  }
  return 0;
}
bool near(uint32_t got, uint32_t wanted, uint32_t by) { return got + by >= wanted && got <= wanted + by; }
}  // namespace

TEST("wide pack current: 40 A for 300 ms") {
  FakeRig f;
  f.powerUp();
  f.raw[tap::packWide] = 358;
  EXPECT(tripAfter(f, 1000), 0);
  f.raw[tap::packWide] = 359;
  EXPECT(near(tripAfter(f, 1000), 300, 2), true);
  EXPECT(f.tripCode(), kTripPackCurrent);
  EXPECT(f.rig.stateMessage(0).tripTap, tap::packWide);
  EXPECT(f.rig.stateMessage(0).tripRaw, 359);
}

TEST("a spin-up peak shorter than that passes") {
  FakeRig f;
  f.powerUp();
  for (int i = 0; i < 5; ++i) {
    f.raw[tap::packWide] = 700;
    f.ms(290);
    f.raw[tap::packWide] = 160;
    f.ms(5);
  }
  EXPECT(f.tripCode(), kTripNone);
}

TEST("limits can be tightened and never loosened beyond their bound") {
  FakeRig f;
  f.powerUp();
  EXPECT(f.rig.limit({1, kLimitPackWideSlow, 359, 300}, f.detail), kReasonOutOfRange);
  EXPECT(f.rig.limit({1, kLimitPackWideSlow, 300, 301}, f.detail), kReasonOutOfRange);
  EXPECT(f.rig.limit({1, kLimitPackUnder, 613, 100}, f.detail), kReasonOutOfRange);
  EXPECT(f.rig.limit({1, kLimitThermistor1, 132, 100}, f.detail), kReasonOutOfRange);
  EXPECT(f.rig.limit({1, kLimitOverSpeed, 499, 20}, f.detail), kReasonOutOfRange);
  EXPECT(f.rig.limit({1, 10, 0, 0}, f.detail), kReasonOutOfRange);
  EXPECT(f.rig.limit({1, kLimitOverSpeed, 500, 20}, f.detail), 0);
  EXPECT(f.rig.limit({1, kLimitPackWideSlow, 246, 40}, f.detail), 0);
  f.raw[tap::packWide] = 250;
  EXPECT(near(tripAfter(f, 100), 40, 2), true);
}

TEST("the fast limit can be tightened") {
  FakeRig f;
  f.powerUp();
  EXPECT(f.rig.limit({1, kLimitPackWideFast, 871, 0}, f.detail), kReasonOutOfRange);
  EXPECT(f.rig.limit({1, kLimitPackWideFast, 500, 0}, f.detail), 0);
  f.raw[tap::packWide] = 500;
  EXPECT(tripAfter(f, 5) <= 3, true);
  EXPECT(f.tripCode(), kTripShortCircuit);
}

TEST("a short on the slow slot is still found within 5 ms") {
  FakeRig f;
  f.powerUp();
  f.rig.stream(true, f.detail);
  EXPECT(f.rig.burst({1, 5, 1000, kActionNone, 0, 0, 0}, f.detail), 0);
  f.raw[tap::packWide] = 900;
  EXPECT(tripAfter(f, 5) <= 2, true);
}

TEST("the narrow tap trips only where the host set a limit") {
  FakeRig f;
  f.powerUp();
  f.rig.scanList({1, {0, 1, 2, 4}, 7}, f.detail);
  f.raw[tap::packNarrow] = 1023;
  EXPECT(tripAfter(f, 500), 0);
  EXPECT(f.rig.limit({1, kLimitPackNarrowSlow, 573, 100}, f.detail), 0);
  EXPECT(near(tripAfter(f, 500), 100, 2), true);
  EXPECT(f.tripCode(), kTripPackCurrent);
}

TEST("rail current: 8.5 A for 500 ms") {
  FakeRig f;
  f.powerUp();
  f.rig.scanList({1, {0, 5, 2, 3}, 7}, f.detail);
  f.raw[tap::railCurrent] = 973;
  EXPECT(near(tripAfter(f, 1000), 500, 2), true);
  EXPECT(f.tripCode(), kTripRailCurrent);
}

TEST("a clipped rail or wide tap trips after more than 50 ms, at either end") {
  for (const uint16_t code : {1021, 1}) {
    FakeRig f;
    f.powerUp();
    f.rig.scanList({1, {0, 5, 2, 3}, 7}, f.detail);
    f.raw[tap::railCurrent] = code;
    f.ms(48);
    f.raw[tap::railCurrent] = 500;
    f.ms(5);
    EXPECT(f.tripCode(), kTripNone);
    f.raw[tap::railCurrent] = code;
    EXPECT(near(tripAfter(f, 100), 51, 2), true);
    EXPECT(f.tripCode(), kTripClipped);
    EXPECT(f.rig.stateMessage(0).tripTap, tap::railCurrent);
  }
  FakeRig f;
  f.powerUp();
  f.raw[tap::packWide] = 0;
  EXPECT(near(tripAfter(f, 100), 51, 2), true);
}

TEST("pack below 6.0 V for 100 ms trips with the feed full only") {
  FakeRig f;
  f.prepare();
  f.goLive();
  f.raw[tap::packVoltage] = 613;
  EXPECT(tripAfter(f, 500), 0);
  FakeRig full;
  full.powerUp();
  full.raw[tap::packVoltage] = 613;
  EXPECT(near(tripAfter(full, 500), 100, 2), true);
  EXPECT(full.tripCode(), kTripUnderVoltage);
}

TEST("thermistors trip when watched: hot, open, shorted") {
  struct Case {
    uint16_t code;
    uint8_t trip;
    uint32_t ms;
  };
  for (const Case c : {Case{132, kTripOverTemperature, 100}, Case{1011, kTripThermistorOpen, 24}, Case{11, kTripThermistorShort, 24}}) {
    for (uint8_t thermistor = 0; thermistor < 4; ++thermistor) {
      FakeRig f;
      f.prepare();
      f.goLive();
      f.raw[8 + thermistor] = c.code;
      EXPECT(tripAfter(f, 300), 0);
      f.rig.watch(1 << thermistor);
      EXPECT(near(tripAfter(f, 300), c.ms, 10), true);
      EXPECT(f.tripCode(), c.trip);
      EXPECT(f.rig.stateMessage(0).tripTap, 8 + thermistor);
    }
  }
  FakeRig f;
  EXPECT(f.rig.watch(16), kReasonOutOfRange);
}

TEST("a watched thermistor that feels no heat in a minute of power is a trip; one that warms is not") {
  FakeRig f;
  f.powerUp();
  f.rig.scanList({1, {0, 1, 2, 4}, 7}, f.detail);
  f.rig.watch(1);
  f.raw[tap::packNarrow] = 300;
  EXPECT(near(tripAfter(f, 70000), 60000, 50), true);
  EXPECT(f.tripCode(), kTripThermistorIdle);
  FakeRig warm;
  warm.powerUp();
  warm.rig.scanList({1, {0, 1, 2, 4}, 7}, warm.detail);
  warm.rig.watch(1);
  warm.raw[tap::packNarrow] = 300;
  for (int i = 0; i < 10; ++i) {
    warm.ms(10000);
    warm.raw[8] -= 1;
  }
  EXPECT(warm.tripCode(), kTripNone);
}

TEST("over-speed: the mean edge distance below its limit for 20 ms") {
  FakeRig f;
  f.powerUp();
  f.edgeTicks = 1000;
  EXPECT(tripAfter(f, 200), 0);
  f.edgeTicks = 990;
  EXPECT(near(tripAfter(f, 200), 20, 3), true);
  EXPECT(f.tripCode(), kTripOverSpeed);
  EXPECT(f.rig.stateMessage(0).tripRaw, 990);
}

TEST("the rig's own supply below 4.5 V trips") {
  FakeRig f;
  f.powerUp();
  f.raw[tap::reference] = 569;
  EXPECT(tripAfter(f, 100) > 20, true);
  EXPECT(f.tripCode(), kTripSupply);
}

TEST("a converter that stops trips in 5 ms") {
  FakeRig f;
  f.powerUp();
  f.converterRuns = false;
  EXPECT(near(tripAfter(f, 20), 5, 1), true);
  EXPECT(f.tripCode(), kTripConverter);
}

TEST("a storm on a line masks it and is counted; it trips with feed and Hall supply on") {
  FakeRig f;
  f.prepare();
  f.storm(EdgeCount::hallB, 25);
  f.ms(1);
  EXPECT(f.rig.edges.masked, EdgeCount::hallB);
  EXPECT(f.rig.noisyLines(), 1);
  EXPECT(f.tripCode(), kTripNone);
  f.rig.capture(kCaptureSourceHallA);
  EXPECT(f.rig.edges.masked, 0);
  f.storm(EdgeCount::hallC, 24);
  f.ms(1);
  EXPECT(f.rig.edges.masked, 0);
  FakeRig live;
  live.powerUp();
  live.rig.setSwitch(kSwitchHallSupply, 1, 0, live.detail);
  live.edgeTicks = 70;
  EXPECT(tripAfter(live, 10) > 0, true);
  EXPECT(live.tripCode(), kTripNoisyLine);
}

TEST("all three Hall lines alike are counted as no valid state") {
  EdgeCount edges;
  for (uint8_t state = 0; state < 8; ++state) edges.state(state, 7);
  EXPECT(edges.badHall, 2);
}
