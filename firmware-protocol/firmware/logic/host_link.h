// SPDX-License-Identifier: MIT
// The rig's end of the wire: takes bytes, runs the command they make, picks what is sent next (answers before events
// before blocks) and gives its bytes one by one. Never waits.
#pragma once
#include <stdint.h>

#include "frame_reader.h"
#include "frame_writer.h"
#include "rig.h"

class HostLink {
 public:
  HostLink(Rig& rig, uint8_t resetCause) : rig_(rig), resetCause_(resetCause) {}

  /** A command waits for its answer to find room; take no byte until it went. */
  bool commandWaits() const { return commandWaits_; }
  void take(uint8_t byte) { commandWaits_ = reader_.take(byte); }
  /** Starts the next frame when none is on its way; false when there is nothing to send. */
  bool prepare();
  /** Something waits to be sent that no frame carries yet. */
  bool hasMore() const;
  bool sending() const { return !writer_.done(); }
  uint8_t next();

  void turnTook(Tick ticks) {
    if (ticks > worstLoop_) worstLoop_ = ticks > 0xFFFF ? 0xFFFF : static_cast<uint16_t>(ticks);
  }

 private:
  /** Code and CRC. */
  static constexpr uint8_t kFrameExtra = 3;
  static constexpr uint8_t kAnswerRoom = 56;
  static constexpr uint8_t kDescriptorChunk = 48;
  static constexpr uint8_t kStoreChunk = 48;

  void answerCommand();
  uint8_t run(uint8_t code, uint16_t& detail);
  uint8_t runDrives(uint8_t code, uint16_t& detail);
  uint8_t runSettings(uint8_t code, uint16_t& detail);
  uint8_t runStore(uint8_t code, uint16_t& detail);
  uint8_t question(uint8_t code, uint16_t& detail);
  uint8_t hello(uint16_t& detail);
  uint8_t beat();
  uint8_t descriptor(uint16_t& detail);
  uint8_t readStore(uint16_t& detail);
  void counters();
  uint8_t id() const { return reader_.length() > 1 ? reader_.payload()[1] : 0; }

  template <class Message>
  Message command() const {
    Message message;
    copy(reinterpret_cast<uint8_t*>(&message), reader_.payload() + 1, sizeof message);
    return message;
  }
  template <class Message>
  void answer(uint8_t code, const Message& message) {
    static_assert(sizeof message + kFrameExtra <= kAnswerRoom, "an answer is too long");
    answer_[0] = code;
    copy(answer_ + 1, reinterpret_cast<const uint8_t*>(&message), sizeof message);
    send(1 + sizeof message);
  }
  void send(uint8_t length) {
    answered_ = true;
    writer_.begin(answer_, length);
  }
  static void copy(uint8_t* to, const uint8_t* from, uint8_t count) {
    while (count-- > 0) *to++ = *from++;
  }

  Rig& rig_;
  FrameReader reader_;
  FrameWriter writer_;
  uint8_t answer_[kAnswerRoom];
  bool commandWaits_ = false;
  bool answered_ = false;
  bool sendsBlock_ = false;
  uint8_t resetCause_;
  uint16_t worstLoop_ = 0;
};
