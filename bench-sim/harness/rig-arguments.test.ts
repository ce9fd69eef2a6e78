// SPDX-License-Identifier: MIT
import { describe, expect, it } from 'vitest';
import { BadUsage } from './bad-usage.ts';
import { parseRigArguments } from './rig-arguments.ts';

describe('the words of npm run rig', () => {
  it('are a place, a seed, faults, a scene and a store', () => {
    const words = '--pty /tmp/x --seed 7 --fault soft-rail=0.5 --fault worn-bearings=1 --scene s --store f';
    expect(parseRigArguments(words.split(' '))).toEqual({
      pty: '/tmp/x',
      seed: 7,
      faults: { 'soft-rail': 0.5, 'worn-bearings': 1 },
      scene: 's',
      store: 'f',
    });
    expect(parseRigArguments(['--pty', 'x'])).toMatchObject({
      seed: 1,
      faults: {},
      scene: null,
      store: null,
    });
  });
  it.each([
    [[], /Give --pty PATH/],
    [['--pty', '/tmp/x', '--seed', 'many'], /whole number/],
    [['--pty', '/tmp/x', '--fault', 'gremlins=1'], /no fault "gremlins"/],
    [['--pty', '/tmp/x', '--fault', 'soft-rail=3'], /from 0 to 1/],
    [['--port', '/tmp/x'], /--port/],
  ])('%j are refused with the reason', (words, reason) => {
    expect(() => parseRigArguments(words)).toThrow(BadUsage);
    expect(() => parseRigArguments(words)).toThrow(reason);
  });
});
