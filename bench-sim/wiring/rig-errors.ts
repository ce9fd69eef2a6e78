// SPDX-License-Identifier: MIT
// What one rig's parts truly are: every tolerance of the board drawn rectangular within its declared width.
// Widths are those the board declares in its descriptor; it knows no pin and no plant.
import type { SeededRandom } from '../seeded-random.ts';

/** One tap: pin volts = zeroV + offsetV + volts per unit x (1 + gain) x quantity, behind one pole. */
export interface TapError {
  readonly zeroV: number;
  readonly voltsPerUnit: number;
  readonly gain: number;
  /** At the pin. */
  readonly offsetV: number;
  readonly cornerHz: number;
}
export interface ThermistorError {
  /** Resistance at 25 C, B value and pull-up as they are. */
  readonly r25Ohm: number;
  readonly betaK: number;
  readonly pullUpOhm: number;
}
export interface RigErrors {
  /** Relative error of the resonator. */
  readonly clock: number;
  readonly avccV: number;
  readonly bandGapV: number;
  readonly referenceV: number;
  readonly watchdog: number;
  readonly deadManS: number;
  readonly taps: Readonly<Record<TapName, TapError>>;
  readonly thermistors: readonly ThermistorError[];
  /** Non-linearity: height of the bow and of the pattern, LSB; their sum never exceeds 1. */
  readonly bowLsb: number;
  readonly patternLsb: number;
  readonly patternPhase: number;
}
export const tapNames = [
  'packVoltage',
  'packCurrentNarrow',
  'railVoltage',
  'railCurrent',
  'controllerVoltage',
  'packCurrentWide',
  'jointProbe',
  'midCell',
  'polarity',
  'jointProbeWide',
] as const;
export type TapName = (typeof tapNames)[number];

const DIVIDER = 0.005;
const SHUNT = 0.01;
const AMPLIFIER = 0.005;
const CORNER = 0.1;

interface TapNominal {
  readonly zeroV: number;
  readonly voltsPerUnit: number;
  /** Half-width of the zero, at the pin. */
  readonly offsetV: number;
  readonly cornerHz: number;
}
const nominal: Readonly<Record<TapName, TapNominal>> = {
  packVoltage: { zeroV: 0, voltsPerUnit: 1 / 2, offsetV: 0.01, cornerHz: 340 },
  packCurrentNarrow: { zeroV: 0.8, voltsPerUnit: 0.4, offsetV: 0.04, cornerHz: 340 },
  railVoltage: { zeroV: 0, voltsPerUnit: 1 / 2, offsetV: 0.01, cornerHz: 3400 },
  railCurrent: { zeroV: 0.5, voltsPerUnit: 0.5, offsetV: 0.025, cornerHz: 3400 },
  controllerVoltage: { zeroV: 0, voltsPerUnit: 1 / 2, offsetV: 0.01, cornerHz: 340 },
  packCurrentWide: { zeroV: 0.75, voltsPerUnit: 0.025, offsetV: 0.0125, cornerHz: 340 },
  jointProbe: { zeroV: 2.5, voltsPerUnit: 50, offsetV: 0.025, cornerHz: 3400 },
  midCell: { zeroV: 0, voltsPerUnit: 1, offsetV: 0.01, cornerHz: 340 },
  polarity: { zeroV: 2.5, voltsPerUnit: 1 / 6, offsetV: 0.01, cornerHz: 340 },
  jointProbeWide: { zeroV: 0.3, voltsPerUnit: 5, offsetV: 0.025, cornerHz: 3400 },
};

interface Gains {
  readonly packShunt: number;
  readonly railShunt: number;
}

/** Taps on the same shunt share its error; each has an amplifier or divider of its own. */
function drawGain(name: TapName, random: SeededRandom, shared: Gains): number {
  const amplifier = random.between(-AMPLIFIER, AMPLIFIER);
  if (name === 'packCurrentNarrow' || name === 'packCurrentWide') return shared.packShunt + amplifier;
  if (name === 'railCurrent') return shared.railShunt + amplifier;
  return name === 'jointProbe' || name === 'jointProbeWide' ? amplifier : random.between(-DIVIDER, DIVIDER);
}

/** Which dividers the board has: pack and controller side to 10 V, or to 20 V. */
export type BoardVariant = '2S' | '4S';
const wideTaps: readonly TapName[] = ['packVoltage', 'controllerVoltage'];

function drawTap(name: TapName, random: SeededRandom, shared: Gains, variant: BoardVariant): TapError {
  const { zeroV, offsetV, cornerHz } = nominal[name];
  const voltsPerUnit = nominal[name].voltsPerUnit / (variant === '4S' && wideTaps.includes(name) ? 2 : 1);
  return {
    zeroV,
    voltsPerUnit,
    gain: drawGain(name, random, shared),
    offsetV: random.between(-offsetV, offsetV),
    cornerHz: cornerHz * (1 + random.between(-CORNER, CORNER)),
  };
}

function drawThermistor(random: SeededRandom): ThermistorError {
  return {
    r25Ohm: 1e4 * (1 + random.between(-0.01, 0.01)),
    betaK: 3950 * (1 + random.between(-0.01, 0.01)),
    pullUpOhm: 1e4 * (1 + random.between(-0.01, 0.01)),
  };
}

export function drawRigErrors(random: SeededRandom, variant: BoardVariant = '2S'): RigErrors {
  const board = random.stream('board');
  const shared = { packShunt: board.between(-SHUNT, SHUNT), railShunt: board.between(-SHUNT, SHUNT) };
  const taps = Object.fromEntries(
    tapNames.map((name) => [name, drawTap(name, random.stream(name), shared, variant)]),
  );
  const bowLsb = board.between(-0.7, 0.7);
  return {
    clock: board.between(-0.005, 0.005),
    avccV: board.between(4.8, 5.2),
    bandGapV: board.between(1.0, 1.2),
    referenceV: 2.5 * (1 + board.between(-0.002, 0.002)),
    watchdog: board.between(-0.1, 0.1),
    deadManS: board.between(0.008, 0.012),
    taps: taps as Record<TapName, TapError>,
    thermistors: [0, 1, 2, 3].map((n) => drawThermistor(random.stream(`thermistor${n}`))),
    bowLsb,
    patternLsb: board.between(0, 1 - Math.abs(bowLsb)),
    patternPhase: board.between(0, 2 * Math.PI),
  };
}
