// SPDX-License-Identifier: MIT
// Scans and bursts: order, sums, times, numbers, edges, dropped blocks, what happens when the list changes.
#include <cstring>
#include <vector>

#include "scan_sampler.h"
#include "test.h"

namespace {
/** A converter whose code tells its channel, its input and the running number of the conversion. */
struct Converter {
  EdgeCount edges;
  ScanSampler sampler{edges};
  std::vector<std::vector<uint8_t>> blocks;
  uint8_t pipeline[2] = {0, 0};
  uint32_t count = 0;
  bool take = true;
  Converter() { sampler.anchor(5000); }
  uint16_t codeOf(uint8_t channel) const { return channel == 7 ? 700 + sampler.multiplexerInput() : channel * 100; }
  void run(uint32_t conversions) {
    while (conversions-- > 0) {
      const uint16_t code = codeOf(pipeline[0]);
      pipeline[0] = pipeline[1];
      pipeline[1] = sampler.channelAfterNext();
      sampler.convert(code);
      ++count;
      collect();
    }
  }
  void collect() {
    uint8_t length;
    const uint8_t* block = sampler.fullBlock(length);
    if (block == nullptr || !take) return;
    blocks.emplace_back(block, block + length);
    sampler.release();
  }
  MsgScanBlock scan(size_t index) const {
    MsgScanBlock head;
    std::memcpy(&head, blocks[index].data() + 1, sizeof head);
    return head;
  }
  MsgBurstBlock burst(size_t index) const {
    MsgBurstBlock head;
    std::memcpy(&head, blocks[index].data() + 1, sizeof head);
    return head;
  }
};
}  // namespace

TEST("a block holds eight scans: sums of two in the list's order, then the slow one, all eight inputs") {
  Converter c;
  c.sampler.scan({{1, 2, 3, 4}, 7});
  c.sampler.stream(true);
  c.run(2 + 72);
  EXPECT(c.blocks.size(), 1);
  const MsgScanBlock block = c.scan(0);
  EXPECT(c.blocks[0][0], kMsgScanBlock);
  EXPECT(c.blocks[0].size(), 1 + sizeof(MsgScanBlock));
  for (int scan = 0; scan < 8; ++scan) {
    for (int place = 0; place < 4; ++place) EXPECT(block.samples[scan * 5 + place], 2 * 100 * (place + 1));
    EXPECT(block.samples[scan * 5 + 4], 700 + (block.slowFirst + scan) % 8);
  }
  EXPECT(block.fast[0], 1);
  EXPECT(block.fast[3], 4);
  EXPECT(block.slow, 7);
}

TEST("scan numbers and times run on without a seam") {
  Converter c;
  c.sampler.stream(true);
  c.run(2 + 72 * 3);
  EXPECT(c.blocks.size(), 3);
  EXPECT(c.scan(1).scan - c.scan(0).scan, 8);
  EXPECT(c.scan(1).tick - c.scan(0).tick, 8 * kScanTicks);
  EXPECT(c.scan(2).tick - c.scan(1).tick, 8 * kScanTicks);
  EXPECT(c.scan(0).tick, 5000 + 2 * kConversionTicks);
}

TEST("a new list throws no old conversion into a new block, and its time is right") {
  Converter c;
  c.sampler.stream(true);
  c.run(2 + 72 + 31);
  const uint32_t at = c.count;
  c.sampler.scan({{6, 5, 6, 5}, 7});
  c.run(2 + 72);
  EXPECT(c.blocks.size(), 2);
  const MsgScanBlock block = c.scan(1);
  EXPECT(block.tick, 5000 + (at + 2) * kConversionTicks);
  for (int scan = 0; scan < 8; ++scan) EXPECT(block.samples[scan * 5], 1200);
  EXPECT(block.scan > c.scan(0).scan + 8, true);
}

TEST("two lists in quick succession leave the pipeline right") {
  for (uint32_t between = 0; between < 4; ++between) {
    Converter c;
    c.sampler.stream(true);
    c.run(50);
    c.sampler.scan({{6, 6, 6, 6}, 7});
    c.run(between);
    c.sampler.scan({{1, 2, 3, 4}, 7});
    c.run(2 + 72);
    EXPECT(c.blocks.size(), 1);
    for (int place = 0; place < 4; ++place) EXPECT(c.scan(0).samples[place], 2 * 100 * (place + 1));
  }
}

