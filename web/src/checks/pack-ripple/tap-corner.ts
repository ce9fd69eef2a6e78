// SPDX-License-Identifier: MIT
// The corner of the wide tap's filter on this very rig, from how the pack current falls when the pack load is switched
// off behind an open feed: one pole answers a step with one exponential. Pure.
import { mean, sampleStandardDeviation } from 'simple-statistics';
import { curveFit } from '#core/measurements/curve-fit';
import { rectangular, typeB, type Line } from '#core/measurements/tap-errors';
import { tapOf } from '#core/measurements/tap-reading';
import { wholeRecord, type KeptBurst } from '../burst-wave.ts';
import type { AnalysisInput } from '../check.ts';
import type { Evidence } from './evidence.ts';

type Input = AnalysisInput<Evidence>;
/** Tolerance of a corner that was not measured; from memory. */
const declaredShare = 0.1;
/** What leads, contacts and the pack's own return may bend of the exponential (from memory). */
const bentShare = 0.02;
/** The fit begins where this share of the step is left, past the switch's own few microseconds. */
const beginShare = 0.75;
/** Eight time constants of 0.47 ms. */
const fitSamples = 36;
const edgeSamples = 100;
/** Less than this is no step of a pack load, A. */
const leastStepA = 2;
const declared = typeB('corner', "corner of the tap's filter", 'rule of thumb, from memory');
const seen = typeB('corner', "corner of the tap's filter, measured in this run", 'computed from the fits');

export interface TapCorner {
  readonly hertz: number;
  /** Its line in the budget of a value that goes as the corner does. */
  line(value: number): Line;
}
/** As declared where the run holds no step. */
export function cornerOf(input: Input, tapId: string): TapCorner {
  const found = (input.evidence.loadOff ?? []).flatMap((burst) => fallHertz(input, burst) ?? []);
  if (found.length === 0)
    return {
      hertz: tapOf(input.rig, tapId).cornerHz,
      line: (value) => [declared, rectangular(declaredShare * value)],
    };
  const hertz = mean(found);
  const scatter = found.length > 1 ? sampleStandardDeviation(found) / hertz : 0;
  return { hertz, line: (value) => [seen, Math.hypot(rectangular(bentShare), scatter) * value] };
}
/** Null where no step is found, or none that an exponential follows. */
function fallHertz(input: Input, burst: KeptBurst): number | null {
  const wave = wholeRecord(input, burst);
  const [on, off] = [wave.slice(0, edgeSamples), wave.slice(-edgeSamples)].map((edge) =>
    mean(Array.from(edge)),
  );
  const begin = wave.findIndex((amps) => amps - off < beginShare * (on - off));
  if (on - off < leastStepA || begin < edgeSamples) return null;
  const points = Array.from(wave.slice(begin, begin + fitSamples), (y, k) => ({
    x: k * burst.intervalS,
    y,
    u: 1,
  }));
  const fall =
    ([rest, height, tauS]: readonly number[]) =>
    (x: number) =>
      rest + height * Math.exp(-x / tauS);
  const fit = curveFit(fall, points, [off, points[0].y - off, 5 * burst.intervalS]);
  return fit && fit.parameters[2] > 0 ? 1 / (2 * Math.PI * fit.parameters[2]) : null;
}
