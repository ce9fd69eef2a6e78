// SPDX-License-Identifier: MIT
// Scan and burst assembly; see scan_sampler.h. convert() and what it calls run in the converter interrupt.
#include "scan_sampler.h"

/** Keeps the converter interrupt's usual way short: what is rare saves its own registers. */
#define OUT_OF_LINE __attribute__((noinline))

namespace {
constexpr uint8_t kSlowSlot = 8;
/** Where the multiplexer steps: long before its turn, and in a turn without other work. */
constexpr uint8_t kStepSlot = 2;
/** Place in the fast list of each of the first eight slots: a b b a c d d c. */
constexpr uint8_t kOrder[kSlowSlot] = {0, 1, 1, 0, 2, 3, 3, 2};
constexpr uint8_t kScanHead = 1 + sizeof(MsgScanBlock);
constexpr uint8_t kBurstHead = 1 + sizeof(MsgBurstBlock);
static_assert(kScanHead + 2 * kBlockEdges <= kMaxPayloadBytes, "a scan block is too long");
static_assert(kBurstHead + 2 * kBurstBlockSamples <= kScanHead + 2 * kBlockEdges, "a burst block has no room");
}  // namespace

bool ScanList::holds(uint8_t channel) const {
  for (const uint8_t each : fast)
    if (each == channel) return true;
  return slow == channel;
}

void ScanSampler::convert(uint16_t raw) {
  ++conversions_;
  if (skip_ > 0) return skipOne(raw);
  const uint8_t slot = slot_;
  const uint8_t channel = plan_[slot];
  readings.put(channel, raw);
  if (channel == tap::packWide) watchShort(raw);
  if (bursting_) takeBurst(raw);
  else takeScan(slot, raw);
}

/** The two conversions on their way when a plan came go into no block. */
OUT_OF_LINE void ScanSampler::skipOne(uint16_t raw) {
  const uint8_t channel = old_[2 - skip_];
  if (channel != kMultiplexerChannel) readings.put(channel, raw);
  if (channel == tap::packWide) watchShort(raw);
  start_ += kConversionTicks;
  --skip_;
}

inline void ScanSampler::watchShort(uint16_t raw) {
  if (raw < fastLimit_) shortCount_ = 0;
  else if (shortCount_ < kShortCounts) ++shortCount_;
}

/** The block's head is written in portions, and the multiplexer steps early in a scan: no single turn is long. */
inline void ScanSampler::takeScan(uint8_t slot, uint16_t raw) {
  if (slot == kSlowSlot) return endScan(raw);
  if (scanInBlock_ == 0) writeHead(slot);
  else if (scanInBlock_ == kScansPerBlock - 1) writeStatus(slot);
  if (slot == kStepSlot && plan_[kSlowSlot] == kMultiplexerChannel) input_ = (input_ + 1) & 7;
  const uint8_t place = kOrder[slot];
  if (slot & 2) row_[place] = held_[place] + raw;
  else held_[place] = raw;
  slot_ = slot + 1;
}

inline void ScanSampler::endScan(uint16_t raw) {
  row_[kFastPerScan] = raw;
  row_ += kSamplesPerScan;
  if (plan_[kSlowSlot] == kMultiplexerChannel) readings.put(tap::firstThermistor + input_, raw);
  slot_ = 0;
  start_ += kScanTicks;
  ++scan_;
  if (++scanInBlock_ == kScansPerBlock) endBlock();
}

OUT_OF_LINE void ScanSampler::writeHead(uint8_t slot) {
  MsgScanBlock& head = writing_->scan.head;
  if (slot == 0) {
    head.scan = scan_;
    head.tick = start_;
  } else if (slot == 1) {
    writing_->scan.code = kMsgScanBlock;
    head.slow = list_.slow;
  } else if (slot == 4) {
    head.slowFirst = input_;
    for (uint8_t i = 0; i < kFastPerScan; ++i) head.fast[i] = list_.fast[i];
  }
}

OUT_OF_LINE void ScanSampler::writeStatus(uint8_t slot) {
  MsgScanBlock& head = writing_->scan.head;
  if (slot == 0) {
    head.state = status.state;
    head.trip = status.trip;
    head.outputs = status.outputs;
  } else if (slot == 1) {
    head.steering = status.steering;
    head.throttle = status.throttle;
  }
}