TEST("with the stream off nothing is handed over, and scans count on") {
  Converter c;
  c.run(2 + 72 * 2);
  EXPECT(c.blocks.size(), 0);
  EXPECT(c.sampler.blocksDropped, 0);
  c.sampler.stream(true);
  c.run(2 + 72);
  EXPECT(c.blocks.size(), 1);
  EXPECT(c.scan(0).scan, 16);
}

TEST("a block that finds no room is counted and shows in the scan numbers") {
  Converter c;
  c.sampler.stream(true);
  c.take = false;
  c.run(2 + 72 * 3);
  EXPECT(c.sampler.blocksDropped, 2);
  c.take = true;
  c.collect();
  c.run(72 * 2);
  EXPECT(c.scan(0).scan, 0);
  EXPECT(c.scan(1).scan, 24);
}

TEST("edges go with their block, 32 at most, the rest is counted") {
  Converter c;
  c.sampler.stream(true);
  c.run(2 + 30);
  for (uint16_t i = 0; i < 40; ++i) {
    const Tick at = 100000 + 1000 * i;
    c.sampler.addEdge(c.edges.capture(at >> 16, static_cast<uint16_t>(at)));
  }
  c.run(42);
  EXPECT(c.blocks[0].size(), 1 + sizeof(MsgScanBlock) + 64);
  EXPECT(c.sampler.edgesDropped, 8);
  EXPECT(c.scan(0).edgesA, 40);
  EXPECT(c.scan(0).lastEdge, 139000);
  uint16_t first;
  uint16_t second;
  std::memcpy(&first, c.blocks[0].data() + 1 + sizeof(MsgScanBlock), 2);
  std::memcpy(&second, c.blocks[0].data() + 3 + sizeof(MsgScanBlock), 2);
  EXPECT(first, 65535);
  EXPECT(second, 1000);
  c.run(72);
  EXPECT(c.blocks[1].size(), 1 + sizeof(MsgScanBlock));
  EXPECT(c.scan(1).lastEdge, 139000);
}

TEST("a burst is one channel without gaps, ends at its count and gives way to the scan") {
  Converter c;
  c.sampler.stream(true);
  c.run(2 + 20);
  const uint32_t at = c.count;
  c.sampler.burst(3, 100);
  c.sampler.actionAt(60);
  c.run(2 + 60);
  EXPECT(c.sampler.actionDue(), false);
  c.run(1);
  EXPECT(c.sampler.actionDue(), true);
  EXPECT(c.sampler.sampleNumber(), 61);
  c.run(39);
  EXPECT(c.sampler.bursting(), false);
  EXPECT(c.blocks.size(), 3);
  EXPECT(c.burst(0).first, 0);
  EXPECT(c.burst(1).first, 48);
  EXPECT(c.burst(2).first, 96);
  EXPECT(c.burst(0).channel, 3);
  EXPECT(c.burst(0).tick, 5000 + (at + 2) * kConversionTicks);
  EXPECT(c.burst(2).tick, c.burst(0).tick + 96 * kConversionTicks);
  EXPECT(c.blocks[2].size(), 1 + sizeof(MsgBurstBlock) + 8);
  uint16_t sample;
  std::memcpy(&sample, c.blocks[1].data() + 1 + sizeof(MsgBurstBlock), 2);
  EXPECT(sample, 300);
  c.run(2 + 72);
  EXPECT(c.blocks[3][0], kMsgScanBlock);
  EXPECT(c.scan(3).tick, 5000 + (at + 2 + 100 + 2) * kConversionTicks);
  for (int scan = 0; scan < 8; ++scan) EXPECT(c.scan(3).samples[scan * 5 + 2], 400);
}

TEST("a burst without end goes on until the stream command") {
  Converter c;
  c.sampler.stream(true);
  c.sampler.burst(2, 0);
  c.run(5000);
  EXPECT(c.sampler.bursting(), true);
  c.sampler.stream(true);
  EXPECT(c.sampler.bursting(), false);
  const size_t blocks = c.blocks.size();
  c.run(2 + 72);
  EXPECT(c.blocks.size(), blocks + 1);
  EXPECT(c.blocks.back()[0], kMsgScanBlock);
}

TEST("readings come from the right channel at any time") {
  Converter c;
  c.sampler.scan({{1, 2, 3, 4}, 7});
  c.sampler.stream(true);
  c.run(200);
  for (uint8_t channel = 1; channel < 5; ++channel) EXPECT(c.sampler.readings.raw(channel), channel * 100);
  for (uint8_t input = 0; input < 8; ++input) EXPECT(c.sampler.readings.raw(8 + input), 700 + input);
}
