// SPDX-License-Identifier: MIT
// The serial line: interrupts move one byte between the port and a ring, nothing else.
#include <avr/interrupt.h>
#include <avr/io.h>

#include "board.h"
#include "byte_ring.h"
#include "interrupt_lock.h"
#include "platform.h"

namespace {
ByteRing<64> received;
ByteRing<128> toSend;
volatile uint16_t lost;
}  // namespace

ISR(USART_RX_vect) {
  const bool overrun = UCSR0A & (1 << DOR0);
  const uint8_t byte = UDR0;
  if (!received.put(byte) || overrun) ++lost;
}

ISR(USART_UDRE_vect) {
  UDR0 = toSend.take();
  if (toSend.empty()) UCSR0B &= static_cast<uint8_t>(~(1 << UDRIE0));
}

namespace board {

void beginLine() {
  UCSR0A = 1 << U2X0;
  UBRR0 = F_CPU / 8 / kBaud - 1;
  UCSR0C = 1 << UCSZ01 | 1 << UCSZ00;
  UCSR0B = 1 << RXEN0 | 1 << TXEN0 | 1 << RXCIE0;
}

bool nothingReceived() { return received.empty(); }
uint8_t receive() { return received.take(); }
uint8_t sendRoom() { return toSend.room(); }

void put(uint8_t byte) { toSend.put(byte); }

void startSending() {
  const InterruptLock lock;
  if (!toSend.empty()) UCSR0B |= 1 << UDRIE0;
}

}  // namespace board

uint16_t rxLostBytes() {
  const InterruptLock lock;
  return lost;
}