OUT_OF_LINE void ScanSampler::endBlock() {
  const InterruptLock lock;
  scanInBlock_ = 0;
  MsgScanBlock& head = writing_->scan.head;
  head.edgesB = edgeCount_.edgesB;
  head.edgesC = edgeCount_.edgesC;
  head.badHall = edgeCount_.badHall;
  head.edgesA = edgeCount_.edgesA;
  head.lastEdge = edgeCount_.lastEdge();
  const uint8_t length = 2 * edgePlace_;
  edgePlace_ = kEdgeWord;
  hand(length);
  row_ = writing_->words + kSampleWord;
}

OUT_OF_LINE void ScanSampler::takeBurst(uint16_t raw) {
  if (inBurstBlock_ == 0) openBurstBlock();
  writing_->words[kBurstWord + inBurstBlock_] = raw;
  if (actionSet_ && sample_ == actionSample_) {
    actionSet_ = false;
    actionDue_ = true;
  }
  ++sample_;
  const bool last = sample_ == samplesWanted_;
  if (++inBurstBlock_ == kBurstBlockSamples || last) endBurstBlock();
  if (!last) return;
  const InterruptLock lock;
  backToScan();
}

OUT_OF_LINE void ScanSampler::openBurstBlock() {
  BurstFrame& frame = writing_->burst;
  frame.code = kMsgBurstBlock;
  frame.head.first = sample_;
  frame.head.tick = start_;
  frame.head.channel = plan_[0];
  frame.head.outputs = status.outputs;
}

void ScanSampler::endBurstBlock() {
  const uint8_t length = kBurstHead + 2 * inBurstBlock_;
  start_ += kConversionTicks * static_cast<uint16_t>(inBurstBlock_);
  inBurstBlock_ = 0;
  hand(length);
}

/** The block just filled goes to the main loop, unless the other one is still there. */
void ScanSampler::hand(uint8_t length) {
  if (!streaming_) return;
  if (fullLength_ != 0) {
    ++blocksDropped;
    return;
  }
  full_ = writing_;
  fullLength_ = length;
  writing_ = writing_ == blocks_ ? blocks_ + 1 : blocks_;
}

OUT_OF_LINE void ScanSampler::backToScan() {
  keepPipeline();
  bursting_ = false;
  takesEdges_ = streaming_;
  for (uint8_t slot = 0; slot < kSlowSlot; ++slot) plan_[slot] = list_.fast[kOrder[slot]];
  plan_[kSlowSlot] = list_.slow;
  plan_[kSlots] = plan_[0];
  plan_[kSlots + 1] = plan_[1];
  restart();
}

void ScanSampler::keepPipeline() {
  start_ = conversionStart();
  if (skip_ == 0) {
    old_[0] = plan_[slot_];
    old_[1] = plan_[slot_ + 1];
  } else if (skip_ == 1) {
    old_[0] = old_[1];
    old_[1] = plan_[0];
  }
}

void ScanSampler::restart() {
  skip_ = 2;
  slot_ = 0;
  scanInBlock_ = 0;
  edgePlace_ = kEdgeWord;
  inBurstBlock_ = 0;
  row_ = writing_->words + kSampleWord;
}

void ScanSampler::scan(const ScanList& list) {
  const InterruptLock lock;
  list_ = list;
  backToScan();
}

void ScanSampler::stream(bool on) {
  const InterruptLock lock;
  if (bursting_ || (on && !streaming_)) backToScan();
  streaming_ = on;
  takesEdges_ = on && !bursting_;
}

void ScanSampler::burst(uint8_t channel, uint32_t samples) {
  const InterruptLock lock;
  keepPipeline();
  for (uint8_t& slot : plan_) slot = channel;
  sample_ = 0;
  samplesWanted_ = samples;
  actionSet_ = false;
  bursting_ = true;
  takesEdges_ = false;
  restart();
}

void ScanSampler::actionAt(uint16_t sample) {
  const InterruptLock lock;
  actionSample_ = sample;
  actionSet_ = true;
}

void ScanSampler::cancelAction() {
  const InterruptLock lock;
  actionSet_ = actionDue_ = false;
}

OUT_OF_LINE void ScanSampler::anchor(Tick conversionStart) {
  const InterruptLock lock;
  keepPipeline();
  restart();
  start_ = conversionStart;
}

Tick ScanSampler::conversionStart() const {
  const InterruptLock lock;
  return start_ + kConversionTicks * static_cast<uint16_t>(bursting_ ? inBurstBlock_ : slot_);
}

bool ScanSampler::converts(uint8_t channel) const { return bursting_ ? plan_[0] == channel : list_.holds(channel); }

uint8_t* ScanSampler::fullBlock(uint8_t& length) {
  length = fullLength_;
  return length == 0 ? nullptr : &full_->scan.code;
}
