// SPDX-License-Identifier: MIT
// The store: blank, written, committed, read back; and the supply failing after every single byte of a commit.
#include <cstring>
#include <string>

#include "crc16.h"
#include "platform_fake.h"
#include "store.h"
#include "test.h"

namespace {
void blank() { std::memset(fakeEeprom, 0xFF, sizeof fakeEeprom); }

uint16_t crcOf(const std::string& text) {
  uint16_t crc = kCrcStart;
  for (const char c : text) crc = crc16(crc, static_cast<uint8_t>(c));
  return crc;
}
/** Bytes written before the supply failed, at most `most`. */
int pump(Store& store, int most = 100000) {
  uint16_t address;
  uint8_t byte;
  int written = 0;
  while (written < most && store.next(address, byte)) {
    fakeEeprom[address] = byte;
    ++written;
  }
  return written;
}
void fill(Store& store, const std::string& text) {
  for (size_t at = 0; at < text.size(); at += 32) {
    const std::string piece = text.substr(at, 32);
    EXPECT(store.write(static_cast<uint16_t>(at), reinterpret_cast<const uint8_t*>(piece.data()), static_cast<uint8_t>(piece.size())), true);
    EXPECT(store.busy(), true);
    pump(store);
    EXPECT(store.busy(), false);
  }
}
std::string readBack() {
  Store store;
  store.open();
  std::string text;
  for (uint16_t i = 0; i < store.length(); ++i) text += static_cast<char>(store.byteAt(i));
  return text;
}
}  // namespace

TEST("a blank chip has an empty store") {
  blank();
  EXPECT(readBack().size(), 0);
}

TEST("what is written and committed is there after a reset, in either half") {
  blank();
  Store store;
  store.open();
  for (const std::string& text : {std::string(504, 'a'), std::string("short"), std::string(77, 'c'), std::string("x")}) {
    fill(store, text);
    EXPECT(store.commit(static_cast<uint16_t>(text.size()), crcOf(text)), true);
    pump(store);
    EXPECT(store.length(), text.size());
    EXPECT(readBack() == text, true);
  }
}

TEST("a commit with a wrong CRC or too long changes nothing") {
  blank();
  Store store;
  store.open();
  fill(store, "old");
  store.commit(3, crcOf("old"));
  pump(store);
  fill(store, "new");
  EXPECT(store.commit(3, crcOf("other")), false);
  EXPECT(store.commit(505, 0), false);
  EXPECT(store.write(503, reinterpret_cast<const uint8_t*>("ab"), 2), false);
  EXPECT(readBack() == "old", true);
}

TEST("a commit cut after any byte leaves the old store or the new one, never anything else") {
  const std::string old = "the old one";
  const std::string young = "the young one, longer";
  for (int bytes = 0; bytes <= 8; ++bytes) {
    blank();
    Store store;
    store.open();
    fill(store, old);
    store.commit(static_cast<uint16_t>(old.size()), crcOf(old));
    pump(store);
    fill(store, young);
    store.commit(static_cast<uint16_t>(young.size()), crcOf(young));
    pump(store, bytes);
    const std::string found = readBack();
    EXPECT(found == (bytes == 8 ? young : old), true);
  }
}

TEST("a write cut in the middle leaves the store that stood") {
  blank();
  Store store;
  store.open();
  fill(store, "stands");
  store.commit(6, crcOf("stands"));
  pump(store);
  store.write(0, reinterpret_cast<const uint8_t*>("half of a thing"), 15);
  pump(store, 7);
  EXPECT(readBack() == "stands", true);
}

TEST("the sequence wraps and the newer half still counts") {
  blank();
  Store store;
  store.open();
  for (int i = 0; i < 70000; i += 1000) {
    const std::string text = std::to_string(i);
    fill(store, text);
    store.commit(static_cast<uint16_t>(text.size()), crcOf(text));
    pump(store);
  }
  EXPECT(readBack() == "69000", true);
}
