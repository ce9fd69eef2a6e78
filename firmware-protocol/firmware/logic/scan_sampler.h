// SPDX-License-Identifier: MIT
// Turns the stream of conversions into scan blocks and burst blocks, two buffers, and tells the converter which
// input comes after the one in progress. Knows positions and channels, not volts.
#pragma once
#include <stdint.h>

#include "edge_count.h"
#include "generated_messages.h"
#include "readings.h"
#include "ticks.h"

constexpr uint8_t kBlockEdges = 32;
/** Conversions in a row beyond the fast limit that make a short circuit. */
constexpr uint8_t kShortCounts = 3;

struct ScanFrame {
  uint8_t code;
  MsgScanBlock head;
} __attribute__((packed));

struct BurstFrame {
  uint8_t code;
  MsgBurstBlock head;
} __attribute__((packed));

/** What a block repeats of the rig's state; laid out as in MsgScanBlock. */
struct BlockStatus {
  uint8_t state;
  uint8_t trip;
  uint16_t outputs;
  uint16_t steering;
  uint16_t throttle;
};

struct ScanList {
  uint8_t fast[kFastPerScan];
  uint8_t slow;
  bool holds(uint8_t channel) const;
};

class ScanSampler {
 public:
  explicit ScanSampler(EdgeCount& edges) : edgeCount_(edges) { backToScan(); }

  // From interrupts.
  /** A conversion ended and the next one runs: the channel to program for the one after. Asked before convert(). */
  uint8_t channelAfterNext() const { return plan_[skip_ > 0 ? 2 - skip_ : slot_ + 2]; }
  /** Puts a conversion away; edges may come in between, another conversion may not. */
  void convert(uint16_t raw);
  IN_INTERRUPT void addEdge(uint16_t distance) {
    if (!takesEdges_) return;
    const uint8_t place = edgePlace_;
    if (place == kEdgeWord + kBlockEdges) {
      ++edgesDropped;
      return;
    }
    edgePlace_ = place + 1;
    writing_->words[place] = distance;
  }
  /** Multiplexer input wanted now; changes at the end of a slow conversion. */
  uint8_t multiplexerInput() const { return input_; }
  bool actionDue() const { return actionDue_; }
  bool actionWaits() const { return actionDue_ || (bursting_ && actionSet_); }
  void actionTaken() { actionDue_ = false; }
  uint8_t shortCount() const { return shortCount_; }

  // From the main loop and the supervisor, under a lock where they change things.
  void anchor(Tick conversionStart);
  Tick conversionStart() const;
  void stream(bool on);
  void scan(const ScanList& list);
  void burst(uint8_t channel, uint32_t samples);
  void actionAt(uint16_t sample);
  void cancelAction();
  bool streaming() const { return streaming_; }
  bool bursting() const { return bursting_; }
  const ScanList& list() const { return list_; }
  /** Whether this channel is being converted as things stand. */
  bool converts(uint8_t channel) const;
  uint32_t sampleNumber() const { return sample_; }
  void fastLimit(uint16_t raw) { fastLimit_ = raw; }
  uint8_t conversions() const { return conversions_; }

  /** A full block, or null. release() it when it is sent. */
  bool hasFullBlock() const { return fullLength_ != 0; }
  uint8_t* fullBlock(uint8_t& length);
  void release() { fullLength_ = 0; }

  Readings readings;
  BlockStatus status{};
  uint16_t blocksDropped = 0;
  uint16_t edgesDropped = 0;

 private:
  static constexpr uint8_t kSlots = 9;
  static constexpr uint8_t kSampleWord = (1 + sizeof(MsgScanBlock)) / 2 - kScansPerBlock * kSamplesPerScan;
  static constexpr uint8_t kEdgeWord = (1 + sizeof(MsgScanBlock)) / 2;
  static constexpr uint8_t kBurstWord = (1 + sizeof(MsgBurstBlock)) / 2;
  static_assert(sizeof(ScanFrame) % 2 == 0 && sizeof(BurstFrame) % 2 == 0, "samples and edges stand at even places");

  /** Payload of a block; the last word is room for the frame's CRC. */
  union Block {
    ScanFrame scan;
    BurstFrame burst;
    uint16_t words[kEdgeWord + kBlockEdges + 1];
  };
  void restart();
  void keepPipeline();
  void backToScan();
  void skipOne(uint16_t raw);
  void takeScan(uint8_t slot, uint16_t raw);
  void endScan(uint16_t raw);
  void writeHead(uint8_t slot);
  void writeStatus(uint8_t slot);
  void endBlock();
  void takeBurst(uint16_t raw);
  void openBurstBlock();
  void endBurstBlock();
  void hand(uint8_t length);
  void watchShort(uint16_t raw);

  EdgeCount& edgeCount_;
  Block blocks_[2];
  volatile uint8_t fullLength_ = 0;
  Block* volatile full_ = blocks_;
  Block* writing_ = blocks_;
  uint16_t* row_ = blocks_[0].words + kSampleWord;
  /** Channel of each slot, and the first two again. */
  uint8_t plan_[kSlots + 2] = {};
  /** After a new plan: channels of the conversion in progress and of the one already programmed. */
  uint8_t old_[2] = {};
  uint8_t skip_ = 2;
  uint8_t slot_ = 0;
  uint8_t scanInBlock_ = 0;
  /** Word of the block for the next edge. */
  uint8_t edgePlace_ = kEdgeWord;
  uint8_t input_ = 0;
  uint16_t held_[kFastPerScan] = {};
  /** Start of the scan's, or the burst block's, first conversion. */
  Tick start_ = 0;
  uint32_t scan_ = 0;
  uint32_t sample_ = 0;
  uint32_t samplesWanted_ = 0;
  uint8_t inBurstBlock_ = 0;
  uint16_t actionSample_ = 0;
  bool actionSet_ = false;
  volatile bool actionDue_ = false;
  volatile bool streaming_ = false;
  volatile bool bursting_ = false;
  /** Streaming and no burst. */
  volatile bool takesEdges_ = false;
  uint8_t shortCount_ = 0;
  uint16_t fastLimit_ = 1023;
  volatile uint8_t conversions_ = 0;
  ScanList list_{{0, 1, 2, 3}, kMultiplexerChannel};
};
