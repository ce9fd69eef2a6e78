// SPDX-License-Identifier: MIT
// While it lives the supervisor does not run and no marked action fires: the chip's side of the seam.
#pragma once
#include <avr/io.h>
#include <stdint.h>

/** Set while rig state is being changed outside an interrupt lock. */
extern volatile uint8_t supervisorHeld;

class SupervisorHold {
 public:
  SupervisorHold() {
    TIMSK2 = 0;
    supervisorHeld = 1;
  }
  ~SupervisorHold() {
    supervisorHeld = 0;
    TIMSK2 = 1 << OCIE2A;
  }
  SupervisorHold(const SupervisorHold&) = delete;
  SupervisorHold& operator=(const SupervisorHold&) = delete;
};
