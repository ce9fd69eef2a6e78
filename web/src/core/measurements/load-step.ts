// SPDX-License-Identifier: MIT
// Resistance by four wires from one step of the pack load: what the probe's voltage gains over what the current gains.
// Offsets, thermal voltages and slow drift are in both and fall out (lock-in on the step). It knows no joint.
import type { RigDescription } from '../samples/rig-description.ts';
import { combined, linear, widened, type Quantity } from './quantity.ts';
import { rectangular, typeB } from './tap-errors.ts';
import { NotMeasurable, reading, steadyOf, tapOf, type Bench, type Stretch } from './tap-reading.ts';

export interface LoadStep {
  /** 'jointProbe' or, with the jumper at its other setting, 'jointProbeWide'. */
  readonly tap: string;
  readonly off: Stretch;
  readonly on: Stretch;
  readonly after: Stretch;
}
const currentTap = 'packCurrentWide';
/** The pack load draws 8 to 18 A through a part; less, and nothing is clipped on. */
const leastA = 4;
/** Two halves of a step that differ by more: a tip or a clip has slipped. */
const slips = { share: 0.05, ohm: 40e-6 };

/** Ohms between the tips. Throws NotMeasurable where jumper, current, tips or range are not as they must be. */
export function stepOhm(bench: Bench, step: LoadStep): Quantity {
  requireJumper(bench, step);
  const amps = gain(bench, currentTap, step);
  if (amps.value < leastA)
    throw new NotMeasurable(
      `Only ${amps.value.toFixed(1)} A flowed through the pack load. Check the pack lead and the two load clips, then run again.`,
    );
  requireFirm(bench, step);
  const volts = gain(bench, step.tap, step);
  return combined([volts, amps], (v, i) => Math.abs(v) / i);
}
/** Mean while the load is on, less the mean of before and after. */
function gain(bench: Bench, tap: string, { off, on, after }: LoadStep): Quantity {
  const value = linear([
    [1, reading(bench, tap, on)],
    [-0.5, reading(bench, tap, off)],
    [-0.5, reading(bench, tap, after)],
  ]);
  const { drift } = tapOf(bench.rig, tap).error;
  const source = typeB(
    `wander ${tap} ${on.fromS.toFixed(3)}`,
    `zero of ${tap} within the step`,
    'rig description',
  );
  // The declared drift is that of a whole run; within two seconds a tenth of it is plenty (common practice, no source).
  return widened(value, source, rectangular(drift / 10));
}
/** At rest the probe stands at its zero; at another setting of the jumper it stands far from it. */
function requireJumper(bench: Bench, { tap, off }: LoadStep): void {
  const { error, jumper } = tapOf(bench.rig, tap);
  const { samples } = bench;
  const { value } = samples.series(tap, off.fromS, off.toS);
  const rest = value.reduce((sum, v) => sum + v, 0) / Math.max(1, value.length);
  if (value.length > 0 && Math.abs(rest) < 4 * error.offset) return;
  throw new NotMeasurable(
    `The joint probe does not rest at its zero: its jumper is not at ${jumper ?? 'the setting asked for'}, or the tips touch nothing. Put it right, then run again.`,
  );
}
function requireFirm(bench: Bench, { tap, off, on }: LoadStep): void {
  const middleS = (on.fromS + on.toS) / 2;
  const base = [tap, currentTap].map((id) => steadyOf(bench, id, off).mean);
  const [first, second] = [
    { fromS: on.fromS, toS: middleS },
    { fromS: middleS, toS: on.toS },
  ].map((half) => {
    const [v, i] = [tap, currentTap].map((id, k) => steadyOf(bench, id, half).mean - base[k]);
    return v / i;
  });
  const apart = Math.abs(first - second);
  if (apart < slips.ohm || apart < slips.share * Math.abs(first)) return;
  throw new NotMeasurable(
    'The resistance changed within the step: a probe tip or a clip has slipped. Set them firmly, then run again.',
  );
}
/** Where a probe tap ends upwards, V. */
export const probeEndV = (rig: RigDescription, tap: string): number =>
  rig.descriptor.taps.find(({ id }) => id === tap)?.high ?? 0;
