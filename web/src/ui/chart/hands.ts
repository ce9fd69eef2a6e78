// SPDX-License-Identifier: MIT
// What fingers, mouse, wheel and keys do on the plots, handed to the view as shares of the drawn width. The wheel
// looks closer once the charts have the focus, while a run goes on, or with Ctrl; else it scrolls the page.
import type { Attachment } from 'svelte/attachments';
import type { Edge } from '../../state/chart-brush.ts';
import { ChartHands, wheelFactor } from '../../state/chart-hands.ts';
import { chartAct, edgeStep } from '../../state/chart-keys.ts';
import type { ChartView } from '../../state/chart-view.svelte.ts';
import { secondAt } from '../../state/chart-window.ts';
import { besides } from './plot.svelte.ts';

export interface HandsSpec {
  readonly view: ChartView;
  readonly running: boolean;
  /** A brush begun by a key is there: its first edge takes the focus. */
  readonly onbrush: () => void;
}
const edgeOf = (event: Event) => (event.target as Element).closest<HTMLElement>('[data-edge]');

/** Share of the drawn width; beyond 0 and 1 outside of it. */
function shareAt(element: HTMLElement, clientX: number): number {
  const { left, width } = element.getBoundingClientRect();
  return (clientX - left - besides.left) / Math.max(width - besides.left - besides.right, 1);
}
function pointers(element: HTMLElement, view: ChartView): Record<string, (event: PointerEvent) => void> {
  const fingers = new ChartHands(view);
  let grip: { id: number; edge: Edge; offset: number } | null = null;
  const take = (event: PointerEvent, on: HTMLElement) => {
    const edge = on.dataset.edge as Edge;
    const [at] = [view.brush?.[`${edge}S`] ?? 0];
    grip = { id: event.pointerId, edge, offset: at - secondAt(view.range, shareAt(element, event.clientX)) };
    on.focus();
  };
  return {
    pointerdown(event) {
      if (event.button !== 0) return;
      element.setPointerCapture(event.pointerId);
      const on = edgeOf(event);
      if (on) take(event, on);
      else fingers.down(event.pointerId, shareAt(element, event.clientX), event.shiftKey);
    },
    pointermove(event) {
      const share = shareAt(element, event.clientX);
      if (grip?.id === event.pointerId) view.moveEdge(grip.edge, secondAt(view.range, share) + grip.offset);
      else fingers.move(event.pointerId, share);
    },
    pointerup(event) {
      if (grip?.id === event.pointerId) grip = null;
      else fingers.up(event.pointerId);
    },
    pointercancel() {
      grip = null;
      fingers.cancel();
    },
  };
}
function wheel(element: HTMLElement, { view, running }: HandsSpec, event: WheelEvent): void {
  if (!running && !event.ctrlKey && !element.matches(':focus-within')) return;
  event.preventDefault();
  const sideways = event.shiftKey ? event.deltaY : event.deltaX;
  if (Math.abs(sideways) > Math.abs(event.shiftKey ? 0 : event.deltaY))
    view.pan(sideways / element.clientWidth);
  else view.zoom(wheelFactor(event.deltaY, event.deltaMode), shareAt(element, event.clientX));
}
/** True when the key was the chart's. */
function key({ view, onbrush }: HandsSpec, event: KeyboardEvent): boolean {
  const edge = edgeOf(event)?.dataset.edge as Edge | undefined;
  const step = edge && edgeStep(event.key, event.shiftKey);
  if (edge && step !== null && step !== undefined) view.stepEdge(edge, step);
  else {
    const act = chartAct(event.key, event.shiftKey, view.brush !== null);
    if (!act) return false;
    view.act(act);
    if (act.kind === 'measure' && view.brush) onbrush();
  }
  return true;
}
export function chartHands(spec: HandsSpec): Attachment<HTMLElement> {
  return (element) => {
    element.tabIndex = 0;
    const ends = new AbortController();
    const how = { signal: ends.signal };
    for (const [name, act] of Object.entries(pointers(element, spec.view)))
      element.addEventListener(name, act as (event: Event) => void, how);
    element.addEventListener('dblclick', () => spec.view.showAll(), how);
    element.addEventListener('wheel', (event) => wheel(element, spec, event), { ...how, passive: false });
    element.addEventListener(
      'keydown',
      (event) => {
        const foreign = event.ctrlKey || event.altKey || event.metaKey;
        if (!foreign && key(spec, event)) event.preventDefault();
      },
      how,
    );
    return () => ends.abort();
  };
}
