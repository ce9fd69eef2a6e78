// SPDX-License-Identifier: MIT
// motor-heat: heat capacity and resistance to the air from a run whose loss is known, as all power of a free motor ends as
// heat. Two constants of this motor in this stand, no prediction of a race: race heat is mostly copper loss. Pure.
import { guarded, measured } from '#core/measurements/finding';
import { lagS, shownShare } from '#core/measurements/contact-temperature';
import type { CurvePoint } from '#core/measurements/curve-fit';
import type { Finding } from '#core/measurements/measurement';
import { uncertain, type Quantity } from '#core/measurements/quantity';
import { rectangular, typeA, typeB, type Line } from '#core/measurements/tap-errors';
import { NotMeasurable, steadyOf } from '#core/measurements/tap-reading';
import { twoBodyFit, type Heating, type KnownBody, type TwoBodyFit } from '#core/measurements/two-body-fit';
import type { AnalysisInput } from '../check.ts';
import { motorCurrent } from '../motor-no-load/analysis.ts';
import { usualOhm } from '../motor-no-load/winding.ts';
import { speedOf } from '../motor-step.ts';
import { requireProven } from '../proven-spin.ts';
import type { Stretch } from '../stretch.ts';
import type { Evidence } from './evidence.ts';

export const results = [
  { id: 'motor-heat-capacity', title: 'Heat capacity of the motor', unit: 'J/K' },
  { id: 'motor-thermal-resistance', title: 'Thermal resistance, motor to air', unit: 'K/W' },
] as const;
type Input = AnalysisInput<Evidence>;

/** Winding and how it is joined to the can; from memory. */
const windingJPerK = { low: 20, high: 30 };
const windingToCanKPerW = { low: 1, high: 1.4 };
/** Of the power that the controller's own losses and the iron in other places may take; from memory. */
const powerShare = 0.03;
/** Left out after each change of the power: more nodes than two show there. */
const settlesS = 60;
const binS = 4;
const powerBinS = 20;
/** Half of a bin's reading of one thermistor step is dithered away. */
const binU = 0.03;
const coldWithinK = 3;
const leastRiseK = 5;

export function analyse(input: Input): readonly Finding[] {
  return guarded(results, () => {
    const { idle, course } = input.evidence;
    requireProven(input.evidence);
    if (!course) throw new NotMeasurable('The run ended before the heating. Run again.');
    requireCold(input, idle);
    const seen = { points: pointsOf(input, course), heating: powerOf(input, course.heating) };
    const fits = variants.map(([, , change]) => fitted(seen, change));
    const told = {
      formula:
        'The course of the can over five minutes of known power and four without, fitted with a can and a winding in it: C dT/dt = P - (T - air)/R. The first minute after each change is left out.',
      evidence: [course.heating, course.cooling].map((at) => ({ ...at, taps: tapsUsed })),
      notes: [
        'Of this motor in this stand and this air. It says nothing of a race by itself: there the heat is mostly that of the copper.',
      ],
    };
    return [
      measured(
        results[0],
        quantityOf(fits, ({ capacityJPerK: value, uCapacity: u }) => ({ value, u })),
        told,
      ),
      measured(
        results[1],
        quantityOf(fits, ({ toAirKPerW: value, uToAir: u }) => ({ value, u })),
        told,
      ),
    ];
  });
}
const tapsUsed = ['thermistorMotor', 'thermistorAmbient', 'packCurrentNarrow', 'controllerVoltage'];

