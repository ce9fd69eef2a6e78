// SPDX-License-Identifier: MIT
// Contrast of the colour tokens by WCAG 2.2's definition of relative luminance and contrast ratio: text at least
// 4.5 on ground and card, readings at least 7, edges of controls at least 3. Black on white is 21 by definition.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const css = readFileSync(join(import.meta.dirname, 'tokens.css'), 'utf8');
const [, day, night] = css.split(/\{\s*color-scheme/);
const tokens = (block: string): Record<string, string> =>
  Object.fromEntries(
    [...block.matchAll(/--([\w-]+): (#[\da-f]{6})/g)].map(([, name, colour]) => [name, colour]),
  );

function luminance(colour: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const part = parseInt(colour.slice(at, at + 2), 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
function contrast(a: string, b: string): number {
  const [dark, light] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (light + 0.05) / (dark + 0.05);
}
it('counts as the definition does', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 6);
  expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.54, 2);
});
describe.each([
  ['day', tokens(day)],
  ['night', tokens(night)],
])('%s', (_name, theme) => {
  it('has text of at least 4.5 and readings of at least 7', () => {
    for (const ground of [theme.ground, theme.card]) {
      for (const text of ['soft', 'pass', 'fail', 'und', 'nm', 'lantern-ink', 'stop-line'])
        expect(contrast(theme[text], ground), text).toBeGreaterThanOrEqual(4.5);
      expect(contrast(theme.ink, ground)).toBeGreaterThanOrEqual(7);
      expect(contrast(theme.line, ground)).toBeGreaterThanOrEqual(3);
    }
    for (const quantity of ['volt', 'amp', 'temp', 'rpm', 'pulse'])
      expect(contrast(theme[quantity], theme.card), quantity).toBeGreaterThanOrEqual(7);
  });
  it('has words on fills of at least 4.5', () => {
    for (const fill of ['fail', 'lantern', 'stop', 'act'])
      expect(contrast(theme[`on-${fill}`], theme[fill]), fill).toBeGreaterThanOrEqual(4.5);
  });
});
