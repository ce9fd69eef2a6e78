// SPDX-License-Identifier: MIT
// The wire from the rig's side: the project's golden vectors, and answers to every command, right and wrong.
#include <fstream>
#include <set>
#include <sstream>

#include "crc16.h"
#include "fake_rig.h"
#include "frame_reader.h"
#include "frame_writer.h"
#include "host_link.h"
#include "platform_fake.h"
#include "test.h"

namespace {
using Bytes = std::vector<uint8_t>;

Bytes fromHex(const std::string& hex) {
  Bytes bytes;
  for (size_t i = 0; i + 1 < hex.size(); i += 2) bytes.push_back(static_cast<uint8_t>(std::stoi(hex.substr(i, 2), nullptr, 16)));
  return bytes;
}

/** Rows of a vector file, split at TABs, without its head. */
std::vector<std::vector<std::string>> rowsOf(const std::string& file) {
  std::ifstream stream(vectorFolder + "/" + file);
  std::vector<std::vector<std::string>> rows;
  std::string line;
  while (std::getline(stream, line)) {
    if (line.empty() || line[0] == '#') continue;
    std::vector<std::string> cells;
    std::stringstream cellStream(line);
    std::string cell;
    while (std::getline(cellStream, cell, '\t')) cells.push_back(cell);
    rows.push_back(cells);
  }
  EXPECT(rows.empty(), false);
  return rows;
}

Bytes framed(Bytes payload) {
  const uint8_t length = static_cast<uint8_t>(payload.size());
  payload.resize(payload.size() + 2);
  FrameWriter writer;
  writer.begin(payload.data(), length);
  Bytes line;
  while (!writer.done()) line.push_back(writer.next());
  return line;
}

/** A host at the other end of the link. */
struct Line {
  FakeRig rig;
  HostLink link{rig.rig, kResetCauseExternal};
  Bytes answerTo(const Bytes& frame) {
    fakeNow = rig.now;
    drain();
    for (const uint8_t byte : frame) link.take(byte);
    return nextPayload();
  }
  Bytes send(const Bytes& payload) { return answerTo(framed(payload)); }
  void drain() {
    while (link.prepare())
      while (link.sending()) link.next();
  }
  Bytes nextPayload() {
    if (!link.prepare()) return {};
    Bytes stuffed;
    while (link.sending()) stuffed.push_back(link.next());
    Bytes plain;
    for (size_t i = 0; i + 1 < stuffed.size();) {
      const uint8_t code = stuffed[i++];
      for (uint8_t k = 1; k < code; ++k) plain.push_back(stuffed[i++]);
      if (i + 1 < stuffed.size()) plain.push_back(0);
    }
    plain.resize(plain.size() - 2);
    return plain;
  }
};
}  // namespace

TEST("CRC vectors") {
  for (const auto& row : rowsOf("crc.txt")) {
    uint16_t crc = kCrcStart;
    if (row[1] != "-")
      for (const uint8_t byte : fromHex(row[1])) crc = crc16(crc, byte);
    EXPECT(crc, std::stoi(row[2], nullptr, 16));
  }
}

TEST("message vectors: payloads become their frames, frames that fit a rig their payloads") {
  for (const auto& row : rowsOf("messages.txt")) {
    const Bytes payload = fromHex(row[2]);
    const Bytes frame = fromHex(row[3]);
    EXPECT(framed(payload) == frame, true);
    FrameReader reader;
    bool whole = false;
    for (const uint8_t byte : frame) whole = reader.take(byte);
    EXPECT(whole, payload.size() <= 38);
    if (whole) EXPECT(Bytes(reader.payload(), reader.payload() + reader.length()) == payload, true);
  }
}

TEST("stream vectors: frames and faults in their order") {
  for (const auto& row : rowsOf("streams.txt")) {
    FrameReader reader;
    std::vector<std::string> frames;
    std::vector<std::string> wanted;
    int faults = 0;
    std::stringstream results(row[2] == "-" ? "" : row[2]);
    for (std::string result; results >> result;) {
      const bool frame = result.rfind("frame:", 0) == 0;
      if (frame && result.size() - 6 <= 2 * 38) wanted.push_back(result.substr(6));
      else ++faults;
    }
    for (const uint8_t byte : fromHex(row[1])) {
      if (!reader.take(byte)) continue;
      std::string hex;
      for (uint8_t i = 0; i < reader.length(); ++i) {
        char cell[3];
        snprintf(cell, sizeof cell, "%02x", reader.payload()[i]);
        hex += cell;
      }
      frames.push_back(hex);
    }
    EXPECT(frames == wanted, true);
    EXPECT(reader.badFrames(), faults);
  }
}

TEST("odd payloads get nak unknownCommand or badLength") {
  for (const auto& row : rowsOf("odd-payloads.txt")) {
    const Bytes payload = fromHex(row[1]);
    if (payload[0] >= 0x80 || payload.size() > 38) continue;
    Line line;
    const Bytes answer = line.answerTo(fromHex(row[2]));
    EXPECT(answer.size(), 6);
    if (answer.size() != 6) continue;
    EXPECT(answer[0], kMsgNak);
    EXPECT(answer[2], payload[0]);
    EXPECT(answer[3], row[3] == "unknownMessage" ? kReasonUnknownCommand : kReasonBadLength);
  }
}

