// SPDX-License-Identifier: MIT
// Points of volts across and amperes through the limited feed while it fills the capacitor, one a scan, and how far
// the two filters' unlike delays may tilt their line. It commands nothing.
import { NotMeasurable, tapOf, type Stretch } from '#core/measurements/tap-reading';
import { rectangular } from '#core/measurements/tap-errors';
import type { LinePoint } from '#core/measurements/york-fit';
import type { RigDescription } from '#core/samples/rig-description';
import type { SampleStore } from '#core/samples/sample-store';
import { stepOf, tapScaling } from '#core/samples/tap-scaling';

export interface Fill {
  readonly points: readonly LinePoint[];
  /** Relative standard uncertainty of the slope by unlike filters, and by the converter's non-linearity. */
  readonly tiltU: number;
}
/** Below this the diode in series bends the line; it is left out. */
const leastA = 0.12;
/** After the peak of the current the filters of volts and amperes have caught up with the step. */
const afterPeakS = 0.002;
/** Both filters declare one corner; parts make them differ by at most this share (from memory). */
const cornerSpread = 0.2;
const current = 'packCurrentNarrow';

/** `rig` scaled the samples, `counted` is how it counts by now. Throws NotMeasurable. */
export function fillOf(
  samples: SampleStore,
  rig: RigDescription,
  counted: RigDescription,
  { fromS, toS }: Stretch,
): Fill {
  const series = (id: string) => samples.series(id, fromS, toS);
  const [pack, controller, amps] = [series('packVoltage'), series('controllerVoltage'), series(current)];
  const zeroA = meanOf(samples.series(current, fromS - 0.15, fromS - 0.01).value);
  const [gainV, gainA] = ['controllerVoltage', current].map((id) => gainRatio(rig, counted, id));
  const [uA, uV] = [current, 'packVoltage'].map((id) => noiseOf(counted, id));
  const all = Array.from(pack.timeS, (atS, i) => ({
    atS,
    x: (at(amps.timeS, amps.value, atS) - zeroA) * gainA,
    y: (pack.value[i] - at(controller.timeS, controller.value, atS)) * gainV,
    ux: uA,
    uy: Math.SQRT2 * uV,
  })).filter(({ x, y }) => Number.isFinite(x) && Number.isFinite(y));
  const points = fallOf(all);
  return { points, tiltU: Math.hypot(lagOf(counted, points), bendOf(counted, points)) };
}
interface TimedPoint extends LinePoint {
  readonly atS: number;
}
function fallOf(all: readonly TimedPoint[]): TimedPoint[] {
  const peak = all.reduce((most, point) => (point.x > most.x ? point : most), all[0]);
  const points = all.filter(({ atS, x }) => peak && atS > peak.atS + afterPeakS && x > leastA);
  if (points.length >= 5) return points;
  throw new NotMeasurable(
    `Only ${points.length} values came while the limited feed filled the capacitor. Plug the speed controller, or enter the resistance from a meter.`,
  );
}
/** Volts and amperes fall alike; a delay between them counts as a part of the time in which they fall by e. */
function lagOf({ descriptor }: RigDescription, points: readonly TimedPoint[]): number {
  const [first, last] = [points[0], points[points.length - 1]];
  const fallS = (last.atS - first.atS) / Math.log(first.x / last.x);
  const { cornerHz } = tapOf({ descriptor, store: null }, current);
  return rectangular(cornerSpread / (2 * Math.PI * cornerHz) / fallS);
}
/** All of the declared non-linearity at either end of the current's span: 50 codes are too few for it to average out. */
function bendOf(rig: RigDescription, points: readonly TimedPoint[]): number {
  const tap = tapOf(rig, current);
  const spanA = points[0].x - points[points.length - 1].x;
  const stepA = stepOf(tap, rig.descriptor.nominalSupplyV);
  return (Math.SQRT2 * rectangular(tap.error.inlLsb) * stepA) / spanA;
}
const meanOf = (values: Float64Array): number => values.reduce((sum, v) => sum + v, 0) / values.length;
const gainRatio = (rig: RigDescription, counted: RigDescription, id: string): number =>
  (tapScaling(counted, id)?.gain ?? 1) / (tapScaling(rig, id)?.gain ?? 1);

/** In a straight line between neighbours; NaN outside. */
function at(timeS: Float64Array, value: Float64Array, atS: number): number {
  const after = timeS.findIndex((t) => t >= atS);
  if (after < 0) return Number.NaN;
  if (timeS[after] === atS) return value[after];
  if (after === 0) return Number.NaN;
  const part = (atS - timeS[after - 1]) / (timeS[after] - timeS[after - 1]);
  return value[after - 1] + part * (value[after] - value[after - 1]);
}
/** Noise of a pair of conversions. */
function noiseOf(rig: RigDescription, id: string): number {
  const tap = tapOf(rig, id);
  return (tap.error.noiseLsb / Math.SQRT2) * stepOf(tap, rig.descriptor.nominalSupplyV);
}
