// SPDX-License-Identifier: MIT
// What happens before main: the cause of the reset is kept, the watchdog stopped, the free RAM painted so that the
// deepest stack can be read later. Then the watchdog: an interrupt after 64 ms, a reset after as much again.
#include <avr/interrupt.h>
#include <avr/io.h>
#include <avr/wdt.h>

#include "board.h"
#include "interrupt_lock.h"
#include "platform.h"

extern "C" {
extern uint8_t _end;
void keepResetCause() __attribute__((naked, used, section(".init3")));
void paintStack() __attribute__((naked, used, section(".init3")));
}

namespace {
/** As in paintStack. */
constexpr uint8_t kPaint = 0xC5;
constexpr uint8_t kBarked = 0x5A;
/** Survive a reset; garbage after power-on. */
uint8_t keptFlags __attribute__((section(".noinit")));
uint8_t barked __attribute__((section(".noinit")));
uint8_t cause;

uint8_t causeOf(uint8_t flags) {
  if (flags & (1 << PORF)) return kResetCausePowerOn;
  if (flags & (1 << BORF)) return kResetCauseBrownOut;
  if (flags & (1 << WDRF)) return kResetCauseWatchdog;
  if (flags & (1 << EXTRF)) return kResetCauseExternal;
  return barked == kBarked ? kResetCauseWatchdog : kResetCauseUnknown;
}
}  // namespace

void keepResetCause() {
  keptFlags = MCUSR;
  MCUSR = 0;
  WDTCSR = 1 << WDCE | 1 << WDE;
  WDTCSR = 0;
}

/** From the end of the static data to the end of the RAM (0x08FF): nothing is on the stack yet. */
void paintStack() {
  asm volatile(
      "ldi r30, lo8(_end)\n"
      "ldi r31, hi8(_end)\n"
      "ldi r24, 0xC5\n"
      "ldi r25, hi8(0x08FF)\n"
      "1: st Z+, r24\n"
      "cpi r30, lo8(0x08FF)\n"
      "cpc r31, r25\n"
      "brlo 1b\n");
}
static_assert(RAMEND == 0x08FF, "the painted range is that of the ATmega328P");

ISR(WDT_vect) { barked = kBarked; }

namespace board {

/** Boot loaders that clear the flags leave the watchdog's own mark. */
uint8_t resetCause() {
  if (cause == 0) cause = causeOf(keptFlags);
  barked = 0;
  return cause;
}

void beginWatchdog() {
  const InterruptLock lock;
  wdt_reset();
  WDTCSR = 1 << WDCE | 1 << WDE;
  WDTCSR = 1 << WDIE | 1 << WDE | 1 << WDP1;
}

}  // namespace board

uint16_t stackFreeBytes() {
  const uint8_t* at = &_end;
  while (at < reinterpret_cast<const uint8_t*>(RAMEND) && *at == kPaint) ++at;
  return at - &_end;
}
