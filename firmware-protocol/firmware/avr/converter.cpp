// SPDX-License-Identifier: MIT
// The converter runs free, 104 us a conversion. When one ends the next has begun, so the input written now is that of
// the conversion after.
#include <avr/interrupt.h>
#include <avr/io.h>

#include "board.h"
#include "supervisor_hold.h"

namespace {
constexpr uint8_t kReference = 1 << REFS0;
/** From the end of a conversion to reading the time in its interrupt. */
constexpr uint8_t kEntryTicks = 4;
volatile bool anchorWanted = true;
}  // namespace

ISR(ADC_vect) {
  if (anchorWanted) {
    anchorWanted = false;
    rig.sampler.anchor(board::tickLocked() - kEntryTicks - kConversionTicks);
  }
  const uint8_t input = rig.sampler.multiplexerInput();
  ADMUX = kReference | rig.sampler.convert(ADC);
  bool changed = rig.sampler.multiplexerInput() != input;
  if (rig.sampler.actionDue() && !supervisorHeld) {
    rig.sampler.actionTaken();
    rig.fireAction(board::tickLocked());
    changed = true;
  }
  if (changed) board::showFromConverter();
}

namespace board {

void beginConverter() {
  anchorWanted = true;
  ADMUX = kReference;
  ADCSRB = 0;
  DIDR0 = 0x3F;
  ADCSRA = 1 << ADEN | 1 << ADATE | 1 << ADIE | 1 << ADPS2 | 1 << ADPS1 | 1 << ADPS0;
  ADCSRA |= 1 << ADSC;
}

void anchorConverter() { anchorWanted = true; }

}  // namespace board
