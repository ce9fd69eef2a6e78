// SPDX-License-Identifier: MIT
// A person at the terminal who types rubbish first; hands that can't read a figure say so.
import { expect, it } from 'vitest';
import { BadUsage } from './bad-usage.ts';
import { figureFrom, handsFor } from './hands.ts';

const wanted = { unit: 'degrees', min: -30, max: 30 };

it('asks again with the reason until the figure is inside its bounds', async () => {
  const typed = ['', 'five', '31', '-4,5'];
  const asked: string[] = [];
  const ask = (text: string) => {
    asked.push(text);
    return Promise.resolve(typed[asked.length - 1]);
  };
  expect(await figureFrom(ask, 'Read the protractor.', wanted)).toBe(-4.5);
  expect(asked[0]).toMatch(/Read the protractor\.\nFigure in degrees:/);
  expect(asked[1]).toMatch(/Nothing was typed/);
  expect(asked[2]).toMatch(/"five" is not a number/);
  expect(asked[3]).toMatch(/31 degrees is outside what can be. Type a number from -30 to 30 degrees/);
});
it('can do what was done beforehand, and read no figure', async () => {
  const hands = handsFor({ scene: null, handsReady: true });
  await expect(hands('Take the horn off.')).resolves.toBeUndefined();
  await expect(hands('Read the protractor.', wanted)).rejects.toThrow(BadUsage);
  await expect(hands('Read the protractor.', wanted)).rejects.toThrow(/--hands-ready can't give one/);
});
