// SPDX-License-Identifier: MIT
// Scan and burst assembly; see scan_sampler.h. convert() and what it calls run in the converter interrupt.
#include "scan_sampler.h"

namespace {
constexpr uint8_t kSlots = 9;
constexpr uint8_t kSlowSlot = 8;
/** Place in the fast list of each of the first eight slots: a b b a c d d c. */
constexpr uint8_t kOrder[kSlowSlot] = {0, 1, 1, 0, 2, 3, 3, 2};
constexpr uint8_t kScanHead = 1 + sizeof(MsgScanBlock);
constexpr uint8_t kBurstHead = 1 + sizeof(MsgBurstBlock);
static_assert(sizeof(ScanFrame) <= kMaxPayloadBytes, "a scan block is too long");
static_assert(sizeof(BurstFrame) <= kMaxPayloadBytes, "a burst block is too long");
}  // namespace

bool ScanList::holds(uint8_t channel) const {
  for (const uint8_t each : fast)
    if (each == channel) return true;
  return slow == channel;
}

uint8_t ScanSampler::convert(uint16_t raw) {
  const uint8_t channel = ending_;
  ending_ = programmed_;
  programmed_ = plan_[ahead_];
  if (++ahead_ == kSlots) ahead_ = 0;
  readings_.put(channel == kMultiplexerChannel ? 8 + input_ : channel, raw);
  ++conversions_;
  if (channel == tap::packWide) watchShort(raw);
  if (skip_ > 0) --skip_;
  else if (bursting_) takeBurst(raw);
  else takeScan(channel, raw);
  start_ += kConversionTicks;
  return programmed_;
}

void ScanSampler::watchShort(uint16_t raw) {
  if (raw < fastLimit_) shortCount_ = 0;
  else if (shortCount_ < kShortCounts) ++shortCount_;
}

void ScanSampler::takeScan(uint8_t channel, uint16_t raw) {
  ScanFrame& frame = blocks_[writing_].scan;
  const uint8_t row = scanInBlock_ * kSamplesPerScan;
  const uint8_t slot = slot_;
  if (slot == kSlowSlot) {
    frame.head.samples[row + kFastPerScan] = raw;
    slot_ = 0;
    endScan(frame);
    if (channel == kMultiplexerChannel) input_ = (input_ + 1) & 7;
    return;
  }
  if (slot == 0) openScan(frame);
  const uint8_t place = kOrder[slot];
  if (slot & 2) frame.head.samples[row + place] = held_[place] + raw;
  else held_[place] = raw;
  slot_ = slot + 1;
}

/** The head is written in two portions, so that no single interrupt is long. */
void ScanSampler::openScan(ScanFrame& frame) {
  if (scanInBlock_ == 0) {
    frame.code = kMsgScanBlock;
    frame.head.scan = scan_;
    frame.head.tick = start_;
    frame.head.slowFirst = input_;
    for (uint8_t i = 0; i < kFastPerScan; ++i) frame.head.fast[i] = list_.fast[i];
    frame.head.slow = list_.slow;
  }
  if (scanInBlock_ != kScansPerBlock - 1) return;
  frame.head.state = status.state;
  frame.head.trip = status.trip;
  frame.head.outputs = status.outputs;
  frame.head.steering = status.steering;
  frame.head.throttle = status.throttle;
}

void ScanSampler::endScan(ScanFrame& frame) {
  ++scan_;
  if (++scanInBlock_ < kScansPerBlock) return;
  scanInBlock_ = 0;
  frame.head.edgesB = edgeCount_.edgesB;
  frame.head.edgesC = edgeCount_.edgesC;
  frame.head.badHall = edgeCount_.badHall;
  frame.head.edgesA = edgeCount_.edgesA;
  frame.head.lastEdge = edgeCount_.lastEdge;
  const uint8_t length = kScanHead + 2 * edgesInBlock_;
  edgesInBlock_ = 0;
  hand(length);
}

void ScanSampler::takeBurst(uint16_t raw) {
  BurstFrame& frame = blocks_[writing_].burst;
  if (inBurstBlock_ == 0) openBurstBlock(frame);
  frame.samples[inBurstBlock_] = raw;
  if (actionSet_ && sample_ == actionSample_) {
    actionSet_ = false;
    actionDue_ = true;
  }
  ++sample_;
  const bool last = sample_ == samplesWanted_;
  if (++inBurstBlock_ == kBurstBlockSamples || last) endBurstBlock();
  if (last) backToScan();
}

void ScanSampler::openBurstBlock(BurstFrame& frame) {
  frame.code = kMsgBurstBlock;
  frame.head.first = sample_;
  frame.head.tick = start_;
  frame.head.channel = plan_[0];
  frame.head.outputs = status.outputs;
}

void ScanSampler::endBurstBlock() {
  const uint8_t length = kBurstHead + 2 * inBurstBlock_;
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
  fullLength_ = length;
  writing_ ^= 1;
}

void ScanSampler::addEdge(uint16_t distance) {
  if (bursting_ || !streaming_) return;
  if (edgesInBlock_ == kBlockEdges) {
    ++edgesDropped;
    return;
  }
  blocks_[writing_].scan.edges[edgesInBlock_++] = distance;
}

void ScanSampler::backToScan() {
  bursting_ = false;
  for (uint8_t slot = 0; slot < kSlowSlot; ++slot) plan_[slot] = list_.fast[kOrder[slot]];
  plan_[kSlowSlot] = list_.slow;
  restart();
}

/** The two conversions on their way belong to the old plan and go into no block. */
void ScanSampler::restart() {
  ahead_ = 0;
  skip_ = 2;
  slot_ = 0;
  scanInBlock_ = 0;
  edgesInBlock_ = 0;
  inBurstBlock_ = 0;
}

void ScanSampler::scan(const ScanList& list) {
  const InterruptLock lock;
  list_ = list;
  backToScan();
}

void ScanSampler::stream(bool on) {
  const InterruptLock lock;
  if (bursting_) backToScan();
  if (on && !streaming_) restart();
  streaming_ = on;
}

void ScanSampler::burst(uint8_t channel, uint32_t samples) {
  const InterruptLock lock;
  for (uint8_t& slot : plan_) slot = channel;
  sample_ = 0;
  samplesWanted_ = samples;
  actionSet_ = false;
  bursting_ = true;
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

void ScanSampler::anchor(Tick conversionStart) {
  const InterruptLock lock;
  start_ = conversionStart;
  restart();
}

Tick ScanSampler::conversionStart() const {
  const InterruptLock lock;
  return start_;
}

bool ScanSampler::converts(uint8_t channel) const { return bursting_ ? plan_[0] == channel : list_.holds(channel); }

const uint8_t* ScanSampler::fullBlock(uint8_t& length) const {
  length = fullLength_;
  return length == 0 ? nullptr : reinterpret_cast<const uint8_t*>(&blocks_[writing_ ^ 1]);
}
