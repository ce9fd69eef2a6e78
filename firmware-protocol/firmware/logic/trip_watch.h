// SPDX-License-Identifier: MIT
// Everything measured that must end a live session: currents, voltages, temperatures, speed, the rig's own supply.
// Bounds are raw codes fixed here; the host may only move a limit to the safe side of its bound.
#pragma once
#include <stdint.h>

#include "readings.h"
#include "scan_sampler.h"
#include "ticks.h"

constexpr uint8_t kLimits = 10;

struct Limit {
  uint16_t level;
  uint16_t ms;
};

/** What tripped: the place of the reading (see readings.h) and its raw code. */
struct TripCause {
  uint8_t code;
  uint8_t place;
  uint16_t raw;
};

/** What the watch needs to know of the rest of the rig. */
struct Situation {
  bool feedFull;
  bool motorPower;
  bool railPower;
  /** Ticks of the last electrical turn; large while slow. */
  uint32_t turnTicks;
  uint8_t shortCount;
};

/** The 2.5 V reference reads higher than this when the supply is below 4.5 V. */
constexpr uint16_t kSupplyLowRaw = 568;

class TripWatch {
 public:
  TripWatch();
  /** False when the level is on the wrong side of its bound or the time too long. */
  bool tighten(uint8_t which, const Limit& limit);
  const Limit& limit(uint8_t which) const { return limits_[which]; }
  void watchThermistors(uint8_t mask);
  /** Forgets what was building up; limits stay. */
  void forget();
  /** One millisecond's turn; code is kTripNone while all is well. */
  TripCause look(const Readings& readings, const Situation& now, uint8_t ms);

 private:
  TripCause shortCircuit(const Readings& readings, const Situation& now) const;
  TripCause limits(const Readings& readings, const Situation& now, uint8_t ms);
  TripCause clipped(const Readings& readings, uint8_t ms);
  TripCause thermistors(const Readings& readings, const Situation& now, uint8_t ms);
  TripCause supply(const Readings& readings, uint8_t ms);
  bool watched(uint8_t thermistor) const { return thermistors_ & (1 << thermistor); }
  bool beyond(uint8_t which, const Readings& readings, const Situation& now) const;
  bool idle(uint8_t thermistor, uint16_t raw, bool power, uint8_t ms);

  static constexpr uint8_t kThermistors = 4;
  struct Warmth {
    uint16_t smooth = 0;
    uint16_t low = 0;
    uint16_t high = 0;
    uint16_t powerMs = 0;
  };

  Limit limits_[kLimits];
  uint16_t heldMs_[kLimits] = {};
  uint8_t clippedMs_[2] = {};
  uint8_t openMs_[kThermistors] = {};
  uint8_t shortMs_[kThermistors] = {};
  Warmth warmth_[kThermistors];
  uint8_t supplyMs_ = 0;
  uint8_t thermistors_ = 0;
};
