// SPDX-License-Identifier: MIT
// Feed, load bank, switches: first power, shorts, polarity, the bank's heat, the pack load's rests, a stuck feed.
#include "fake_rig.h"
#include "test.h"

TEST("the limited feed wants live, its taps and a pack the right way round") {
  FakeRig f;
  f.prepare();
  EXPECT(f.feed(kFeedLevelLimited), kReasonNotLive);
  f.goLive();
  f.ms(20);
  EXPECT(f.feed(3), kReasonOutOfRange);
  f.rig.scanList({1, {0, 1, 2, 3}, 7}, f.detail);
  f.ms(60);
  EXPECT(f.feed(kFeedLevelLimited), kReasonTapNotScanned);
  EXPECT(f.detail, tap::controllerVoltage);
  f.rig.scanList({1, {0, 5, 2, 4}, 7}, f.detail);
  f.raw[tap::polarity] = 253;
  f.ms(20);
  EXPECT(f.feed(kFeedLevelLimited), kReasonPolarity);
  EXPECT(f.detail, 253);
  f.raw[tap::polarity] = 580;
  f.ms(20);
  EXPECT(f.feed(kFeedLevelLimited), kReasonPolarity);
  f.raw[tap::polarity] = 771;
  f.ms(20);
  EXPECT(f.feed(kFeedLevelLimited), 0);
  EXPECT(f.rig.firstRegister() & 0x18, 0x08);
}

TEST("the full feed wants 95 % of the pack within a second, and tells how far it came") {
  FakeRig f;
  f.prepare();
  f.goLive();
  f.ms(MotorMotion::kAfterResetMs);
  EXPECT(f.feed(kFeedLevelFull), kReasonNoFirstPower);
  f.feed(kFeedLevelLimited);
  f.raw[tap::controllerVoltage] = 700;
  f.ms(1100);
  f.raw[tap::controllerVoltage] = 770;
  f.ms(100);
  EXPECT(f.feed(kFeedLevelFull), kReasonNoFirstPower);
  EXPECT(f.detail, 700 * 1000 / 778);
  EXPECT(f.eventCame(kEventFirstPower), false);
  EXPECT(f.feed(kFeedLevelOff), 0);
  f.raw[tap::controllerVoltage] = 300;
  f.ms(20);
  f.feed(kFeedLevelLimited);
  f.ms(200);
  f.raw[tap::controllerVoltage] = 740;
  f.ms(10);
  uint32_t filledMs = 0;
  EXPECT(f.eventCame(kEventFirstPower, &filledMs), true);
  EXPECT(filledMs >= 200 && filledMs <= 205, true);
  EXPECT(f.feed(kFeedLevelFull), 0);
  EXPECT(f.rig.firstRegister() & 0x18, 0x10);
}

TEST("a controller side below 0.1 V 300 ms after the limited feed is a short: the feed opens") {
  FakeRig f;
  f.prepare();
  f.goLive();
  f.ms(20);
  f.raw[tap::controllerVoltage] = 9;
  f.feed(kFeedLevelLimited);
  f.ms(299);
  EXPECT(f.rig.feed.on(), true);
  f.ms(2);
  EXPECT(f.rig.feed.on(), false);
  uint32_t level = 9;
  f.events.erase(f.events.begin(), f.events.end() - 1);
  EXPECT(f.eventCame(kEventFeed, &level), true);
  EXPECT(level, kFeedLevelOff);
}

TEST("the feed does not open on command while the motor turns") {
  FakeRig f;
  f.powerUp();
  f.proveMotor();
  f.drive(kOutputThrottle, 3300);
  f.ms(20);
  EXPECT(f.feed(kFeedLevelOff), kReasonNotStill);
  f.motorFollows = false;
  f.drive(kOutputThrottle, 3000);
  f.ms(20);
  EXPECT(f.feed(kFeedLevelLimited), kReasonNotStill);
  f.edgeTicks = 0;
  f.ms(29);
  EXPECT(f.feed(kFeedLevelOff), kReasonNotStill);
  f.ms(31);
  EXPECT(f.feed(kFeedLevelOff), 0);
}

TEST("the load bank starts hot: 30 J, cooling with 3 W") {
  FakeRig f;
  f.powerUp();
  // 614 codes are 5.996 V: 100 mS draw 3.595 W.
  EXPECT(f.rig.loads.heldMicrojoule() > 20000000, true);
  FakeRig cold;
  cold.prepare();
  cold.goLive();
  cold.raw[tap::railVoltage] = 614;
  cold.ms(10000);
  EXPECT(cold.rig.loads.heldMicrojoule(), 0);
  EXPECT(cold.load(1, 2000), 0);
  cold.ms(1000);
  // 3.595 J in, 3 J out.
  EXPECT(cold.rig.loads.heldMicrojoule() / 1000 >= 590 && cold.rig.loads.heldMicrojoule() / 1000 <= 600, true);
}

