// SPDX-License-Identifier: MIT
// Events on their way to the host. Written with the supervisor held, read by the main loop. A full queue drops the
// newest; the state message still tells what matters.
#pragma once
#include <stdint.h>

#include "generated_messages.h"
#include "ticks.h"

class EventQueue {
 public:
  void put(uint8_t kind, Tick at, uint32_t value) {
    const uint8_t next = (head_ + 1) % kRoom;
    if (next == tail_) return;
    events_[head_] = {kind, at, value};
    head_ = next;
  }
  bool empty() const { return head_ == tail_; }
  /** Only after empty() said no. */
  MsgEvent take() {
    const MsgEvent event = events_[tail_];
    tail_ = (tail_ + 1) % kRoom;
    return event;
  }

 private:
  static constexpr uint8_t kRoom = 8;
  MsgEvent events_[kRoom];
  volatile uint8_t head_ = 0;
  volatile uint8_t tail_ = 0;
};
