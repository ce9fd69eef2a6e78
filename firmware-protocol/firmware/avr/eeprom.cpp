// SPDX-License-Identifier: MIT
// EEPROM: a read is immediate, a write goes byte by byte from the ready interrupt.
#include <avr/interrupt.h>
#include <avr/io.h>

#include "board.h"
#include "platform.h"
#include "store.h"

ISR(EE_READY_vect) {
  uint16_t address;
  uint8_t byte;
  if (!rig.store.next(address, byte)) {
    EECR &= static_cast<uint8_t>(~(1 << EERIE));
    return;
  }
  EEAR = address;
  EEDR = byte;
  EECR |= 1 << EEMPE;
  EECR |= 1 << EEPE;
}

uint8_t eepromByte(uint16_t address) {
  EEAR = address;
  EECR |= 1 << EERE;
  return EEDR;
}

void storeQueued() { EECR |= 1 << EERIE; }
