// SPDX-License-Identifier: MIT
// What the logbook takes up in the browser, in words.
import type { Room } from './logbook.svelte.ts';

/** "0.4 MB", "84 MB"; 1 MB is a million bytes. */
export const sizeWords = (bytes: number): string =>
  `${(bytes / 1e6).toFixed(bytes < 9.95e6 ? 1 : 0)}\u00a0MB`;

export function roomWords({ usedBytes, kept }: Room): string {
  const size = `This page uses ${sizeWords(usedBytes)} in this browser.`;
  return kept
    ? `${size} The browser keeps it until you clear it yourself.`
    : `${size} The browser may clear it when the computer runs short of space.`;
}
