// SPDX-License-Identifier: MIT
// Bursts and their marked action: what is tested when the command comes, what again when the action fires.
#include "refusal.h"
#include "rig.h"

namespace {
/** With the feed on a burst blinds the other taps, so it ends after 5 s. */
constexpr uint16_t kFedBurstSamples = 48000;
}  // namespace

uint8_t Rig::mayAct(const MsgBurst& wish, uint16_t& detail) const {
  if (wish.action == kActionNone) return kDone;
  detail = wish.action;
  if (wish.action > kActionThrottle) return kReasonOutOfRange;
  detail = wish.atSample;
  if (wish.samples != 0 && wish.atSample >= wish.samples) return kReasonOutOfRange;
  if (wish.action == kActionLoad) return mayLoad(static_cast<uint8_t>(wish.actionArg), wish.actionMs, detail);
  const uint8_t output = wish.action == kActionSteering ? kOutputSteering : kOutputThrottle;
  return mayDrive(output, wish.actionArg, wish.actionMs, detail);
}

/** With the throttle away from rest the wide tap must be seen in the burst and after it. */
bool Rig::blindsThrottle(const MsgBurst& wish) const {
  const bool throttled = !throttle.atRest() || wish.action == kActionThrottle;
  return throttled && (wish.channel != tap::packWide || !sampler.list().holds(tap::packWide));
}

uint8_t Rig::burst(const MsgBurst& wish, uint16_t& detail) {
  if (!sampler.streaming()) return kReasonNotStreaming;
  if (sampler.bursting()) return kReasonBusy;
  detail = wish.channel;
  if (wish.channel >= kMultiplexerChannel) return kReasonOutOfRange;
  if (blindsThrottle(wish)) return refuse(detail, tap::packWide, kReasonTapNotScanned);
  if (feed.on() && (wish.samples == 0 || wish.samples > kFedBurstSamples)) return refuse(detail, kFedBurstSamples, kReasonOutOfRange);
  const uint8_t refused = mayAct(wish, detail);
  if (refused != kDone) return refused;
  action_ = wish.action;
  actionArgument_ = wish.actionArg;
  actionMs_ = wish.actionMs;
  sampler.burst(wish.channel, wish.samples);
  if (wish.action != kActionNone) sampler.actionAt(wish.atSample);
  return kDone;
}

void Rig::fireAction(Tick now) {
  actionTick_ = now;
  actionSample_ = sampler.sampleNumber() - 1;
  if (action_ == kActionLoad) loads.on(static_cast<uint8_t>(actionArgument_), actionMs_);
  actionFired_ = true;
}

/** What was true when the burst began need not be true when its action fires. */
bool Rig::actionStillFits() const {
  uint16_t detail;
  if (action_ == kActionSteering) return steering.allows(actionArgument_);
  return throttle.allows(actionArgument_) && mayThrottle(actionArgument_, detail) == kDone;
}

bool Rig::throttleActionWaits() const { return action_ == kActionThrottle && (actionFired_ || sampler.actionWaits()); }

void Rig::finishAction() {
  if (!actionFired_) return;
  actionFired_ = false;
  const bool pulses = action_ != kActionLoad;
  if (pulses && (!live() || !actionStillFits())) return;
  if (pulses) doDrive(action_ == kActionSteering ? kOutputSteering : kOutputThrottle, actionArgument_, 0, actionMs_);
  events.put(kEventAction, actionTick_, actionSample_);
}
