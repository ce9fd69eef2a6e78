// SPDX-License-Identifier: MIT
// The small pictures of the sheet, black on white: verdict glyphs and a value against its limit, 120 x 20. Text out.
import type { VerdictWord } from '#core/verdicts/limit';
import { verdictPicture } from '../verdict-picture.ts';
import type { SheetRow } from './sheet-content.ts';

const shapes: Readonly<Record<VerdictWord, string>> = {
  pass: '<circle cx="8.5" cy="12" r="7.5"/><rect x="18.5" y="2" width="3.6" height="20" rx="1.2"/>',
  fail: '<path d="M15 4.2 22.8 12 15 19.8 7.2 12Z"/><path d="M3 22V15.2M3.4 8.6 6.6 2" stroke="#000" stroke-width="3.6" stroke-linecap="round"/>',
  undecided:
    '<path d="M8 4.6A7.5 7.5 0 0 0 8 19.4Z M16 4.6A7.5 7.5 0 0 1 16 19.4Z"/><rect x="10.3" y="1" width="3.4" height="22" rx="1.2"/>',
  'not measured':
    '<circle cx="12" cy="12" r="8.4" fill="none" stroke="#000" stroke-width="2.8" stroke-dasharray="4.4 4.4" stroke-dashoffset="2"/>',
};
export const sheetGlyph = (verdict: VerdictWord): string =>
  `<svg width="14" height="14" viewBox="0 0 24 24" aria-hidden="true">${shapes[verdict]}</svg>`;

/** The pattern that the bad sides are hatched with; once a sheet. */
export const hatch =
  '<svg width="0" height="0" style="position:absolute" aria-hidden="true"><defs><pattern id="bad" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)"><path d="M0 0V5" stroke="#000" stroke-width="1.1"/></pattern></defs></svg>';
/** A value off the scale: which way it lies. */
const arrows = {
  left: '<path d="M5 5 1 10 5 15" fill="none" stroke="#000" stroke-width="2"/>',
  right: '<path d="M115 5 119 10 115 15" fill="none" stroke="#000" stroke-width="2"/>',
  none: '',
} as const;
/** From the picture's 760 wide scale to 120. */
const scale = (x: number): string => ((x / 760) * 120).toFixed(1);

export function miniPicture({ figures }: Pick<SheetRow, 'figures'>): string {
  if (!figures) return '';
  const { zones, posts, bead, from, to, off, words } = verdictPicture(
    figures.value,
    figures.interval,
    figures.limit,
  );
  const bad = zones.filter(({ kind }) => kind === 'bad');
  const hatched = bad.map(
    ({ x, width }) => `<rect x="${scale(x)}" y="5" width="${scale(width)}" height="10" fill="url(#bad)"/>`,
  );
  const gates = posts.map(
    ({ x }) => `<rect x="${(Number(scale(x)) - 1.2).toFixed(1)}" y="1" width="2.4" height="18"/>`,
  );
  const bars = off
    ? ''
    : `<path d="M${scale(from)} 10H${scale(to)}" stroke="#000" stroke-width="2"/><path d="M${scale(from)} 6v8M${scale(to)} 6v8" stroke="#000" stroke-width="1.6"/>`;
  return `<svg viewBox="0 0 120 20" width="96" height="16" role="img" aria-label="${words}"><path d="M3 10H117" stroke="#000" stroke-width=".8"/>${hatched.join('')}${gates.join('')}${bars}<circle cx="${scale(bead)}" cy="10" r="3.6"/>${arrows[off ?? 'none']}</svg>`;
}
