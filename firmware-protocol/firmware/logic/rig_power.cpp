// SPDX-License-Identifier: MIT
// Power on command: load bank, feed, switches, and every reason to refuse them.
#include "refusal.h"
#include "rig.h"

namespace {
/** 2 V above nothing on the polarity tap: 2.5 V plus a sixth of the pack. */
constexpr uint16_t kPolarityRaw = 512 + 68;
}  // namespace

uint8_t Rig::mayLoad(uint8_t mask, uint16_t ms, uint16_t& detail) const {
  const uint8_t refused = notLive();
  if (refused != kDone) return refused;
  detail = mask;
  if (mask > 7) return kReasonOutOfRange;
  detail = ms;
  if (mask != 0 && (ms == 0 || ms > kLoadMaxMs)) return kReasonOutOfRange;
  detail = loads.waitMs(mask, ms, railRawForHeat());
  return loads.cool(mask, ms, railRawForHeat()) ? kDone : kReasonLoadHot;
}

uint8_t Rig::load(uint8_t mask, uint16_t ms, uint16_t& detail) {
  const uint8_t refused = mayLoad(mask, ms, detail);
  if (refused == kDone) loads.on(mask, mask == 0 ? 0 : ms);
  return refused;
}

uint8_t Rig::mayFeedLimited(uint16_t& detail) const {
  const ScanList& list = sampler.list();
  constexpr uint8_t needed[] = {tap::packVoltage, tap::controllerVoltage, kMultiplexerChannel};
  for (const uint8_t channel : needed)
    if (!list.holds(channel) || sampler.bursting()) return refuse(detail, channel, kReasonTapNotScanned);
  if (!sampler.readings.fresh(tap::polarity)) return refuse(detail, tap::polarity, kReasonTapNotScanned);
  detail = sampler.readings.raw(tap::polarity);
  return detail > kPolarityRaw ? kDone : kReasonPolarity;
}

/** Why the feed may not go from one level to another just now; level and state are known to be right. */
uint8_t Rig::mayFeed(uint8_t level, uint16_t& detail) const {
  if (throttleActionWaits()) return kReasonBusy;
  if (!throttle.atRest()) return kReasonNotStill;
  if (level < feed.level()) return motion.knownSlow() ? kDone : kReasonNotStill;
  if (level == kFeedLevelLimited) return mayFeedLimited(detail);
  return feed.mayCloseFully() ? kDone : refuse(detail, feed.bestPerMille(), kReasonNoFirstPower);
}

uint8_t Rig::feedTo(uint8_t level, Tick now, uint16_t& detail) {
  detail = level;
  if (level > kFeedLevelFull) return kReasonOutOfRange;
  if (level == feed.level()) return live() || level == kFeedLevelOff ? kDone : notLive();
  const uint8_t refused = notLive();
  if (refused != kDone) return refused;
  const uint8_t reason = mayFeed(level, detail);
  if (reason == kDone) setFeed(level, now);
  return reason;
}

uint8_t Rig::mayLoadPack(uint16_t ms, uint16_t& detail) const {
  const uint8_t refused = notLive();
  if (refused != kDone) return refused;
  detail = ms;
  if (ms == 0 || ms > Switches::kPackLoadMs) return kReasonOutOfRange;
  detail = switches.packLoadRestMs();
  return switches.packLoadRested() ? kDone : kReasonLoadHot;
}

uint8_t Rig::setSwitch(uint8_t which, uint8_t on, uint16_t ms, uint16_t& detail) {
  detail = which;
  if (which >= Switches::kCount || on > 1) return kReasonOutOfRange;
  if (which == kSwitchBleeder && on && feed.on()) return kReasonBusy;
  if (which == kSwitchHallSupply && !on && switches.on(which) && !mayLoseSight()) return kReasonNotStill;
  const uint8_t refused = which == kSwitchPackLoad && on ? mayLoadPack(ms, detail) : kDone;
  if (refused == kDone) switches.set(which, on != 0, ms);
  return refused;
}
