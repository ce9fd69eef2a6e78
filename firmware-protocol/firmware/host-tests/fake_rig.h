// SPDX-License-Identifier: MIT
// The logic on a fake clock with fake pins: conversions come as on the chip (two on their way), edges when a motor
// is said to turn, beats when asked for. Everything a test reads back is what the chip's layer would show.
#pragma once
#include <array>
#include <vector>

#include "rig.h"

class FakeRig {
 public:
  explicit FakeRig(Tick start = 1000);
  /** Runs so many milliseconds, conversions and supervisor's turns. */
  void ms(uint32_t count);
  void conversions(uint32_t count);
  /** So many edges at once on Hall line B or C. */
  void storm(EdgeCount::Line line, int edges);
  /** The stop pressed and let go, as the light asks for. */
  void pressStop();
  /** Stream on, all taps scanned, stop seen, pulses set. */
  void prepare();
  uint8_t goLive();
  /** Live with the feed full, the rail up and neutral run long enough. */
  void powerUp();
  /** Small steps until the Hall lines prove the motor, then the fail-safe test passed. */
  void proveMotor();
  /** Powered up and proven; then the throttle at rest, and the motor turns on by itself. */
  void coast();
  void stopMotor();
  uint8_t drive(uint8_t output, uint16_t width, uint16_t rampMs = 0, uint16_t holdMs = 1000);
  uint8_t load(uint8_t mask, uint16_t loadMs);
  uint8_t feed(uint8_t level);
  bool eventCame(uint8_t kind, uint32_t* value = nullptr);
  uint8_t tripCode() const { return rig.stateMessage(0).trip; }
  bool bit(uint8_t outputBit) const { return rig.outputBits() >> outputBit & 1; }

  Rig rig;
  Tick now;
  uint16_t detail = 0;
  bool stopOpen = false;
  bool beats = true;
  bool converterRuns = true;
  /** Ticks between captured edges; 0: the motor stands. */
  uint32_t edgeTicks = 0;
  /** Edges follow the throttle: none at neutral. */
  bool motorFollows = false;
  /** Raw code at each place of Readings. */
  std::array<uint16_t, 16> raw;
  std::vector<MsgEvent> events;

 private:
  void oneMs();
  void convertOne();
  void edgesUpTo(Tick until);

  std::array<uint8_t, 2> pipeline_{};
  Tick nextConversion_;
  Tick lastEdge_ = 0;
  uint32_t sinceBeatMs_ = 0;
};
