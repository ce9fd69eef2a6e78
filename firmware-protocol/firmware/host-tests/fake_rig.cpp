// SPDX-License-Identifier: MIT
// See fake_rig.h.
#include "fake_rig.h"

namespace {
constexpr uint32_t kSession = 0xCAFE0001;
}

FakeRig::FakeRig(Tick start) : now(start), nextConversion_(start) {
  // At rest: pack 7.6 V, no current, rail down, thermistors at 25 C, supply 5.00 V, pack the right way round.
  raw = {778, 164, 0, 102, 0, 154, 512, 0, 512, 512, 512, 512, 512, 778, 771, 0};
  lastEdge_ = now;
  rig.start(kResetCauseExternal, now);
  rig.sampler.anchor(now);
}

void FakeRig::convertOne() {
  const uint8_t channel = pipeline_[0];
  const uint8_t place = channel == 7 ? 8 + rig.sampler.multiplexerInput() : channel;
  pipeline_[0] = pipeline_[1];
  pipeline_[1] = rig.sampler.channelAfterNext();
  rig.sampler.convert(raw[place]);
  if (rig.sampler.actionDue()) {
    rig.sampler.actionTaken();
    rig.fireAction(nextConversion_);
  }
}

void FakeRig::edgesUpTo(Tick until) {
  const bool turning = edgeTicks != 0 && (!motorFollows || rig.throttle.shown() > rig.throttle.limits().rest);
  if (!turning) {
    lastEdge_ = until;
    return;
  }
  while (until - lastEdge_ >= edgeTicks) {
    lastEdge_ += edgeTicks;
    rig.sampler.addEdge(rig.edges.capture(lastEdge_ >> 16, static_cast<uint16_t>(lastEdge_)));
    rig.edges.storms(EdgeCount::captured);
  }
}

void FakeRig::storm(EdgeCount::Line line, int edges) {
  for (int i = 0; i < edges; ++i) {
    if (line == EdgeCount::hallB) rig.edges.edgeB();
    else rig.edges.edgeC();
    rig.edges.storms(line);
  }
}

void FakeRig::conversions(uint32_t count) {
  while (count-- > 0) {
    nextConversion_ += kConversionTicks;
    convertOne();
  }
}

void FakeRig::oneMs() {
  now += kTicksPerMs;
  edgesUpTo(now);
  while (static_cast<int32_t>(now - nextConversion_) >= 0) {
    nextConversion_ += kConversionTicks;
    if (converterRuns) convertOne();
  }
  if (beats && ++sinceBeatMs_ >= 20) {
    sinceBeatMs_ = 0;
    rig.beat(kSession, now);
  }
  rig.supervise(now, stopOpen);
  while (!rig.events.empty()) events.push_back(rig.events.take());
  uint8_t length;
  if (rig.sampler.fullBlock(length) != nullptr) rig.sampler.release();
}

void FakeRig::ms(uint32_t count) {
  while (count-- > 0) oneMs();
}

void FakeRig::pressStop() {
  ms(30);
  stopOpen = true;
  ms(200);
  stopOpen = false;
  ms(30);
}

void FakeRig::prepare() {
  rig.scanList({1, {tap::packVoltage, tap::packWide, tap::railVoltage, tap::controllerVoltage}, 7}, detail);
  rig.stream(true, detail);
  rig.driveLimits({1, kOutputThrottle, 2000, 3000, 4000}, detail);
  rig.driveLimits({1, kOutputSteering, 2200, 3000, 3800}, detail);
  pressStop();
}

uint8_t FakeRig::goLive() {
  sinceBeatMs_ = 0;
  return rig.goLive(kSession, now, detail);
}

void FakeRig::powerUp() {
  prepare();
  goLive();
  feed(kFeedLevelLimited);
  ms(50);
  raw[tap::controllerVoltage] = 770;
  ms(50);
  feed(kFeedLevelFull);
  raw[tap::railVoltage] = 614;
  ms(2600);
}

void FakeRig::proveMotor() {
  motorFollows = true;
  edgeTicks = 4000;
  for (uint16_t width = 3020; width <= 3100; width += 20) {
    drive(kOutputThrottle, width);
    ms(50);
  }
  rig.failSafeTest(1000, detail);
  ms(100);
}

void FakeRig::coast() {
  powerUp();
  proveMotor();
  drive(kOutputThrottle, 3500);
  ms(100);
  motorFollows = false;
  drive(kOutputThrottle, 3000);
  ms(20);
}

void FakeRig::stopMotor() {
  edgeTicks = 0;
  ms(100);
}

uint8_t FakeRig::drive(uint8_t output, uint16_t width, uint16_t rampMs, uint16_t holdMs) {
  return rig.drive({1, output, width, rampMs, holdMs}, detail);
}

uint8_t FakeRig::load(uint8_t mask, uint16_t loadMs) { return rig.load(mask, loadMs, detail); }

uint8_t FakeRig::feed(uint8_t level) { return rig.feedTo(level, now, detail); }

bool FakeRig::eventCame(uint8_t kind, uint32_t* value) {
  for (const MsgEvent& event : events) {
    if (event.kind != kind) continue;
    if (value != nullptr) *value = event.value;
    return true;
  }
  return false;
}
