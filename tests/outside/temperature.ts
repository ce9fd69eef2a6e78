// SPDX-License-Identifier: MIT
// Thermistors against makers' tables: what the B equation of the taps is wrong by, and what Steinhart-Hart leaves;
// warming against the exact solution; copper as a thermometer and as wire.
import { windingC, gaugeDiameterM, gaugeOhmPerM } from '#core/measurements/copper';
import { grown } from '#core/measurements/exponential-sum';
import { steinhartHart, steinhartHartC, type ThermistorPoint } from '#core/measurements/steinhart-hart';
import { thermalFit } from '#core/measurements/thermal-fit';
import { codesPerSpan, thermistorC } from '#core/samples/tap-scaling';
import { copperFactor } from '#sim/physics/copper';
import { fixture, type ThermistorTable } from './fixture-file.ts';
import { type OutsideCheck, printed, share } from './outside-check.ts';

const { tables } = fixture('thermistor-tables');
const ohmAt = (table: ThermistorTable, celsius: number) => table.ohm[table.celsius.indexOf(celsius)];

/** As the tap reads it: code of the divider, then the B equation. */
export function byBeta(table: ThermistorTable, ohm: number, betaK: number): number {
  const r25 = ohmAt(table, 25);
  return thermistorC((codesPerSpan * ohm) / (ohm + r25), r25, r25, betaK);
}
const coefficients = (table: ThermistorTable) =>
  steinhartHart(
    [0, 25, 85].map((t): ThermistorPoint => [t, ohmAt(table, t)]) as [
      ThermistorPoint,
      ThermistorPoint,
      ThermistorPoint,
    ],
  );
function worstOf(table: ThermistorTable): number {
  const curve = coefficients(table);
  const errors = table.celsius.map((t, k) =>
    t < 0 || t > 85 ? 0 : Math.abs(steinhartHartC(curve, table.ohm[k]) - t),
  );
  return Math.max(...errors);
}
const beta: OutsideCheck[] = tables.map((table) => ({
  source: `Maker's table of a thermistor, ${table.name}`,
  code: '`thermistorC` with B of 25 to 50 C',
  cases: Object.entries(table.betaErrorsK).map(([t, error]) => ({
    name: `error at ${t} C, K`,
    expected: error,
    got: () => byBeta(table, ohmAt(table, Number(t)), table.beta25to50K) - Number(t),
    within: 0.002,
  })),
}));
const curve: OutsideCheck[] = tables.map((table) => ({
  source: `Maker's table of a thermistor, ${table.name}; Steinhart and Hart 1968, through 0, 25, 85 C`,
  code: '`steinhartHart`, `steinhartHartC`',
  mark: 'computed' as const,
  cases: [
    ...table.steinhartHart.map((value, k) => ({
      name: ['A', 'B', 'C'][k],
      expected: value,
      got: () => coefficients(table)[k],
      within: share(value, 1e-8),
    })),
    {
      name: 'largest error from 0 to 85 C, K',
      expected: table.steinhartHartWorstK,
      got: () => worstOf(table),
      within: 0.001,
    },
  ],
}));
const three = steinhartHart([
  [5, 25000],
  [25, 10000],
  [45, 4000],
]);
const threePoints: OutsideCheck = {
  source:
    'Three-point example of the Steinhart-Hart article in a free encyclopaedia (25, 10, 4 kohm at 5, 25, 45 C)',
  code: '`steinhartHart`',
  mark: 'from memory',
  cases: [2.10850817e-3, 7.97920473e-5, 6.53507631e-7].map((value, k) => ({
    name: ['A', 'B', 'C'][k],
    expected: value,
    got: () => three[k],
    within: share(value, 1e-8),
  })),
};
const shares = [0.6321206, 0.8646647, 0.9502129, 0.9816844, 0.9932621];
const warming = [60, 120, 300, 600, 900].map((timeS, k) => ({
  x: timeS,
  y: [30.876155, 39.780797, 57.927234, 71.879883, 77.012776][k],
  u: 1e-6,
}));
const fit = thermalFit(warming, 1);
const exponential: OutsideCheck = {
  source: 'First-order step, closed form',
  code: '`grown`, `thermalFit`',
  mark: 'computed',
  cases: [
    ...shares.map((value, k) => ({
      name: `share after ${k + 1} time constants`,
      expected: value,
      got: () => grown(k + 1, 1),
      within: printed(7),
    })),
    { name: 'rise from five readings, K', expected: 60, got: () => fit?.riseK ?? null, within: 1e-5 },
    { name: 'time constant, s', expected: 300, got: () => fit?.tausS[0] ?? null, within: 1e-4 },
  ],
};
const gauges = fixture('copper-gauges');
const feetPerM = 1 / 0.3048;
const copper: OutsideCheck[] = [
  {
    source: gauges.source,
    code: '`gaugeDiameterM`, `gaugeOhmPerM`',
    cases: gauges.rows.flatMap(({ gauge, diameterMm, ohmPer1000ft }) => [
      {
        name: `AWG ${gauge}, mm`,
        expected: diameterMm,
        got: () => gaugeDiameterM(gauge) * 1e3,
        within: printed(5),
      },
      {
        name: `AWG ${gauge}, ohm per 1000 ft`,
        expected: ohmPer1000ft,
        got: () => (gaugeOhmPerM(gauge) * 1000) / feetPerM,
        within: share(ohmPer1000ft, 3e-4),
      },
    ]),
  },
  {
    source: 'IEC 60034-1, resistance method, 235 K; figures made up, no published worked example found',
    code: '`windingC`',
    mark: 'from memory',
    cases: (
      [
        [1, 20, 1.2, 71],
        [0.05, 25, 0.0625, 90],
        [2.45, 22, 2.9, 69.2041],
        [10, 20, 13.93, 120.215],
      ] as const
    ).map(([cold, coldC, warm, celsius]) => ({
      name: `${cold} to ${warm} ohm from ${coldC} C`,
      expected: celsius,
      got: () => windingC(cold, coldC, warm),
      within: printed(4),
    })),
  },
  {
    source: 'IEC 60287-1-1, 0.00393 per kelvin at 20 C',
    code: '`copperFactor` of the plant',
    cases: [
      [50, 1.1179],
      [75, 1.21615],
      [100, 1.3144],
    ].map(([t, factor]) => ({
      name: `R(${t} C)/R(20 C)`,
      expected: factor,
      got: () => copperFactor(t),
      within: 1e-9,
    })),
  },
];
export const temperature: readonly OutsideCheck[] = [...beta, ...curve, threePoints, exponential, ...copper];
