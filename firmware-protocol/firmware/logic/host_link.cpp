// SPDX-License-Identifier: MIT
// The table of commands and the order of what is sent; see host_link.h. Refusals are decided in Rig.
#include "host_link.h"

#include "generated_descriptor.h"
#include "platform.h"
#include "supervisor_hold.h"

namespace {
constexpr uint8_t kDone = 0;
constexpr uint8_t kFirmwareVersion[3] = {0, 1, 0};
bool known(uint8_t code) { return code >= kMsgHello && code <= kMsgWatch; }
}  // namespace

bool HostLink::hasMore() const {
  return commandWaits_ || !rig_.events.empty() || rig_.hasStateNews() || rig_.sampler.hasFullBlock();
}

bool HostLink::prepare() {
  if (commandWaits_) {
    commandWaits_ = false;
    answerCommand();
    return true;
  }
  if (!rig_.events.empty()) {
    answer(kMsgEvent, rig_.events.take());
    return true;
  }
  if (rig_.takeStateNews()) {
    answer(kMsgState, rig_.stateMessage(0));
    return true;
  }
  uint8_t length;
  uint8_t* block = rig_.sampler.fullBlock(length);
  if (block == nullptr) return false;
  sendsBlock_ = true;
  writer_.begin(block, length);
  return true;
}

uint8_t HostLink::next() {
  const uint8_t byte = writer_.next();
  if (writer_.done() && sendsBlock_) {
    sendsBlock_ = false;
    rig_.sampler.release();
  }
  return byte;
}

void HostLink::answerCommand() {
  const uint8_t code = reader_.payload()[0];
  const uint8_t fields = reader_.length() - 1;
  uint16_t detail = 0;
  uint8_t reason;
  answered_ = false;
  if (!known(code)) reason = kReasonUnknownCommand;
  else if (!commandLengthFits(code, fields)) {
    reason = kReasonBadLength;
    detail = fields;
  } else reason = run(code, detail);
  if (answered_) return;
  if (reason == kDone) answer(kMsgAck, MsgAck{id(), code});
  else answer(kMsgNak, MsgNak{code == kMsgBeat ? uint8_t{0} : id(), code, reason, detail});
}

uint8_t HostLink::run(uint8_t code, uint16_t& detail) {
  if (code == kMsgReadStore || code == kMsgWriteStore || code == kMsgCommitStore) return runStore(code, detail);
  if (code == kMsgHello || code == kMsgReadDescriptor || code == kMsgReadCounters || code == kMsgReadState) return question(code, detail);
  const SupervisorHold hold;
  const uint8_t reason = runDrives(code, detail);
  if (reason == kDone) outputsChanged();
  return reason;
}

uint8_t HostLink::runDrives(uint8_t code, uint16_t& detail) {
  switch (code) {
    case kMsgBeat: return beat();
    case kMsgStream: return rig_.stream(command<MsgStream>().on != 0, detail);
    case kMsgScanList: return rig_.scanList(command<MsgScanList>(), detail);
    case kMsgBurst:
      if (kBaud == kBaudSlow) return kReasonBaudTooSlow;
      return rig_.burst(command<MsgBurst>(), detail);
    case kMsgGoLive: return rig_.goLive(command<MsgGoLive>().session, tickNow(), detail);
    case kMsgSafeAll: return rig_.safeAll(tickNow());
    case kMsgDrive: return rig_.drive(command<MsgDrive>(), detail);
    case kMsgLoad: return rig_.load(command<MsgLoad>().mask, command<MsgLoad>().ms, detail);
    case kMsgFeed: return rig_.feedTo(command<MsgFeed>().level, tickNow(), detail);
    default: return runSettings(code, detail);
  }
}

uint8_t HostLink::runSettings(uint8_t code, uint16_t& detail) {
  switch (code) {
    case kMsgLimit: return rig_.limit(command<MsgLimit>(), detail);
    case kMsgDriveLimits: return rig_.driveLimits(command<MsgDriveLimits>(), detail);
    case kMsgFrame: return rig_.frame(command<MsgFrame>().period, command<MsgFrame>().digital, detail);
    case kMsgClearTrip: return rig_.clearTrip(detail);
    case kMsgSwitch: {
      const MsgSwitch wish = command<MsgSwitch>();
      return rig_.setSwitch(wish.which, wish.on, wish.ms, detail);
    }
    case kMsgCapture: return rig_.capture(command<MsgCapture>().source);
    case kMsgFailSafeTest: return rig_.failSafeTest(command<MsgFailSafeTest>().ms, detail);
    case kMsgWatch: return rig_.watch(command<MsgWatch>().thermistors);
    default: return kReasonUnknownCommand;
  }
}

