// SPDX-License-Identifier: MIT
// How a command says no: the reason is the answer, the detail is what the wire tells of it.
#pragma once
#include <stdint.h>

constexpr uint8_t kDone = 0;

inline uint8_t refuse(uint16_t& detail, uint16_t value, uint8_t reason) {
  detail = value;
  return reason;
}
