// SPDX-License-Identifier: MIT
// The two halves of the store; see store.h. Nothing here waits for the EEPROM.
#include "store.h"

#include "crc16.h"

namespace {
uint16_t wordAt(uint16_t address) {
  return eepromByte(address) | static_cast<uint16_t>(static_cast<uint16_t>(eepromByte(address + 1)) << 8);
}
uint16_t crcOfWord(uint16_t crc, uint16_t word) { return crc16(crc16(crc, word & 0xFF), word >> 8); }

uint16_t headerCrcOf(uint16_t sequence, uint16_t length, uint16_t dataCrc) {
  return crcOfWord(crcOfWord(crcOfWord(kCrcStart, sequence), length), dataCrc);
}
}  // namespace

Store::Header Store::headerOf(uint8_t half) {
  const uint16_t at = base(half);
  return {wordAt(at), wordAt(at + 2), wordAt(at + 4), wordAt(at + 6)};
}

uint16_t Store::crcOf(uint8_t half, uint16_t length) {
  uint16_t crc = kCrcStart;
  for (uint16_t i = 0; i < length; ++i) crc = crc16(crc, eepromByte(base(half) + kHeaderBytes + i));
  return crc;
}

bool Store::sound(uint8_t half, const Header& header) {
  if (header.length > kRoom) return false;
  if (headerCrcOf(header.sequence, header.length, header.dataCrc) != header.headerCrc) return false;
  return crcOf(half, header.length) == header.dataCrc;
}

void Store::open() {
  bool found = false;
  for (uint8_t half = 0; half < 2; ++half) {
    const Header header = headerOf(half);
    if (!sound(half, header)) continue;
    if (found && static_cast<int16_t>(header.sequence - sequence_) < 0) continue;
    found = true;
    half_ = half;
    sequence_ = header.sequence;
    length_ = header.length;
  }
}

void Store::queue(uint16_t address, const uint8_t* bytes, uint8_t count) {
  for (uint8_t i = 0; i < count; ++i) chunk_[i] = bytes[i];
  address_ = address;
  at_ = 0;
  pending_ = count;
}

bool Store::write(uint16_t offset, const uint8_t* bytes, uint8_t count) {
  if (count > kChunk || offset > kRoom - count) return false;
  queue(base(half_ ^ 1) + kHeaderBytes + offset, bytes, count);
  return true;
}

bool Store::commit(uint16_t length, uint16_t crc) {
  if (length > kRoom || crcOf(half_ ^ 1, length) != crc) return false;
  const uint16_t sequence = sequence_ + 1;
  const uint16_t words[4] = {sequence, length, crc, headerCrcOf(sequence, length, crc)};
  uint8_t header[kHeaderBytes];
  for (uint8_t i = 0; i < kHeaderBytes; ++i) header[i] = static_cast<uint8_t>(words[i / 2] >> (i & 1 ? 8 : 0));
  committing_ = true;
  committedLength_ = length;
  queue(base(half_ ^ 1), header, kHeaderBytes);
  return true;
}

bool Store::next(uint16_t& address, uint8_t& byte) {
  if (at_ < pending_) {
    address = address_ + at_;
    byte = chunk_[at_++];
    return true;
  }
  if (pending_ != 0 && committing_) {
    half_ ^= 1;
    ++sequence_;
    length_ = committedLength_;
    committing_ = false;
  }
  pending_ = 0;
  return false;
}
