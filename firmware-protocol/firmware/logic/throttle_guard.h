// SPDX-License-Identifier: MIT
// What stands between a wish and the throttle: neutral long enough, small first steps until the Hall lines prove the
// motor turns, a cap until the fail-safe test is passed, and the watch for a motor that should turn and does not.
#pragma once
#include <stdint.h>

#include "generated_messages.h"

class ThrottleGuard {
 public:
  void reset();
  /** Every millisecond: whether neutral pulses run with the rail up, or the rail is known to be down. */
  void neutral(bool runsWithRailUp, bool railDown, uint8_t ms);
  /** 0, or the reason a step to so many thousandths is refused; `detail` says what is allowed. */
  uint8_t refuse(uint16_t perMille, uint16_t& detail) const;
  void accepted(uint16_t perMille, uint16_t edges);
  /** Every millisecond, whether the throttle is open enough for edges; true when the motor should turn and does not. */
  bool missesEdges(bool open, uint16_t edges, uint8_t ms);
  void failSafe(uint16_t ms) { failSafePassed_ = ms <= kFailSafeMaxMs; }
  uint16_t cap() const { return failSafePassed_ ? 1000 : kThrottleCapPerMille; }

  static constexpr uint16_t kStepPerMille = kFirstStepPerCent * 10;
  static constexpr uint8_t kStepMs = 40;
  static constexpr uint8_t kProofEdges = 6;
  static constexpr uint16_t kHallPerMille = 150;
  static constexpr uint16_t kHallMs = 500;

 private:
  uint16_t neutralMs_ = 0;
  uint16_t reached_ = 0;
  uint16_t firstEdges_ = 0;
  uint16_t lastEdges_ = 0;
  uint16_t missingMs_ = 0;
  uint8_t stepMs_ = 0;
  bool moved() const { return reached_ > 0; }
  bool proven_ = false;
  bool failSafePassed_ = false;
};
