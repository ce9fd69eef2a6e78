// SPDX-License-Identifier: MIT
// Timer1 runs free at 0.5 us: the 32-bit rig time, capture of the selected line on both edges, and both servo
// outputs, whose edges the compare unit makes by itself while the interrupts only set the next instant.
#include <avr/interrupt.h>
#include <avr/io.h>

#include "board.h"
#include "interrupt_lock.h"
#include "platform.h"

namespace {
constexpr uint8_t kHallA = 1 << PB0;
constexpr uint8_t kHallB = 1 << PD5;
constexpr uint8_t kHallC = 1 << PD6;
constexpr uint16_t kSteeringPhase = 4000;
/** Half a 50 Hz frame later, so that the two never meet at 50 Hz. */
constexpr uint16_t kThrottlePhase = kSteeringPhase + 20000;
constexpr uint8_t kCaptureFalls = 1 << ICNC1 | 1 << CS11;
constexpr uint8_t kCaptureRises = kCaptureFalls | 1 << ICES1;
constexpr uint8_t kModeA = 1 << COM1A1 | 1 << COM1A0;
constexpr uint8_t kModeB = 1 << COM1B1 | 1 << COM1B0;
constexpr uint8_t kClearA = 1 << COM1A1;
constexpr uint8_t kClearB = 1 << COM1B1;

volatile uint16_t overflows;
uint8_t hallBefore;
uint16_t steeringRise = kSteeringPhase;
uint16_t throttleRise = kThrottlePhase;
bool steeringRises;
bool throttleRises;

/** An overflow that has happened but was not counted yet belongs to counts that are already small again. */
IN_INTERRUPT uint16_t roundsAt(uint16_t count) {
  uint16_t rounds = overflows;
  if ((TIFR1 & (1 << TOV1)) && count < 0x8000) ++rounds;
  return rounds;
}

inline void modes(uint8_t mask, uint8_t mode) { TCCR1A = (TCCR1A & static_cast<uint8_t>(~mask)) | mode; }

IN_INTERRUPT void readHallState(uint8_t portD) {
  rig.edges.state((portD & (kHallB | kHallC)) | (PINB & kHallA), kHallA | kHallB | kHallC);
}
}  // namespace

ISR(TIMER1_OVF_vect) { ++overflows; }

/** After a rise comes the fall; after a fall, or an empty frame, the next frame. */
ISR(TIMER1_COMPA_vect) {
  if (steeringRises) {
    steeringRises = false;
    OCR1A = steeringRise + rig.steering.width();
    modes(kModeA, kClearA);
    return;
  }
  steeringRise += rig.steeringPeriod();
  OCR1A = steeringRise;
  steeringRises = rig.steering.running();
  modes(kModeA, steeringRises ? kModeA : kClearA);
}

ISR(TIMER1_COMPB_vect) {
  if (throttleRises) {
    throttleRises = false;
    OCR1B = throttleRise + rig.throttle.width();
    modes(kModeB, kClearB);
    return;
  }
  throttleRise += rig.throttlePeriod();
  OCR1B = throttleRise;
  throttleRises = rig.throttle.running();
  modes(kModeB, throttleRises ? kModeB : kClearB);
}

/** The next edge wanted is away from the level that is there now, so a missed edge does not turn things round. */
ISR(TIMER1_CAPT_vect) {
  const uint16_t count = ICR1;
  TCCR1B = PINB & kHallA ? kCaptureFalls : kCaptureRises;
  TIFR1 = 1 << ICF1;
  rig.sampler.addEdge(rig.edges.capture(roundsAt(count), count));
  readHallState(PIND);
  if (rig.edges.storms(EdgeCount::captured)) TIMSK1 &= static_cast<uint8_t>(~(1 << ICIE1));
}

ISR(PCINT2_vect) {
  const uint8_t portD = PIND;
  const uint8_t changed = portD ^ hallBefore;
  hallBefore = portD;
  if (changed & kHallB) {
    rig.edges.edgeB();
    if (rig.edges.storms(EdgeCount::hallB)) PCMSK2 &= static_cast<uint8_t>(~kHallB);
  }
  if (changed & kHallC) {
    rig.edges.edgeC();
    if (rig.edges.storms(EdgeCount::hallC)) PCMSK2 &= static_cast<uint8_t>(~kHallC);
  }
  readHallState(portD);
}

namespace board {

void beginTimer1() {
  TCCR1A = kClearA | kClearB;
  TCCR1B = kCaptureRises;
  OCR1A = kSteeringPhase;
  OCR1B = kThrottlePhase;
  TIMSK1 = 1 << ICIE1 | 1 << OCIE1A | 1 << OCIE1B | 1 << TOIE1;
  hallBefore = PIND;
  PCMSK2 = kHallB | kHallC;
  PCICR = 1 << PCIE2;
}

Tick tickLocked() {
  const uint16_t count = TCNT1;
  return static_cast<Tick>(roundsAt(count)) << 16 | count;
}

void applyEdgeMask() {
  const InterruptLock lock;
  const uint8_t masked = rig.edges.masked;
  if (!(masked & EdgeCount::captured) && !(TIMSK1 & (1 << ICIE1))) {
    TIFR1 = 1 << ICF1;
    TIMSK1 |= 1 << ICIE1;
  }
  if (!(masked & EdgeCount::hallB)) PCMSK2 |= kHallB;
  if (!(masked & EdgeCount::hallC)) PCMSK2 |= kHallC;
}

}  // namespace board

Tick tickNow() {
  const InterruptLock lock;
  return board::tickLocked();
}
