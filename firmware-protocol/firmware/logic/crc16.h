// SPDX-License-Identifier: MIT
// CRC-16/IBM-3740 (polynomial 0x1021, start 0xFFFF, nothing reflected), a byte at a time without a table.
// Over a message and its own CRC, high byte first, the result is 0.
#pragma once
#include <stdint.h>

constexpr uint16_t kCrcStart = 0xFFFF;

inline uint16_t crc16(uint16_t crc, uint8_t byte) {
  uint8_t x = static_cast<uint8_t>(crc >> 8) ^ byte;
  x ^= x >> 4;
  const uint8_t high = static_cast<uint8_t>(crc) ^ static_cast<uint8_t>(x << 4) ^ (x >> 3);
  const uint8_t low = x ^ static_cast<uint8_t>(x << 5);
  return static_cast<uint16_t>(high << 8) | low;
}
