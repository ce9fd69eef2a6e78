// SPDX-License-Identifier: MIT
// Keeps every interrupt out while it lives, and puts back what was before: the chip's side of the seam.
#pragma once
#include <avr/interrupt.h>
#include <avr/io.h>
#include <stdint.h>

class InterruptLock {
 public:
  __attribute__((always_inline)) InterruptLock() : before_(SREG) { cli(); }
  __attribute__((always_inline)) ~InterruptLock() {
    asm volatile("" ::: "memory");
    SREG = before_;
  }
  InterruptLock(const InterruptLock&) = delete;
  InterruptLock& operator=(const InterruptLock&) = delete;

 private:
  const uint8_t before_;
};