TEST("a load that would overheat the bank is refused with the time to wait") {
  FakeRig f;
  f.prepare();
  f.goLive();
  f.raw[tap::railVoltage] = 614;
  f.ms(10000);
  // 768 mS at 5.996 V: 27.6 W; 1 s fits 30 J, 2 s never do.
  EXPECT(f.load(7, 2000), kReasonLoadHot);
  EXPECT(f.detail, 65535);
  EXPECT(f.load(7, 1000), 0);
  f.ms(1000);
  EXPECT(f.eventCame(kEventLoadOff), true);
  EXPECT(f.rig.loads.mask(), 0);
  EXPECT(f.load(7, 1000), kReasonLoadHot);
  const uint16_t wait = f.detail;
  EXPECT(wait > 7000 && wait < 8000, true);
  f.ms(wait);
  EXPECT(f.load(7, 1000), 0);
}

TEST("without a fresh rail voltage the bank reckons with 8.4 V") {
  FakeRig f;
  f.prepare();
  f.goLive();
  f.rig.scanList({1, {0, 5, 1, 4}, 7}, f.detail);
  f.ms(12000);
  // 768 mS at 8.4 V: 54.2 W.
  EXPECT(f.load(7, 560), kReasonLoadHot);
  EXPECT(f.load(7, 550), 0);
}

TEST("loads take their range, end by themselves and want live") {
  FakeRig f;
  f.prepare();
  EXPECT(f.load(1, 10), kReasonNotLive);
  f.goLive();
  f.ms(12000);
  EXPECT(f.load(8, 10), kReasonOutOfRange);
  EXPECT(f.load(1, 0), kReasonOutOfRange);
  EXPECT(f.load(1, 2001), kReasonOutOfRange);
  EXPECT(f.load(2, 100), 0);
  f.ms(99);
  EXPECT(f.rig.loads.mask(), 2);
  f.ms(1);
  EXPECT(f.rig.loads.mask(), 0);
  EXPECT(f.load(2, 100), 0);
  EXPECT(f.load(0, 0), 0);
  EXPECT(f.rig.loads.mask(), 0);
}

TEST("the pack load runs a second at most and rests nine, also after a reset") {
  FakeRig f;
  EXPECT(f.rig.setSwitch(kSwitchPackLoad, 1, 500, f.detail), kReasonNotLive);
  f.prepare();
  f.goLive();
  EXPECT(f.rig.setSwitch(kSwitchPackLoad, 1, 500, f.detail), kReasonLoadHot);
  f.ms(9000);
  EXPECT(f.rig.setSwitch(kSwitchPackLoad, 1, 0, f.detail), kReasonOutOfRange);
  EXPECT(f.rig.setSwitch(kSwitchPackLoad, 1, 1001, f.detail), kReasonOutOfRange);
  EXPECT(f.rig.setSwitch(kSwitchPackLoad, 1, 1000, f.detail), 0);
  EXPECT(f.rig.secondRegister() >> 5 & 1, 1);
  f.ms(1000);
  EXPECT(f.bit(kOutputBitPackLoad), false);
  EXPECT(f.rig.setSwitch(kSwitchPackLoad, 1, 1000, f.detail), kReasonLoadHot);
  EXPECT(f.rig.setSwitch(3, 1, 0, f.detail), kReasonOutOfRange);
}

TEST("a controller side that the bleeder cannot empty in 10 s is a stuck feed") {
  FakeRig f;
  f.prepare();
  f.raw[tap::controllerVoltage] = 778;
  EXPECT(f.rig.setSwitch(kSwitchBleeder, 1, 0, f.detail), 0);
  f.ms(9999);
  EXPECT(f.tripCode(), kTripNone);
  f.ms(2);
  EXPECT(f.tripCode(), kTripStuckFeed);
  FakeRig empty;
  empty.prepare();
  empty.rig.setSwitch(kSwitchBleeder, 1, 0, empty.detail);
  empty.raw[tap::controllerVoltage] = 101;
  empty.ms(12000);
  EXPECT(empty.tripCode(), kTripNone);
}

TEST("the bleeder goes off when the feed comes on, and is refused then") {
  FakeRig f;
  f.prepare();
  f.goLive();
  f.rig.setSwitch(kSwitchBleeder, 1, 0, f.detail);
  f.ms(20);
  f.feed(kFeedLevelLimited);
  EXPECT(f.bit(kOutputBitBleeder), false);
  EXPECT(f.rig.setSwitch(kSwitchBleeder, 1, 0, f.detail), kReasonBusy);
}
