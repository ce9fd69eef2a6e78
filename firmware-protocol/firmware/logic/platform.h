// SPDX-License-Identifier: MIT
// What the logic asks of whatever it runs on. Defined by the chip's layer, and by the tests.
#pragma once
#include <stdint.h>

#include "ticks.h"

Tick tickNow();
/** Least stack room since the reset, in bytes. */
uint16_t stackFreeBytes();
/** Bytes that found no room on the way in. */
uint16_t rxLostBytes();
/** After a command: bring the outputs to the pins now, without waiting for the supervisor's turn. */
void outputsChanged();
/** Starts writing what the store has queued. */
void storeQueued();
