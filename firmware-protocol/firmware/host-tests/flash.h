// SPDX-License-Identifier: MIT
// On a host flash is ordinary memory.
#pragma once
#include <stdint.h>
#include <string.h>

#define IN_FLASH

inline uint8_t flashByte(const void* at) { return *static_cast<const uint8_t*>(at); }
inline uint16_t flashWord(const void* at) {
  uint16_t word;
  memcpy(&word, at, sizeof word);
  return word;
}
