// SPDX-License-Identifier: MIT
// The host's beats: whose session is live, when the last beat came, the longest gap since the rig went live.
#pragma once
#include <stdint.h>

#include "ticks.h"

class HostWatch {
 public:
  void begin(uint32_t session, Tick now) {
    session_ = session;
    last_ = now;
    worstGapMs_ = 0;
  }
  bool owns(uint32_t session) const { return session == session_; }
  void beat(Tick now) {
    const Tick gapMs = (now - last_) / kTicksPerMs;
    if (gapMs > worstGapMs_) worstGapMs_ = gapMs > 0xFFFF ? 0xFFFF : static_cast<uint16_t>(gapMs);
    last_ = now;
  }
  bool lost(Tick now) const { return now - last_ >= kHostLostMs * kTicksPerMs; }
  uint16_t worstGapMs() const { return worstGapMs_; }

 private:
  uint32_t session_ = 0;
  Tick last_ = 0;
  uint16_t worstGapMs_ = 0;
};
