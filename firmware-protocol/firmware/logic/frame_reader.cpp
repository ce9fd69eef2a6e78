// SPDX-License-Identifier: MIT
// COBS undone byte by byte; see frame_reader.h. Knows nothing of what a payload means.
#include "frame_reader.h"

#include "crc16.h"

bool FrameReader::take(uint8_t byte) {
  if (byte == 0) return finish();
  if (runLeft_ > 0) {
    --runLeft_;
    store(byte);
    return false;
  }
  if (zeroDue_) store(0);
  begun_ = true;
  runLeft_ = byte - 1;
  zeroDue_ = byte != 0xFF;
  return false;
}

void FrameReader::store(uint8_t byte) {
  if (filled_ == kRoom) {
    damaged_ = true;
    return;
  }
  bytes_[filled_++] = byte;
  crc_ = crc16(crc_, byte);
}

bool FrameReader::finish() {
  const bool blank = !begun_;
  const bool sound = begun_ && !damaged_ && runLeft_ == 0 && filled_ > 2 && crc_ == 0;
  length_ = sound ? filled_ - 2 : 0;
  if (!sound && !blank && badFrames_ != 0xFFFF) ++badFrames_;
  startOver();
  return sound;
}

void FrameReader::startOver() {
  filled_ = 0;
  runLeft_ = 0;
  zeroDue_ = begun_ = damaged_ = false;
  crc_ = kCrcStart;
}
