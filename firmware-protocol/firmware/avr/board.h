// SPDX-License-Identifier: MIT
// The one rig on this chip and its link, and what the chip's files tell each other. Registers only in this folder.
#pragma once
#include <stdint.h>

#include "host_link.h"
#include "rig.h"

extern Rig rig;

namespace board {
// pins
void beginPins();
/** Takes the rig's outputs over and shifts them out; not from interrupts. */
void showOutputs();
/** The load bits and the multiplexer's address, from the converter interrupt. */
void showFromConverter();
void toggleDeadMan();
bool stopOpen();

// time base, servo outputs, capture
void beginTimer1();
/** Only with interrupts out. */
Tick tickLocked();
/** Lets masked lines sleep and wakes those whose mask is gone. */
void applyEdgeMask();

// converter
void beginConverter();
/** The next conversion's end sets the time of all that follow. */
void anchorConverter();

// supervisor
void beginSupervisor();
void mainIsAlive();

// line
void beginLine();
bool nothingReceived();
uint8_t receive();
uint8_t sendRoom();
void put(uint8_t byte);
void startSending();

// reset
uint8_t resetCause();
void beginWatchdog();
}  // namespace board
