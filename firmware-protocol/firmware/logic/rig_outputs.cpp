// SPDX-License-Identifier: MIT
// What the rig shows: its state as the wire tells it, and the bits for the shift registers. It decides nothing.
#include "rig.h"

MsgState Rig::stateMessage(uint8_t id) const {
  return {id, state_, tripCode_, tripPlace_, tripRaw_, tripTick_, missing(), guard.cap()};
}

uint16_t Rig::outputBits() const {
  uint16_t bits = loads.mask();
  if (feed.level() == kFeedLevelLimited) bits |= 1 << kOutputBitFeedLimited;
  if (feed.full()) bits |= 1 << kOutputBitFeedFull;
  if (switches.on(kSwitchHallSupply)) bits |= 1 << kOutputBitHallSupply;
  if (switches.on(kSwitchBleeder)) bits |= 1 << kOutputBitBleeder;
  if (switches.on(kSwitchPackLoad)) bits |= 1 << kOutputBitPackLoad;
  if (steering.running()) bits |= 1 << kOutputBitSteeringPulses;
  if (throttle.running()) bits |= 1 << kOutputBitThrottlePulses;
  if (stop.open()) bits |= 1 << kOutputBitStopOpen;
  if (stop.seen()) bits |= 1 << kOutputBitStopSeen;
  else bits |= 1 << kOutputBitAskStop;
  return bits;
}

uint8_t Rig::firstRegister() const { return static_cast<uint8_t>(outputBits() & 0x1F); }

uint8_t Rig::secondRegister() const {
  uint8_t bits = captureSource_;
  if (switches.on(kSwitchHallSupply)) bits |= 1 << 2;
  if (switches.on(kSwitchBleeder)) bits |= 1 << 3;
  if (!stop.seen()) bits |= 1 << 4;
  if (switches.on(kSwitchPackLoad)) bits |= 1 << 5;
  return bits;
}
