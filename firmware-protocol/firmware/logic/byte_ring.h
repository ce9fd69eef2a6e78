// SPDX-License-Identifier: MIT
// A ring of bytes between one writer and one reader, one of them an interrupt. It owns both indices.
// Size is a power of two, at most 256; one place stays empty.
#pragma once
#include <stdint.h>

template <uint16_t Size>
class ByteRing {
 public:
  bool empty() const { return head_ == tail_; }
  uint8_t room() const { return static_cast<uint8_t>(tail_ - head_ - 1) & kMask; }
  bool put(uint8_t byte) {
    const uint8_t next = static_cast<uint8_t>(head_ + 1) & kMask;
    if (next == tail_) return false;
    bytes_[head_] = byte;
    head_ = next;
    return true;
  }
  /** Only after empty() said no. */
  uint8_t take() {
    const uint8_t byte = bytes_[tail_];
    tail_ = static_cast<uint8_t>(tail_ + 1) & kMask;
    return byte;
  }

 private:
  static_assert(Size <= 256 && (Size & (Size - 1)) == 0, "a ring's size is a power of two, at most 256");
  static constexpr uint8_t kMask = static_cast<uint8_t>(Size - 1);
  volatile uint8_t bytes_[Size];
  volatile uint8_t head_ = 0;
  volatile uint8_t tail_ = 0;
};
