// SPDX-License-Identifier: MIT
// servo-speed: the slope of duration over length is the speed, whatever acceleration, delay and arrival add to each
// move alike; what they add is the intercept. Pure.
import { guarded, measured } from '#core/measurements/finding';
import type { Finding } from '#core/measurements/measurement';
import { combined, linear, uncertain, widened, type Quantity } from '#core/measurements/quantity';
import { clockLine, rectangular, typeA, typeB } from '#core/measurements/tap-errors';
import { NotMeasurable, reading, steadyOf } from '#core/measurements/tap-reading';
import { servoSpeed } from '#core/units/shown-unit';
import { scaledTime } from '#core/limits/rating-scaling';
import type { AnalysisInput } from '../check.ts';
import { degreesPerUs, hornReading } from '../protractor.ts';
import { fittedMoves, type FittedMoves } from './fitted-moves.ts';
import type { Evidence } from './evidence.ts';

export const results = [
  { id: 'time-per-60', title: 'Time for 60 degrees', unit: servoSpeed },
  { id: 'time-per-60-rated', title: 'Time for 60 degrees at rated voltage', unit: servoSpeed },
  { id: 'time-per-600-us', title: 'Time for 600 µs of pulse', unit: 's' },
] as const;
type Input = AnalysisInput<Evidence>;
const pulseUs = 600;
const swing = 60;
/** The rail adapter's shunt and plug lie between the rail tap and the servo. */
const shuntOhm = 0.01;

export function analyse(input: Input): readonly Finding[] {
  return guarded(results, () => {
    const fit = fittedMoves(input, steadyOf(input, 'railCurrent', input.evidence.idle).mean);
    const perUs = slopeOf(input, fit);
    return [
      ...guarded(results.slice(0, 2), () => inDegrees(input, fit, perUs)),
      measured(
        results[2],
        combined([perUs], (s) => pulseUs * s),
        {
          ...told(fit),
          formula: `${pulseUs} µs times the slope of duration over length of the moves, both ways.`,
          notes: notesOf(input, fit),
        },
      ),
    ];
  });
}
const told = ({ moves }: FittedMoves) => ({
  evidence: moves.map(({ stretch }) => ({ ...stretch, taps: ['railCurrent'] })),
});
function slopeOf({ samples }: Input, { slope, uSlope, pairs }: FittedMoves): Quantity {
  return uncertain(slope, [
    [typeA('moves', 'scatter of the moves about the straight line', pairs - 2), uSlope],
    clockLine(samples.clock, slope),
  ]);
}
function inDegrees(input: Input, fit: FittedMoves, perUs: Quantity): Finding[] {
  const time = combined([perUs, turnPerUs(input)], (s, degrees) => (swing * s) / Math.abs(degrees));
  const plugV = plugVoltage(input, fit);
  return [
    measured(results[0], time, {
      ...told(fit),
      formula: `${swing} degrees times the slope of duration over length of the moves, over degrees a microsecond.`,
      notes: [`At ${plugV.value.toFixed(2)} V at its plug while it moved.`],
    }),
    ...guarded(results.slice(1, 2), () => [atRated(input, fit, time, plugV)]),
  ];
}
function atRated(input: Input, fit: FittedMoves, time: Quantity, plugV: Quantity): Finding {
  const { ratedVoltageV } = input.car.servo;
  const carried = (atV: number) => scaledTime([{ value: 1, atV }], ratedVoltageV);
  const factor = carried(plugV.value);
  if ('unusable' in factor) throw new NotMeasurable(factor.unusable);
  const valueAt = (atV: number) => {
    const found = carried(atV);
    return 'unusable' in found ? factor.value : found.value;
  };
  const rated = combined([time, plugV], (s, v) => s * valueAt(v));
  const model = typeB('voltage model', 'carrying to the rated voltage by k (V - V0)', factor.words);
  return measured(results[1], widened(rated, model, rated.value * factor.share), {
    ...told(fit),
    formula: `Time for 60 degrees, ${factor.words.replace(/^rated at/, 'measured at')}.`,
  });
}
function turnPerUs({ evidence, car }: Input): Quantity {
  const known = car.servo.measuredDegreesPerUs;
  if (known)
    return uncertain(known.degreesPerUs, [
      [
        typeB('known turn', "the part's degrees per microsecond", 'a protractor, kept with the part'),
        known.u,
      ],
    ]);
  if (!evidence.horn)
    throw new NotMeasurable('The horn was not read, so its degrees per microsecond are unknown. Run again.');
  const { apartUs, again, ...first } = evidence.horn;
  const looks = (again ? [first, again] : [first]).map(({ shortDegrees, longDegrees }, k) => {
    const look = k === 0 ? '' : ' again';
    const [short, long] = [
      hornReading(`short${look}`, shortDegrees),
      hornReading(`long${look}`, longDegrees),
    ];
    return degreesPerUs(short, long, apartUs, look);
  });
  return linear(looks.map((perUs) => [1 / looks.length, perUs] as const));
}
/** Mean over the plateaus of the longest moves. */
function plugVoltage(input: Input, { plateaus, plateauA }: FittedMoves): Quantity {
  const volts = plateaus.map((stretch) => reading(input, 'railVoltage', stretch));
  const shunt = uncertain(shuntOhm, [
    [typeB('adapter', 'shunt and plug of the rail adapter', 'from memory'), rectangular(0.002)],
  ]);
  return combined(
    [...volts, shunt],
    (...x) => x.slice(0, -1).reduce((sum, v) => sum + v, 0) / volts.length - x[x.length - 1] * plateauA,
  );
}
function notesOf(input: Input, { intercept }: FittedMoves): string[] {
  const ms = (1e3 * Math.abs(intercept)).toFixed(0);
  const frame = 'pulses every 20 ms';
  return [
    `At ${frame}, on the rail as it was. Acceleration and arrival make each move ${ms} ms ${intercept < 0 ? 'shorter' : 'longer'} than its length at full speed: the drive is taken back before the horn arrives.`,
    ...(input.car.servo.digital
      ? []
      : [
          'A simple servo looks at its pulse once a frame: its moves end in steps of 20 ms, which the line through them allows for.',
        ]),
  ];
}
