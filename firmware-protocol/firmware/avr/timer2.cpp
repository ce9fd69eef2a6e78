// SPDX-License-Identifier: MIT
// The supervisor's interrupt, every millisecond. It lets all others in while it works and keeps itself out.
// It feeds dead-man and watchdog only while the main loop lives; the dead-man wants the converter or a running order too.
#include <avr/interrupt.h>
#include <avr/io.h>
#include <avr/wdt.h>

#include "board.h"
#include "interrupt_lock.h"
#include "supervisor_hold.h"

volatile uint8_t supervisorHeld;

namespace {
constexpr uint8_t kMainDeadMs = 20;
volatile uint8_t mainIdleMs;

/** Two conversions late: interrupts were out too long and a conversion is lost. */
void watchSlip(Tick now, Tick conversionStart) {
  if (now - conversionStart > 2 * kConversionTicks) board::anchorConverter();
}

void restartDeadConverter() {
  if (!rig.converterAlive()) board::beginConverter();
}

void feedDogs() {
  if (mainIdleMs >= kMainDeadMs) return;
  ++mainIdleMs;
  wdt_reset();
  if (rig.holdsOutputs()) board::toggleDeadMan();
}

void turn() {
  Tick now;
  {
    const InterruptLock lock;
    now = board::tickLocked();
    watchSlip(now, rig.sampler.conversionStart());
  }
  rig.supervise(now, board::stopOpen());
  board::showOutputs();
  board::applyEdgeMask();
  restartDeadConverter();
  feedDogs();
}
}  // namespace

ISR(TIMER2_COMPA_vect) {
  TIMSK2 = 0;
  supervisorHeld = 1;
  sei();
  turn();
  cli();
  supervisorHeld = 0;
  TIMSK2 = 1 << OCIE2A;
}

namespace board {

void beginSupervisor() {
  TCCR2A = 1 << WGM21;
  OCR2A = 249;
  TCCR2B = 1 << CS22;
  TIMSK2 = 1 << OCIE2A;
}

void mainIsAlive() { mainIdleMs = 0; }

}  // namespace board
