// SPDX-License-Identifier: MIT
// Edges of servo signals to pulses: what is no pulse, a train that begins in the middle, missed edges.
import { describe, expect, it } from 'vitest';
import { framesOf, pulsesIn } from './pulse-train.ts';

/** Rise and fall of `count` pulses. */
const train = (count: number, widthS: number, frameS: number, fromS = 0) =>
  Array.from({ length: count }, (_, k) => [fromS + k * frameS, fromS + k * frameS + widthS]).flat();

describe('pulses of a servo signal', () => {
  it.each([
    ['no edge', []],
    ['one edge', [0.1]],
    ['a glitch of 0.3 ms', [0.1, 0.1003]],
    ['a level of 5 ms', [0.1, 0.105]],
  ])('are none in %s', (_, edges) => expect(pulsesIn(edges)).toEqual([]));
  it('are found with their widths, frame by frame', () => {
    const pulses = pulsesIn(train(4, 1.5e-3, 0.02));
    expect(pulses.map(({ widthS }) => widthS)).toEqual(
      Array.from({ length: 4 }, () => expect.closeTo(1.5e-3, 12)),
    );
    expect(framesOf(pulses)).toEqual([0.02, 0.02, 0.02].map((s) => expect.closeTo(s, 12)));
  });
  it('are found in a train that begins with a fall, at the shortest usual frame', () => {
    const pulses = pulsesIn(train(5, 2.2e-3, 0.011).slice(1));
    expect(pulses).toHaveLength(4);
    expect(pulses[0].widthS).toBeCloseTo(2.2e-3, 12);
  });
  it('go on after a missed edge, and the gap is no frame', () => {
    const edges = train(6, 1e-3, 0.02);
    const pulses = pulsesIn([...edges.slice(0, 5), ...edges.slice(6)]);
    expect(pulses).toHaveLength(5);
    expect(framesOf(pulses)).toHaveLength(3);
  });
});
