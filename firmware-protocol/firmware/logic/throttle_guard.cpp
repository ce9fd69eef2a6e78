// SPDX-License-Identifier: MIT
// Rules before the throttle moves; see throttle_guard.h.
#include "throttle_guard.h"

void ThrottleGuard::reset() { *this = ThrottleGuard(); }

void ThrottleGuard::neutral(bool runsWithRailUp, bool railDown, uint8_t ms) {
  if (railDown) neutralMs_ = 0;
  else if (runsWithRailUp && neutralMs_ < kNeutralMs) neutralMs_ += ms;
  if (stepMs_ < kStepMs) stepMs_ += ms;
}

uint8_t ThrottleGuard::refuse(uint16_t perMille, uint16_t& detail) const {
  detail = neutralMs_;
  if (perMille > 0 && neutralMs_ < kNeutralMs) return kReasonNeutralTooShort;
  detail = cap();
  if (perMille > cap()) return kReasonThrottleCap;
  if (proven_ || perMille <= reached_) return 0;
  const bool settled = reached_ == 0 || stepMs_ >= kStepMs;
  detail = settled ? reached_ + kStepPerMille : reached_;
  return perMille <= detail ? 0 : kReasonFirstStep;
}

void ThrottleGuard::accepted(uint16_t perMille, uint16_t edges) {
  if (perMille <= reached_) return;
  if (reached_ == 0) firstEdges_ = lastEdges_ = edges;
  reached_ = perMille;
  stepMs_ = 0;
}

bool ThrottleGuard::missesEdges(bool open, uint16_t edges, uint8_t ms) {
  const bool came = edges != lastEdges_;
  lastEdges_ = edges;
  if (moved() && static_cast<uint16_t>(edges - firstEdges_) >= kProofEdges) proven_ = true;
  if (came || !open) missingMs_ = 0;
  else missingMs_ += ms;
  return missingMs_ >= kHallMs;
}
