// SPDX-License-Identifier: MIT
// Whether the motor may turn. Known only from Hall edges: once pushed, or once an edge came, it may turn until edges
// of line A were heard since the push, none came on any line for a while, and the controller has long seen its neutral.
// What is not known outlives the feed, a trip and a session; after a reset nobody knows what was before.
#pragma once
#include <stdint.h>

class MotorMotion {
 public:
  /** Two edges a turn at 1000 rpm of a motor with one pole pair are 30 ms apart; with more pole pairs this waits longer. */
  static constexpr uint8_t kSlowEdgeMs = 30;
  /** A frame of 25 ms until the controller hears of neutral, then as long as between two edges. */
  static constexpr uint8_t kRestMs = 60;
  /** A car's motor with its wheels off the ground runs out within this. Common practice, no source. */
  static constexpr uint16_t kAfterResetMs = 10000;

  struct Signs {
    /** Line A is looked at, supplied, and no line is masked. */
    bool hearing;
    bool edgeA;
    bool edgeBC;
    /** Neutral pulses run, or none are wanted. */
    bool atRest;
  };
  /** The throttle was commanded away from rest. */
  void pushed() {
    mayTurn_ = true;
    heard_ = false;
    restMs_ = 0;
  }
  void advance(uint8_t ms, const Signs& signs) {
    const bool edge = signs.edgeA || signs.edgeBC;
    quietMs_ = edge ? 0 : sum(quietMs_, ms);
    restMs_ = signs.atRest ? sum(restMs_, ms) : 0;
    unknownMs_ = unknownMs_ > ms ? unknownMs_ - ms : 0;
    if (edge || !signs.atRest) mayTurn_ = true;
    heard_ = signs.hearing && (heard_ || signs.edgeA);
    if (heard_ && quietMs_ >= kSlowEdgeMs && restMs_ >= kRestMs) forget();
  }
  bool knownSlow() const { return !mayTurn_ && unknownMs_ == 0; }

 private:
  static uint8_t sum(uint8_t had, uint8_t ms) { return had > 255 - ms ? 255 : had + ms; }
  void forget() {
    mayTurn_ = false;
    unknownMs_ = 0;
  }

  bool mayTurn_ = false;
  bool heard_ = false;
  uint8_t quietMs_ = 0;
  uint8_t restMs_ = 0;
  uint16_t unknownMs_ = kAfterResetMs;
};
