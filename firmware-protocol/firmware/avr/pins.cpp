// SPDX-License-Identifier: MIT
// Port directions, the two chained shift registers behind the hardware SPI, dead-man and stop line.
#include <avr/io.h>

#include "board.h"
#include "interrupt_lock.h"
#include "platform.h"

namespace {
constexpr uint8_t kHallA = 1 << PB0;
constexpr uint8_t kSteering = 1 << PB1;
constexpr uint8_t kThrottle = 1 << PB2;
constexpr uint8_t kDataOut = 1 << PB3;
constexpr uint8_t kStopLine = 1 << PB4;
constexpr uint8_t kClock = 1 << PB5;
constexpr uint8_t kReceivers = 1 << PD2 | 1 << PD3;
constexpr uint8_t kLatch = 1 << PD4;
constexpr uint8_t kHallBC = 1 << PD5 | 1 << PD6;
constexpr uint8_t kDeadMan = 1 << PD7;
constexpr uint8_t kLoadBits = 7;
constexpr uint8_t kMultiplexerShift = 5;

uint8_t first;
uint8_t second;

inline void shiftByte(uint8_t byte) {
  SPDR = byte;
  while (!(SPSR & (1 << SPIF))) {
  }
}

/** Only with interrupts out; about 60 cycles. */
inline void shiftBoth() {
  shiftByte(second);
  shiftByte(first | static_cast<uint8_t>(rig.sampler.multiplexerInput() << kMultiplexerShift));
  PORTD |= kLatch;
  PORTD &= static_cast<uint8_t>(~kLatch);
}
}  // namespace

namespace board {

void beginPins() {
  PORTB = kStopLine | kHallA;
  DDRB = kSteering | kThrottle | kDataOut | kClock;
  PORTD = kReceivers | kHallBC;
  DDRD = kLatch | kDeadMan;
  SPCR = 1 << SPE | 1 << MSTR;
  SPSR = 1 << SPI2X;
  const InterruptLock lock;
  shiftBoth();
}

void showOutputs() {
  const uint8_t newSecond = rig.secondRegister();
  const uint8_t newFirst = rig.firstRegister();
  const InterruptLock lock;
  second = newSecond;
  first = newFirst;
  shiftBoth();
}

void showFromConverter() {
  first = (first & static_cast<uint8_t>(~kLoadBits)) | rig.loads.mask();
  shiftBoth();
}

void toggleDeadMan() { PIND = kDeadMan; }

bool stopOpen() { return PINB & kStopLine; }

}  // namespace board

void outputsChanged() { board::showOutputs(); }
