// SPDX-License-Identifier: MIT
// What one rig keeps: bytes in EEPROM, two halves, the newer sound one counts. A half is sequence, length, CRC of the
// bytes, CRC of the header, then the bytes; the header is written last, so a torn write leaves the other half standing.
#pragma once
#include <stdint.h>

/** The chip's EEPROM, or an array in a test. Reading is allowed only while nothing is being written. */
uint8_t eepromByte(uint16_t address);

class Store {
 public:
  static constexpr uint16_t kHalfBytes = 512;
  static constexpr uint8_t kHeaderBytes = 8;
  static constexpr uint16_t kRoom = kHalfBytes - kHeaderBytes;
  static constexpr uint8_t kChunk = 32;

  /** Finds the half that counts; once after a reset. */
  void open();
  uint16_t length() const { return length_; }
  uint8_t byteAt(uint16_t offset) const { return eepromByte(base(half_) + kHeaderBytes + offset); }

  bool busy() const { return pending_ != 0; }
  /** Into the spare half; false when it does not fit. Not while busy. */
  bool write(uint16_t offset, const uint8_t* bytes, uint8_t count);
  /** The spare half becomes the store once its header is written; false when its bytes do not match. */
  bool commit(uint16_t length, uint16_t crc);

  /** From the EEPROM's ready interrupt: the next byte to write; false when there is none. */
  bool next(uint16_t& address, uint8_t& byte);

 private:
  struct Header {
    uint16_t sequence;
    uint16_t length;
    uint16_t dataCrc;
    uint16_t headerCrc;
  };
  static uint16_t base(uint8_t half) { return half * kHalfBytes; }
  static Header headerOf(uint8_t half);
  static bool sound(uint8_t half, const Header& header);
  static uint16_t crcOf(uint8_t half, uint16_t length);
  void queue(uint16_t address, const uint8_t* bytes, uint8_t count);

  uint8_t half_ = 1;
  uint16_t sequence_ = 0;
  uint16_t length_ = 0;
  uint8_t chunk_[kChunk];
  uint16_t address_ = 0;
  uint8_t at_ = 0;
  volatile uint8_t pending_ = 0;
  bool committing_ = false;
  uint16_t committedLength_ = 0;
};
