// SPDX-License-Identifier: MIT
// The proven first spin with the fail-safe test; then four small throttles above it, five large ones up to full; then
// from full throttle once to neutral and once to full brake.
import type { Bench, ScanPlan } from '../check.ts';
import { mayOpen, provenSpin } from '../proven-spin.ts';
import { keepStretch } from '../stretch.ts';
import type { Evidence, Slowing } from './evidence.ts';

const plan: ScanPlan = {
  fast: ['controllerVoltage', 'packCurrentNarrow', 'railVoltage', 'packCurrentWide'],
  slow: 'multiplexer',
};
/** Above the opening that turned the motor. */
const smallSteps = [0, 0.04, 0.08, 0.12] as const;
const largeThrottles = [0.5, 0.7, 0.85, 0.97, 1] as const;
const windowS = 0.1;
/** Pulse, the controller's own ramp and the brake have come by then (from memory). */
const laterS = 0.3;
const stepsOfAll = 4;

export async function procedure(bench: Bench): Promise<Evidence> {
  await bench.powerUp(plan);
  tell(bench, 1, 'A little throttle, then the pulses stop on purpose.', 20);
  const proven = await provenSpin(bench);
  const nothing = { points: [], coast: null, brake: null };
  if (!mayOpen(proven)) return { ...proven, ...nothing };
  await bench.wait(0.6);
  tell(bench, 2, 'Small throttles: where the motor starts.', 16);
  const points: Evidence['points'] = [];
  for (const step of smallSteps) points.push(await pointAt(bench, (proven.opening ?? 0) + step));
  tell(bench, 3, 'Large throttles up to full: where the speed stops growing.', 11);
  for (const throttle of largeThrottles) points.push(await pointAt(bench, throttle));
  tell(bench, 4, 'Coasting, then full brake.', 4);
  const coast = await slowing(bench, 0);
  const brake = await slowing(bench, -1);
  await bench.throttle(0, 0);
  return { ...proven, points, coast, brake };
}
async function pointAt(bench: Bench, throttle: number): Promise<Evidence['points'][number]> {
  await bench.throttle(throttle, 0.3);
  bench.mark(`${Math.round(100 * throttle)} %`);
  return { throttle, stretch: await keepStretch(bench, 0.5, 0.5) };
}
async function slowing(bench: Bench, to: 0 | -1): Promise<Slowing> {
  await bench.throttle(1, 0.4);
  const before = await keepStretch(bench, 0.6, windowS);
  bench.mark(to === 0 ? 'neutral' : 'full brake');
  await bench.throttle(to, 0);
  const later = await keepStretch(bench, laterS, windowS);
  return { before, later };
}
function tell(bench: Bench, step: number, words: string, leftS: number): void {
  bench.progress({ step, of: stepsOfAll, words, leftS });
}
