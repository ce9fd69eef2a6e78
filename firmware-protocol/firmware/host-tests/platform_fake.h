// SPDX-License-Identifier: MIT
// What tests set of the fake platform.
#pragma once
#include "platform.h"

extern Tick fakeNow;
extern uint8_t fakeEeprom[1024];
extern bool fakeQueued;
