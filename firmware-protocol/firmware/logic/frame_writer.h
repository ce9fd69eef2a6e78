// SPDX-License-Identifier: MIT
// Sends one payload as COBS(payload + CRC) + 0, a byte at a time, as much as the line has room for.
// The payload stands in RAM until done(), with two free bytes behind it for the CRC.
#pragma once
#include <stdint.h>

class FrameWriter {
 public:
  /** At most 240 bytes, so that payload and CRC stay one COBS block. */
  void begin(uint8_t* payload, uint8_t length);
  bool done() const { return step_ == Step::idle; }
  /** The next byte for the line; only while not done(). */
  uint8_t next() {
    if (step_ != Step::data) return turn();
    const uint8_t byte = *at_++;
    if (at_ == runEnd_) endRun();
    return byte;
  }

 private:
  enum class Step : uint8_t { idle, code, data, delimiter };
  uint8_t turn();
  uint8_t startRun();
  void endRun();

  const uint8_t* at_ = nullptr;
  const uint8_t* runEnd_ = nullptr;
  const uint8_t* end_ = nullptr;
  Step step_ = Step::idle;
};
