// SPDX-License-Identifier: MIT
// The stop line, normally closed: open for 2 ms is open, and one whole press (closed, open, closed, 20 ms each)
// since the reset proves that somebody's hand reaches it.
#pragma once
#include <stdint.h>

class StopLine {
 public:
  void sample(bool openNow, uint8_t ms) {
    if (openNow != level_) heldMs_ = 0;
    level_ = openNow;
    heldMs_ = heldMs_ > 255 - ms ? 255 : heldMs_ + ms;
    if (heldMs_ >= kOpenMs) open_ = level_;
    if (heldMs_ < kPressMs) return;
    if (level_ == (stage_ == Stage::closed)) next();
  }
  bool open() const { return open_; }
  bool seen() const { return stage_ == Stage::seen; }

 private:
  enum class Stage : uint8_t { begin, closed, pressed, seen };
  static constexpr uint8_t kOpenMs = 2;
  static constexpr uint8_t kPressMs = 20;
  void next() {
    if (stage_ == Stage::begin) stage_ = Stage::closed;
    else if (stage_ == Stage::closed) stage_ = Stage::pressed;
    else if (stage_ == Stage::pressed) stage_ = Stage::seen;
  }

  bool level_ = true;
  bool open_ = true;
  uint8_t heldMs_ = 0;
  Stage stage_ = Stage::begin;
};
