// SPDX-License-Identifier: MIT
// The converter runs free, 104 us a conversion. When one ends the next has begun, so the input written now is that of
// the conversion after. Short interrupts are let in while a conversion is put away; supervisor and converter are not.
#include <avr/interrupt.h>
#include <avr/io.h>

#include "board.h"
#include "platform.h"
#include "supervisor_hold.h"

namespace {
constexpr uint8_t kReference = 1 << REFS0;
constexpr uint8_t kRunning = 1 << ADEN | 1 << ADATE | 1 << ADPS2 | 1 << ADPS1 | 1 << ADPS0;
/** From the end of a conversion to reading the time in its interrupt. */
constexpr uint8_t kEntryTicks = 4;
volatile bool anchorWanted = true;

inline void putAway(uint16_t raw) {
  const uint8_t input = rig.sampler.multiplexerInput();
  rig.sampler.convert(raw);
  bool changed = rig.sampler.multiplexerInput() != input;
  if (rig.sampler.actionDue() && !supervisorHeld) {
    rig.sampler.actionTaken();
    rig.fireAction(tickNow());
    changed = true;
  }
  if (changed) board::showFromConverter();
}
}  // namespace

ISR(ADC_vect) {
  const uint16_t raw = ADC;
  if (anchorWanted) {
    anchorWanted = false;
    rig.sampler.anchor(board::tickLocked() - kEntryTicks - kConversionTicks);
  }
  ADMUX = kReference | rig.sampler.channelAfterNext();
  const uint8_t supervisor = TIMSK2;
  TIMSK2 = 0;
  ADCSRA = kRunning;
  sei();
  putAway(raw);
  cli();
  ADCSRA = kRunning | 1 << ADIE;
  TIMSK2 = supervisor;
}

namespace board {

void beginConverter() {
  anchorWanted = true;
  ADMUX = kReference;
  ADCSRB = 0;
  DIDR0 = 0x3F;
  ADCSRA = kRunning | 1 << ADIE;
  ADCSRA = kRunning | 1 << ADIE | 1 << ADSC;
}

void anchorConverter() { anchorWanted = true; }

}  // namespace board
