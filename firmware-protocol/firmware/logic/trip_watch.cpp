// SPDX-License-Identifier: MIT
// The measured trips; see trip_watch.h. All levels are codes of one conversion, 4.883 mV each at a 5 V supply.
#include "trip_watch.h"

#include "flash.h"

namespace {
struct Bound {
  uint8_t place;
  uint8_t below;
  uint8_t trip;
  uint16_t level;
  uint16_t ms;
  uint16_t start;
};
constexpr uint16_t kAnyMs = 0xFFFF;
constexpr uint8_t kNoPlace = tap::none;
/** Codes computed from the tap's zero and slope; 75 C is 1492 ohm of a 10 kohm B3950 thermistor under 10 kohm. */
const Bound kBounds[kLimits] IN_FLASH = {
    {tap::packNarrow, 0, kTripPackCurrent, 1023, kAnyMs, 1023},
    {tap::packWide, 0, kTripPackCurrent, 358, 300, 358},
    {tap::packWide, 0, kTripShortCircuit, 870, kAnyMs, 870},
    {tap::railCurrent, 0, kTripRailCurrent, 972, 500, 972},
    {tap::packVoltage, 1, kTripUnderVoltage, 614, 100, 614},
    {kNoPlace, 1, kTripOverSpeed, 500, 20, 1000},
    {tap::firstThermistor + 0, 1, kTripOverTemperature, 133, 100, 133},
    {tap::firstThermistor + 1, 1, kTripOverTemperature, 133, 100, 133},
    {tap::firstThermistor + 2, 1, kTripOverTemperature, 133, 100, 133},
    {tap::firstThermistor + 3, 1, kTripOverTemperature, 133, 100, 133},
};
constexpr uint16_t kClipHigh = 1021;
constexpr uint16_t kClipLow = 1;
constexpr uint8_t kClipMs = 50;
constexpr uint16_t kOpenRaw = 1010;
constexpr uint16_t kShortRaw = 12;
constexpr uint8_t kThermistorMs = 24;
constexpr uint8_t kSupplyMs = 24;
constexpr uint16_t kIdleMs = 60000;
/** Two counts, in the sixteenths of the smoothed code. */
constexpr uint16_t kIdleChange = 32;
constexpr TripCause kNone = {kTripNone, 0, 0};

Bound boundOf(uint8_t which) {
  Bound bound;
  uint8_t* to = reinterpret_cast<uint8_t*>(&bound);
  const uint8_t* from = reinterpret_cast<const uint8_t*>(&kBounds[which]);
  for (uint8_t i = 0; i < sizeof bound; ++i) to[i] = flashByte(from + i);
  return bound;
}

uint8_t grow(uint8_t& heldMs, bool holds, uint8_t ms) {
  heldMs = !holds ? 0 : heldMs > 255 - ms ? 255 : heldMs + ms;
  return heldMs;
}
}  // namespace

TripWatch::TripWatch() {
  for (uint8_t which = 0; which < kLimits; ++which) {
    const Bound bound = boundOf(which);
    limits_[which] = {bound.start, bound.ms};
  }
}

bool TripWatch::tighten(uint8_t which, const Limit& limit) {
  const Bound bound = boundOf(which);
  const bool safe = bound.below ? limit.level >= bound.level : limit.level <= bound.level;
  if (!safe || limit.ms > bound.ms) return false;
  limits_[which] = limit;
  heldMs_[which] = 0;
  return true;
}

void TripWatch::watchThermistors(uint8_t mask) {
  thermistors_ = mask;
  for (Warmth& warmth : warmth_) warmth = Warmth();
}

void TripWatch::forget() {
  for (uint16_t& held : heldMs_) held = 0;
  for (uint8_t i = 0; i < kThermistors; ++i) openMs_[i] = shortMs_[i] = 0;
  for (Warmth& warmth : warmth_) warmth = Warmth();
  clippedMs_[0] = clippedMs_[1] = supplyMs_ = 0;
}

TripCause TripWatch::look(const Readings& readings, const Situation& now, uint8_t ms) {
  TripCause cause = shortCircuit(readings, now);
  if (cause.code == kTripNone) cause = limits(readings, now, ms);
  if (cause.code == kTripNone) cause = clipped(readings, ms);
  if (cause.code == kTripNone) cause = thermistors(readings, now, ms);
  if (cause.code == kTripNone) cause = supply(readings, ms);
  return cause;
}

