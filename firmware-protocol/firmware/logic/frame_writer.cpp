// SPDX-License-Identifier: MIT
// COBS made byte by byte; see frame_writer.h. A payload of at most 240 bytes is one COBS block, so no 0xFF runs.
#include "frame_writer.h"

#include "crc16.h"
#include "flash.h"

static_assert(kMaxPayloadBytes + 2 < 254, "a payload with its CRC must stay one COBS block");

void FrameWriter::begin(const uint8_t* head, uint8_t headLength, const char* flashTail, uint8_t tailLength) {
  head_ = head;
  tail_ = flashTail;
  headLength_ = headLength;
  payloadLength_ = headLength + tailLength;
  uint16_t crc = kCrcStart;
  for (uint8_t i = 0; i < headLength; ++i) crc = crc16(crc, head[i]);
  for (uint8_t i = 0; i < tailLength; ++i) crc = crc16(crc, flashByte(flashTail + i));
  crcHigh_ = static_cast<uint8_t>(crc >> 8);
  crcLow_ = static_cast<uint8_t>(crc);
  index_ = 0;
  step_ = Step::code;
}

uint8_t FrameWriter::byteAt(uint8_t index) const {
  if (index < headLength_) return head_[index];
  if (index < payloadLength_) return flashByte(tail_ + (index - headLength_));
  return index == payloadLength_ ? crcHigh_ : crcLow_;
}

uint8_t FrameWriter::startRun() {
  const uint8_t total = payloadLength_ + 2;
  runEnd_ = index_;
  while (runEnd_ < total && byteAt(runEnd_) != 0) ++runEnd_;
  const uint8_t code = runEnd_ - index_ + 1;
  if (runEnd_ > index_) step_ = Step::data;
  else if (runEnd_ == total) step_ = Step::delimiter;
  else ++index_;
  return code;
}

uint8_t FrameWriter::next() {
  if (step_ == Step::code) return startRun();
  if (step_ == Step::delimiter) {
    step_ = Step::idle;
    return 0;
  }
  const uint8_t byte = byteAt(index_++);
  if (index_ < runEnd_) return byte;
  if (runEnd_ == payloadLength_ + 2) step_ = Step::delimiter;
  else {
    ++index_;
    step_ = Step::code;
  }
  return byte;
}
