// SPDX-License-Identifier: MIT
// Colours of the tokens as a canvas needs them, read once a theme: asking the browser anew at every stroke would cost
// more than the stroke.

const kept = new Map<string, string>();
const listeners = new Set<() => void>();
let watch: MutationObserver | null = null;

function renew(): void {
  kept.clear();
  for (const each of listeners) each();
}
/** Calls when the theme has changed; returns how to stop that. */
export function onTheme(redraw: () => void): () => void {
  if (!watch) {
    watch = new MutationObserver(renew);
    watch.observe(document.documentElement, { attributeFilter: ['data-theme'] });
  }
  listeners.add(redraw);
  return () => listeners.delete(redraw);
}
/** Value of a token, as "--card". */
export function token(name: string): string {
  const known = kept.get(name);
  if (known !== undefined) return known;
  const value = getComputedStyle(document.documentElement).getPropertyValue(name).trim();
  kept.set(name, value);
  return value;
}