TripCause TripWatch::shortCircuit(const Readings& readings, const Situation& now) const {
  if (now.shortCount < kShortCounts || !readings.live(tap::packWide)) return kNone;
  return {kTripShortCircuit, tap::packWide, readings.raw(tap::packWide)};
}

bool TripWatch::beyond(uint8_t which, const Readings& readings, const Situation& now) const {
  const uint16_t level = limits_[which].level;
  if (which == kLimitPackWideFast) return false;
  if (which == kLimitOverSpeed) return now.turnTicks < static_cast<uint32_t>(level) * 2;
  if (which == kLimitPackUnder) return now.feedFull && readings.live(tap::packVoltage) && readings.raw(tap::packVoltage) < level;
  if (which >= kLimitThermistor1) {
    const uint8_t thermistor = which - kLimitThermistor1;
    const uint8_t place = tap::firstThermistor + thermistor;
    return watched(thermistor) && readings.fresh(place) && readings.raw(place) < level;
  }
  const uint8_t place = flashByte(&kBounds[which].place);
  return readings.live(place) && readings.raw(place) > level;
}

TripCause TripWatch::limits(const Readings& readings, const Situation& now, uint8_t ms) {
  for (uint8_t which = 0; which < kLimits; ++which) {
    if (!beyond(which, readings, now)) {
      heldMs_[which] = 0;
      continue;
    }
    heldMs_[which] = heldMs_[which] > 0xFFFF - ms ? 0xFFFF : heldMs_[which] + ms;
    if (heldMs_[which] < limits_[which].ms) continue;
    const Bound bound = boundOf(which);
    const bool speed = bound.place == kNoPlace;
    const uint16_t raw = speed ? static_cast<uint16_t>(now.turnTicks / 2) : readings.raw(bound.place);
    return {bound.trip, bound.place, raw};
  }
  return kNone;
}

TripCause TripWatch::clipped(const Readings& readings, uint8_t ms) {
  constexpr uint8_t places[2] = {tap::packWide, tap::railCurrent};
  for (uint8_t i = 0; i < 2; ++i) {
    const uint16_t raw = readings.raw(places[i]);
    const bool beyond = readings.live(places[i]) && (raw >= kClipHigh || raw <= kClipLow);
    if (grow(clippedMs_[i], beyond, ms) > kClipMs) return {kTripClipped, places[i], raw};
  }
  return kNone;
}

TripCause TripWatch::thermistors(const Readings& readings, const Situation& now, uint8_t ms) {
  for (uint8_t i = 0; i < kThermistors; ++i) {
    const uint8_t place = tap::firstThermistor + i;
    if (!watched(i) || !readings.fresh(place)) continue;
    const uint16_t raw = readings.raw(place);
    if (grow(openMs_[i], raw > kOpenRaw, ms) >= kThermistorMs) return {kTripThermistorOpen, place, raw};
    if (grow(shortMs_[i], raw < kShortRaw, ms) >= kThermistorMs) return {kTripThermistorShort, place, raw};
    const bool servo = i == 1;
    const bool ambient = i == 3;
    const bool power = servo ? now.railPower : now.motorPower && !ambient;
    if (idle(i, raw, power, ms)) return {kTripThermistorIdle, place, raw};
  }
  return kNone;
}

/** A minute of power without a change of two counts: the thermistor is not where it was said to be. */
bool TripWatch::idle(uint8_t thermistor, uint16_t raw, bool power, uint8_t ms) {
  Warmth& warmth = warmth_[thermistor];
  if (warmth.smooth == 0) warmth.smooth = warmth.low = warmth.high = raw * 16;
  warmth.smooth += raw - warmth.smooth / 16;
  if (warmth.smooth < warmth.low) warmth.low = warmth.smooth;
  if (warmth.smooth > warmth.high) warmth.high = warmth.smooth;
  if (warmth.high - warmth.low >= kIdleChange) {
    warmth.low = warmth.high = warmth.smooth;
    warmth.powerMs = 0;
  }
  if (power && warmth.powerMs < kIdleMs) warmth.powerMs += ms;
  return warmth.powerMs >= kIdleMs;
}

TripCause TripWatch::supply(const Readings& readings, uint8_t ms) {
  const uint16_t raw = readings.raw(tap::reference);
  const bool low = readings.fresh(tap::reference) && raw > kSupplyLowRaw;
  if (grow(supplyMs_, low, ms) < kSupplyMs) return kNone;
  return {kTripSupply, tap::reference, raw};
}
