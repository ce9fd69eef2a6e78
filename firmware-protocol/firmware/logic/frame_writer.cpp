// SPDX-License-Identifier: MIT
// COBS made byte by byte; see frame_writer.h.
#include "frame_writer.h"

#include "crc16.h"
#include "generated_messages.h"

static_assert(kMaxPayloadBytes + 2 < 254, "a payload with its CRC must stay one COBS block");

void FrameWriter::begin(uint8_t* payload, uint8_t length) {
  uint16_t crc = kCrcStart;
  uint8_t* at = payload;
  for (uint8_t left = length; left > 0; --left) crc = crc16(crc, *at++);
  *at++ = static_cast<uint8_t>(crc >> 8);
  *at++ = static_cast<uint8_t>(crc);
  at_ = payload;
  end_ = at;
  step_ = Step::code;
}

uint8_t FrameWriter::turn() {
  if (step_ == Step::code) return startRun();
  step_ = Step::idle;
  return 0;
}

uint8_t FrameWriter::startRun() {
  const uint8_t* to = at_;
  while (to != end_ && *to != 0) ++to;
  const uint8_t code = static_cast<uint8_t>(to - at_ + 1);
  runEnd_ = to;
  if (at_ == to) endRun();
  else step_ = Step::data;
  return code;
}

/** After a run comes the zero that ended it, which is not sent, or the delimiter. */
void FrameWriter::endRun() {
  if (runEnd_ == end_) {
    step_ = Step::delimiter;
    return;
  }
  ++at_;
  step_ = Step::code;
}
