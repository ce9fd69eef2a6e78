// SPDX-License-Identifier: MIT
// Neutral, the proven first spin, then twice: up to full throttle, settled, neutral at once, and left alone until the
// rotor stands.
import type { Bench, ScanPlan } from '../check.ts';
import { mayOpen, provenSpin } from '../proven-spin.ts';
import { keepStretch } from '../stretch.ts';
import type { Evidence } from './evidence.ts';

const plan: ScanPlan = {
  fast: ['controllerVoltage', 'packCurrentNarrow', 'railVoltage', 'packCurrentWide'],
  slow: 'multiplexer',
};
const spinsWanted = 2;
/** A rotor that still turns after this hardly has any friction. */
const longestCoastS = 8;
/** Longer than between two edges at the end of the fit. */
const standsAfterS = 0.15;

export async function procedure(bench: Bench): Promise<Evidence> {
  await bench.powerUp(plan);
  tell(bench, 1, 'What the controller draws at neutral.');
  const idle = await keepStretch(bench, 0.1, 1);
  tell(bench, 2, 'A little throttle, then the pulses stop on purpose.');
  const proven = await provenSpin(bench);
  const spins: Evidence['spins'] = [];
  while (mayOpen(proven) && spins.length < spinsWanted) spins.push(await spin(bench, 3 + spins.length));
  return { ...proven, idle, spins };
}
async function spin(bench: Bench, step: number): Promise<Evidence['spins'][number]> {
  tell(bench, step, 'Up to full throttle, then neutral: the rotor runs down by itself.');
  await bench.wait(0.4);
  await bench.throttle(0.5, 0.6);
  await bench.throttle(1, 0.5);
  const full = await keepStretch(bench, 1, 1);
  bench.mark('neutral');
  await bench.throttle(0, 0);
  const fromS = bench.now();
  const stands = () => bench.samples.edges(bench.now() - standsAfterS, bench.now()).length === 0;
  await bench.waitFor(() => bench.now() > fromS + standsAfterS && stands(), longestCoastS);
  return { full, coast: { fromS, toS: bench.now() } };
}
function tell(bench: Bench, step: number, words: string): void {
  bench.progress({ step, of: 2 + spinsWanted, words, leftS: (3 + spinsWanted - step) * 5 });
}
