// SPDX-License-Identifier: MIT
// The platform of the tests: a settable clock, an EEPROM in an array whose supply can fail between two bytes.
#include "platform_fake.h"

#include "store.h"

Tick fakeNow = 0;
uint8_t fakeEeprom[1024];
bool fakeQueued = false;

Tick tickNow() { return fakeNow; }
uint16_t stackFreeBytes() { return 600; }
uint16_t rxLostBytes() { return 3; }
void outputsChanged() {}
void storeQueued() { fakeQueued = true; }
uint8_t eepromByte(uint16_t address) { return fakeEeprom[address]; }