uint8_t HostLink::beat() {
  const MsgBeat message = command<MsgBeat>();
  const Tick now = tickNow();
  const uint8_t reason = rig_.beat(message.session, now);
  if (reason == kDone) answer(kMsgBeatBack, MsgBeatBack{message.counter, now, rig_.host.worstGapMs(), rig_.state()});
  return reason;
}

uint8_t HostLink::question(uint8_t code, uint16_t& detail) {
  switch (code) {
    case kMsgHello: return hello(detail);
    case kMsgReadDescriptor: return descriptor(detail);
    case kMsgReadCounters: counters(); return kDone;
    default: answer(kMsgState, rig_.stateMessage(id())); return kDone;
  }
}

uint8_t HostLink::hello(uint16_t& detail) {
  const MsgHello message = command<MsgHello>();
  detail = kProtocolMajor;
  if (message.major > kProtocolMajor) return kReasonNewerMajor;
  MsgHelloBack back = {message.id, kProtocolMajor, kProtocolMinor, {}, resetCause_, kDescriptorLength, kDescriptorCrc, tickNow()};
  copy(back.firmware, kFirmwareVersion, sizeof back.firmware);
  answer(kMsgHelloBack, back);
  return kDone;
}

uint8_t HostLink::descriptor(uint16_t& detail) {
  const MsgReadDescriptor message = command<MsgReadDescriptor>();
  detail = kDescriptorLength;
  if (message.offset >= kDescriptorLength) return kReasonOutOfRange;
  const uint16_t left = kDescriptorLength - message.offset;
  const uint8_t count = left < kDescriptorChunk ? static_cast<uint8_t>(left) : kDescriptorChunk;
  const MsgDescriptorChunk head = {message.id, message.offset};
  static_assert(sizeof head + kDescriptorChunk + kFrameExtra <= kAnswerRoom, "a descriptor chunk is too long");
  answer_[0] = kMsgDescriptorChunk;
  copy(answer_ + 1, reinterpret_cast<const uint8_t*>(&head), sizeof head);
  for (uint8_t i = 0; i < count; ++i) answer_[1 + sizeof head + i] = flashByte(kDescriptor + message.offset + i);
  send(1 + sizeof head + count);
  return kDone;
}

void HostLink::counters() {
  MsgCounters message;
  message.id = id();
  message.badFrames = reader_.badFrames();
  message.rxLost = rxLostBytes();
  message.blocksDropped = rig_.sampler.blocksDropped;
  message.edgesDropped = rig_.sampler.edgesDropped;
  message.noisyLine = rig_.noisyLines();
  message.worstGap = rig_.host.worstGapMs();
  message.worstLoop = worstLoop_;
  message.stackFree = stackFreeBytes();
  answer(kMsgCounters, message);
}

uint8_t HostLink::runStore(uint8_t code, uint16_t& detail) {
  if (rig_.store.busy() || rig_.state() == kStateLive) return kReasonBusy;
  if (code == kMsgReadStore) return readStore(detail);
  if (code == kMsgCommitStore) {
    const MsgCommitStore message = command<MsgCommitStore>();
    detail = Store::kRoom;
    if (message.length > Store::kRoom) return kReasonOutOfRange;
    if (!rig_.store.commit(message.length, message.crc)) return kReasonBadCrc;
  } else {
    const MsgWriteStore message = command<MsgWriteStore>();
    const uint8_t count = reader_.length() - 1 - sizeof message;
    detail = Store::kRoom;
    if (!rig_.store.write(message.offset, reader_.payload() + 1 + sizeof message, count)) return kReasonOutOfRange;
  }
  storeQueued();
  return kDone;
}

uint8_t HostLink::readStore(uint16_t& detail) {
  const MsgReadStore message = command<MsgReadStore>();
  const uint16_t length = rig_.store.length();
  detail = length;
  if (message.offset > length) return kReasonOutOfRange;
  const uint16_t left = length - message.offset;
  const uint8_t count = left < kStoreChunk ? static_cast<uint8_t>(left) : kStoreChunk;
  const MsgStoreChunk head = {message.id, message.offset, length};
  static_assert(sizeof head + kStoreChunk + kFrameExtra <= kAnswerRoom, "a store chunk is too long");
  answer_[0] = kMsgStoreChunk;
  copy(answer_ + 1, reinterpret_cast<const uint8_t*>(&head), sizeof head);
  for (uint8_t i = 0; i < count; ++i) answer_[1 + sizeof head + i] = rig_.store.byteAt(message.offset + i);
  send(1 + sizeof head + count);
  return kDone;
}
