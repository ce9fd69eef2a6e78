// SPDX-License-Identifier: MIT
// Constants that stay in flash, and how to read them: the chip's side of the seam.
#pragma once
#include <avr/pgmspace.h>
#include <stdint.h>

#define IN_FLASH PROGMEM

inline uint8_t flashByte(const void* at) { return pgm_read_byte(at); }
inline uint16_t flashWord(const void* at) { return pgm_read_word(at); }
