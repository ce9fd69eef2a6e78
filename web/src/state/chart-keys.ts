// SPDX-License-Identifier: MIT
// What a key does to a chart that has the focus, or to an edge of its brush. A table, so that the help tells no more
// than is true. Escape is stop first while a run goes on; that is the run screen's.

export type ChartAct =
  | { readonly kind: 'pan'; readonly windows: number }
  | { readonly kind: 'zoom'; readonly factor: number }
  | { readonly kind: 'brushPan'; readonly windows: number }
  | { readonly kind: 'brushWiden'; readonly windows: number }
  | { readonly kind: 'start' | 'end' | 'all' | 'measure' | 'hold' | 'clear' };

/** Shares of what is shown: a step of the picture, a step of the brush. */
const step = 0.1;
const fine = 0.005;
export const closer = 1 / Math.SQRT2;

const plain: Readonly<Record<string, ChartAct>> = {
  ArrowLeft: { kind: 'pan', windows: -step },
  ArrowRight: { kind: 'pan', windows: step },
  PageUp: { kind: 'pan', windows: -1 },
  PageDown: { kind: 'pan', windows: 1 },
  Home: { kind: 'start' },
  End: { kind: 'end' },
  '+': { kind: 'zoom', factor: closer },
  '=': { kind: 'zoom', factor: closer },
  '-': { kind: 'zoom', factor: 1 / closer },
  _: { kind: 'zoom', factor: 1 / closer },
  '0': { kind: 'all' },
  b: { kind: 'measure' },
  h: { kind: 'hold' },
};
const brushed: Readonly<Record<string, ChartAct>> = {
  ArrowLeft: { kind: 'brushPan', windows: -fine },
  ArrowRight: { kind: 'brushPan', windows: fine },
  Escape: { kind: 'clear' },
};
const widened: Readonly<Record<string, ChartAct>> = {
  ArrowLeft: { kind: 'brushWiden', windows: -fine },
  ArrowRight: { kind: 'brushWiden', windows: fine },
};
/** Null: the key is not the chart's. */
export function chartAct(key: string, shift: boolean, brushing: boolean): ChartAct | null {
  const name = key.length === 1 ? key.toLowerCase() : key;
  const own = brushing ? ((shift ? widened[name] : undefined) ?? brushed[name]) : undefined;
  return own ?? plain[name] ?? null;
}
/** Shares of the window by which a key moves an edge; 'start' and 'end' of what is shown; null: not the edge's. */
export function edgeStep(key: string, shift: boolean): number | 'start' | 'end' | null {
  const size = shift ? 10 * fine : fine;
  if (key === 'ArrowLeft' || key === 'ArrowDown') return -size;
  if (key === 'ArrowRight' || key === 'ArrowUp') return size;
  if (key === 'PageDown') return -20 * fine;
  if (key === 'PageUp') return 20 * fine;
  if (key === 'Home') return 'start';
  return key === 'End' ? 'end' : null;
}
export const keysWords =
  'Arrow keys move the picture, plus and minus look closer and wider, 0 shows all, Page Up, Page Down, Home and End go ' +
  'through the run. B brushes a stretch to measure: its edges move with the arrow keys, with Shift in larger steps; on ' +
  'the chart the arrow keys then move the stretch, with Shift they widen and narrow it, Escape clears it.';
export const heldWords = 'H holds the picture and lets it go on. Escape is stop first.';
export const handsWords =
  'A drag moves the picture. Two fingers look closer, so does the wheel once the chart was clicked. A double tap shows ' +
  'all. While Measure is on, or with Shift, a drag brushes and a tap moves the nearer edge.';