function aboveAir({ samples }: Input, { fromS, toS }: Stretch): number {
  const [can, air] = ['thermistorMotor', 'thermistorAmbient'].map((id) => {
    const { value, clipped } = samples.series(id, fromS, toS);
    if (clipped > 0 || value.length === 0)
      throw new NotMeasurable(`The thermistor "${id}" was lost. Check its plug, then run again.`);
    return value.reduce((sum, c) => sum + c, 0) / value.length;
  });
  return can - air;
}
function requireCold(input: Input, idle: Stretch): void {
  const above = aboveAir(input, idle);
  if (Math.abs(above) > coldWithinK)
    throw new NotMeasurable(
      `The can was ${above.toFixed(1)} K away from the air at the start. Let it come to the air's temperature, then run again.`,
    );
}
/** Means over bins from the start of the heating on. */
function pointsOf(input: Input, { heating, cooling }: { heating: Stretch; cooling: Stretch }): CurvePoint[] {
  const { ratio } = input.samples.clock;
  const points = [heating, cooling].flatMap(({ fromS, toS }) => {
    const first = fromS + settlesS;
    const count = Math.max(0, Math.floor((toS - first) / binS));
    return Array.from({ length: count }, (_, k) => {
      const at = { fromS: first + k * binS, toS: first + (k + 1) * binS };
      return { x: (at.fromS + binS / 2 - heating.fromS) * ratio, y: aboveAir(input, at), u: binU };
    });
  });
  const rise = Math.max(...points.map(({ y }) => y)) - Math.min(...points.map(({ y }) => y));
  if (points.length < 20 || rise < leastRiseK)
    throw new NotMeasurable(
      `The can rose by less than ${leastRiseK} K, too little for its constants. Check that its thermistor lies against it, then run again.`,
    );
  return points;
}
interface Power {
  readonly canW: number;
  readonly windingW: number;
}
function powerOf(input: Input, heating: Stretch): Heating {
  const count = Math.floor((heating.toS - heating.fromS) / powerBinS);
  if (count < 1) throw new NotMeasurable('The heating was too short to tell its power. Run again.');
  const bins = Array.from({ length: count }, (_, k) => {
    const fromS = heating.fromS + k * powerBinS;
    return wattsIn(input, { fromS, toS: fromS + powerBinS });
  });
  const lasts = (heating.toS - heating.fromS) * input.samples.clock.ratio;
  const bin = (timeS: number) => bins[Math.min(count - 1, Math.max(0, Math.floor(timeS / powerBinS)))];
  const of = (part: keyof Power) => (timeS: number) => (timeS > lasts ? 0 : bin(timeS)[part]);
  return { canW: of('canW'), windingW: of('windingW') };
}
/** All power but what the controller keeps; the copper's share goes into the winding. */
function wattsIn(input: Input, at: Stretch): Power {
  const { motor } = input.car;
  const volts = steadyOf(input, 'controllerVoltage', at).mean;
  const idleA = steadyOf(input, 'packCurrentNarrow', input.evidence.idle).mean;
  const driveA = steadyOf(input, 'packCurrentNarrow', at).mean - idleA;
  const [low, high] = usualOhm(motor);
  const rpm = speedOf(input, { fromS: at.fromS + 1, toS: at.fromS + 3 }).value;
  const amps = motorCurrent(volts, driveA, rpm, (low + high) / 2, motor.ratedKvRpmPerV);
  const windingW = amps * amps * windingShare * ((low + high) / 2);
  const controllerW = amps * amps * (1 - windingShare) * ((low + high) / 2);
  return { windingW, canW: volts * driveA - windingW - controllerW };
}
/** Of the resistance in the motor's circuit; from memory. */
const windingShare = 0.65;

interface Change {
  readonly known?: Partial<KnownBody>;
  readonly power?: number;
}
const middle = ({ low, high }: { low: number; high: number }): number => (low + high) / 2;
const usual: KnownBody = {
  windingJPerK: middle(windingJPerK),
  windingToCanKPerW: middle(windingToCanKPerW),
  lagS: middle(lagS),
  shownShare: middle(shownShare),
};
/** The fit as things are usual, then with one of them at its end: how far the answer moves is what it leaves open. */
const variants: readonly (readonly [id: string, words: string, change: Change])[] = [
  ['', '', {}],
  ['winding', 'heat capacity of the winding', { known: { windingJPerK: windingJPerK.high } }],
  ['join', 'winding to can', { known: { windingToCanKPerW: windingToCanKPerW.high } }],
  ['lag', 'lag of the thermistor', { known: { lagS: lagS.high } }],
  ['contact', 'contact of the thermistor', { known: { shownShare: shownShare.high } }],
  ['power', 'power that ends elsewhere', { power: 1 + powerShare }],
];
interface Seen {
  readonly points: readonly CurvePoint[];
  readonly heating: Heating;
}
function fitted({ points, heating }: Seen, { known = {}, power = 1 }: Change): TwoBodyFit {
  const scaled = {
    canW: (t: number) => power * heating.canW(t),
    windingW: (t: number) => power * heating.windingW(t),
  };
  const fit = twoBodyFit(points, scaled, { ...usual, ...known });
  if (!fit)
    throw new NotMeasurable('The course of the can is not that of a body that warms and cools. Run again.');
  return fit;
}
function quantityOf(
  fits: readonly TwoBodyFit[],
  of: (fit: TwoBodyFit) => { readonly value: number; readonly u: number },
): Quantity {
  const { value, u } = of(fits[0]);
  const lines = variants
    .slice(1)
    .map(([id, words], k): Line => [
      typeB(id, words, 'from memory'),
      rectangular(Math.abs(of(fits[k + 1]).value - value)),
    ]);
  return uncertain(value, [[typeA('course', 'scatter of the course', fits[0].dof), u], ...lines]);
}
