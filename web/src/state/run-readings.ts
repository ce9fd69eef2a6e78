// SPDX-License-Identifier: MIT
// The three readings shown large during a run: the taps the check needs most, in the order it names them.
import type { CheckCard } from '../worker/messages.ts';
import type { Live } from './chain-view.ts';
import { liveFigure } from './figures.ts';
import { tapTitle } from '#core/samples/tap-titles';
import { unitColour } from './quantity-colours.ts';

export interface RunReading {
  readonly tap: string;
  readonly title: string;
  readonly value: string;
  readonly unit: string;
  readonly colour: string;
}
export function runReadings(check: CheckCard, live: Live): RunReading[] {
  return check.taps
    .map((tap) => ({ tap, now: live(tap) }))
    .filter(({ now }) => now !== null)
    .slice(0, 3)
    .map(({ tap, now }) => {
      const [value, unit] =
        now!.value === null ? ['not seen', ''] : liveFigure(now!.value, now!.unit).split('\u00a0');
      return { tap, title: tapTitle(tap), value, unit, colour: unitColour(now!.unit) };
    });
}