TEST("every command of the vectors is answered once, with its id") {
  std::set<uint8_t> codes;
  for (const auto& row : rowsOf("messages.txt")) {
    const Bytes payload = fromHex(row[2]);
    if (payload[0] >= 0x80) continue;
    codes.insert(payload[0]);
    Line line;
    const Bytes answer = line.answerTo(fromHex(row[3]));
    EXPECT(answer.empty(), false);
    if (answer.empty()) continue;
    EXPECT(answer[0] >= 0x80, true);
    if (payload[0] != kMsgBeat) EXPECT(answer[1], payload[1]);
  }
  EXPECT(codes.size(), kMsgWatch - kMsgHello + 1);
}

TEST("hello: our version to an old host, newerMajor to a newer one") {
  Line line;
  const Bytes back = line.send({kMsgHello, 7, 1, 0});
  EXPECT(back[0], kMsgHelloBack);
  EXPECT(back[1], 7);
  EXPECT(back[2], kProtocolMajor);
  EXPECT(back[7], kResetCauseExternal);
  const Bytes nak = line.send({kMsgHello, 8, 2, 0});
  EXPECT(nak[3], kReasonNewerMajor);
  EXPECT(nak[4], kProtocolMajor);
}

TEST("the descriptor comes in chunks, whole and with its CRC; beyond it is out of range") {
  Line line;
  const Bytes back = line.send({kMsgHello, 1, 1, 0});
  const uint16_t length = back[8] | back[9] << 8;
  const uint16_t wanted = back[10] | back[11] << 8;
  std::string text;
  while (text.size() < length) {
    const Bytes chunk = line.send({kMsgReadDescriptor, 2, static_cast<uint8_t>(text.size()), static_cast<uint8_t>(text.size() >> 8)});
    EXPECT(chunk[0], kMsgDescriptorChunk);
    text.append(chunk.begin() + 4, chunk.end());
  }
  uint16_t crc = kCrcStart;
  for (const char c : text) crc = crc16(crc, static_cast<uint8_t>(c));
  EXPECT(crc, wanted);
  EXPECT(text.front() == '{' && text.back() == '}', true);
  const Bytes nak = line.send({kMsgReadDescriptor, 2, static_cast<uint8_t>(length), static_cast<uint8_t>(length >> 8)});
  EXPECT(nak[3], kReasonOutOfRange);
}

TEST("a beat is answered by beatBack with its counter; of another session by nak with id 0 while live") {
  Line line;
  EXPECT(line.send({kMsgBeat, 1, 0, 0, 0, 0x34, 0x12, 0, 0, 0, 0})[1], 0x34);
  line.rig.prepare();
  line.rig.goLive();
  const Bytes nak = line.send({kMsgBeat, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0});
  EXPECT(nak[0], kMsgNak);
  EXPECT(nak[1], 0);
  EXPECT(nak[3], kReasonWrongSession);
}

TEST("the store over the wire: write, commit, read; busy while the chip writes or the rig is live") {
  Line line;
  for (uint8_t& byte : fakeEeprom) byte = 0xFF;
  line.rig.rig.store.open();
  fakeQueued = false;
  EXPECT(line.send({kMsgWriteStore, 1, 0, 0, 'h', 'i'})[0], kMsgAck);
  EXPECT(fakeQueued, true);
  EXPECT(line.send({kMsgReadStore, 2, 0, 0})[3], kReasonBusy);
  uint16_t address;
  uint8_t byte;
  while (line.rig.rig.store.next(address, byte)) fakeEeprom[address] = byte;
  const uint16_t crc = crc16(crc16(kCrcStart, 'h'), 'i');
  EXPECT(line.send({kMsgCommitStore, 3, 2, 0, 0, 0})[3], kReasonBadCrc);
  EXPECT(line.send({kMsgCommitStore, 3, 2, 0, static_cast<uint8_t>(crc), static_cast<uint8_t>(crc >> 8)})[0], kMsgAck);
  while (line.rig.rig.store.next(address, byte)) fakeEeprom[address] = byte;
  const Bytes chunk = line.send({kMsgReadStore, 4, 0, 0});
  EXPECT(chunk == (Bytes{kMsgStoreChunk, 4, 0, 0, 2, 0, 'h', 'i'}), true);
  EXPECT(line.send({kMsgReadStore, 4, 3, 0})[3], kReasonOutOfRange);
  EXPECT(line.send({kMsgWriteStore, 5, 0xF8, 1, 'x'})[3], kReasonOutOfRange);
  line.rig.prepare();
  line.rig.goLive();
  line.drain();
  EXPECT(line.send({kMsgReadStore, 6, 0, 0})[3], kReasonBusy);
}

TEST("answers go before events, events before a state nobody asked for, that before blocks") {
  Line line;
  line.drain();
  line.rig.rig.sampler.stream(true);
  line.rig.rig.events.put(kEventFeed, 1, 2);
  line.rig.conversions(2 + 72);
  const Bytes frame = framed({kMsgReadState, 9});
  for (const uint8_t byte : frame) line.link.take(byte);
  EXPECT(line.link.commandWaits(), true);
  EXPECT(line.nextPayload()[0], kMsgState);
  EXPECT(line.nextPayload()[0], kMsgEvent);
  EXPECT(line.nextPayload()[0], kMsgScanBlock);
  EXPECT(line.nextPayload().size(), 0);
}
