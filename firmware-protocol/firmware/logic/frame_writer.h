// SPDX-License-Identifier: MIT
// Sends one payload as COBS(payload + CRC) + 0, a byte at a time, as much as the line has room for.
// The payload is a head in RAM and, if wanted, a tail in flash; both must stand until done().
#pragma once
#include <stdint.h>

#include "generated_messages.h"

class FrameWriter {
 public:
  void begin(const uint8_t* head, uint8_t headLength, const char* flashTail, uint8_t tailLength);
  bool done() const { return step_ == Step::idle; }
  /** The next byte for the line; only while not done(). */
  uint8_t next();

 private:
  enum class Step : uint8_t { idle, code, data, delimiter };
  uint8_t byteAt(uint8_t index) const;
  uint8_t startRun();

  const uint8_t* head_ = nullptr;
  const char* tail_ = nullptr;
  uint8_t headLength_ = 0;
  uint8_t payloadLength_ = 0;
  uint8_t index_ = 0;
  uint8_t runEnd_ = 0;
  uint8_t crcHigh_ = 0;
  uint8_t crcLow_ = 0;
  Step step_ = Step::idle;
};
