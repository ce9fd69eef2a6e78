// SPDX-License-Identifier: MIT
// Takes bytes from the line, undoes COBS as they come, checks the CRC and keeps one command.
// Anything damaged or too long is dropped up to the next delimiter and counted.
#pragma once
#include <stdint.h>

class FrameReader {
 public:
  /** True when this byte completed a sound frame; its payload stands until the next take(). */
  bool take(uint8_t byte);
  const uint8_t* payload() const { return bytes_; }
  uint8_t length() const { return length_; }
  uint16_t badFrames() const { return badFrames_; }

 private:
  static constexpr uint8_t kRoom = 40;
  void store(uint8_t byte);
  bool finish();
  void startOver();

  uint8_t bytes_[kRoom];
  uint8_t filled_ = 0;
  uint8_t length_ = 0;
  uint8_t runLeft_ = 0;
  bool zeroDue_ = false;
  bool begun_ = false;
  bool damaged_ = false;
  uint16_t crc_ = 0xFFFF;
  uint16_t badFrames_ = 0;
};
