// SPDX-License-Identifier: MIT
// Units at the edges. Inside, everything is SI; here are the factors of what people type and read, exact by
// definition, and a reader of what was typed. It knows no field and no screen.

export const dimensions = ['torque', 'temperature', 'speed', 'length', 'rotational speed'] as const;
export type Dimension = (typeof dimensions)[number];
interface Unit {
  readonly dimension: Dimension;
  /** As shown. */
  readonly symbol: string;
  /** As typed, lower case, without blanks, with "." for any dot, dash or nothing between two units. */
  readonly spellings: readonly string[];
  /** SI value = (value + offset) x factor. */
  readonly factor: number;
  readonly offset?: number;
}
/** International agreements: 1 lb = 0.453 592 37 kg, 1 in = 25.4 mm, standard gravity 9.806 65 m/s2; from them
 *  1 lbf = 4.448 221 615 260 5 N and 1 kgf = 9.806 65 N, both exact (NIST SP 811, appendix B). */
export const definitions = {
  poundKg: 0.45359237,
  inchM: 0.0254,
  gravityMPerS2: 9.80665,
  mileM: 1609.344,
  ouncesPerPound: 16,
  minuteS: 60,
  hourS: 3600,
} as const;
const { poundKg, inchM, gravityMPerS2, mileM, ouncesPerPound, minuteS, hourS } = definitions;

/** Temperatures are degrees Celsius inside: the tool compares with ambient and never with absolute zero. */
export const units = {
  newtonMetre: { dimension: 'torque', symbol: 'N·m', spellings: ['n.m', 'nm'], factor: 1 },
  newtonCentimetre: { dimension: 'torque', symbol: 'N·cm', spellings: ['n.cm', 'ncm'], factor: 0.01 },
  millinewtonMetre: { dimension: 'torque', symbol: 'mN·m', spellings: ['mn.m', 'mnm'], factor: 0.001 },
  ounceInch: {
    dimension: 'torque',
    symbol: 'oz·in',
    spellings: ['oz.in', 'ozin', 'ozf.in', 'in.oz'],
    factor: ((poundKg * gravityMPerS2) / ouncesPerPound) * inchM,
  },
  kilogramCentimetre: {
    dimension: 'torque',
    symbol: 'kgf·cm',
    spellings: ['kg.cm', 'kgcm', 'kgf.cm', 'kgfcm'],
    factor: gravityMPerS2 / 100,
  },
  celsius: { dimension: 'temperature', symbol: '°C', spellings: ['c', '°c', 'degc', 'degreesc'], factor: 1 },
  fahrenheit: {
    dimension: 'temperature',
    symbol: '°F',
    spellings: ['f', '°f', 'degf', 'degreesf'],
    factor: 5 / 9,
    offset: -32,
  },
  metrePerSecond: { dimension: 'speed', symbol: 'm/s', spellings: ['m/s'], factor: 1 },
  kilometrePerHour: {
    dimension: 'speed',
    symbol: 'km/h',
    spellings: ['km/h', 'kmh', 'kph'],
    factor: 1000 / hourS,
  },
  milePerHour: { dimension: 'speed', symbol: 'mph', spellings: ['mph', 'mi/h'], factor: mileM / hourS },
  radianPerSecond: { dimension: 'rotational speed', symbol: 'rad/s', spellings: ['rad/s'], factor: 1 },
  revolutionPerMinute: {
    dimension: 'rotational speed',
    symbol: 'rpm',
    spellings: ['rpm', '1/min', 'r/min'],
    factor: (2 * Math.PI) / minuteS,
  },
  metre: { dimension: 'length', symbol: 'm', spellings: ['m'], factor: 1 },
  centimetre: { dimension: 'length', symbol: 'cm', spellings: ['cm'], factor: 0.01 },
  millimetre: { dimension: 'length', symbol: 'mm', spellings: ['mm'], factor: 0.001 },
  inch: { dimension: 'length', symbol: 'in', spellings: ['in', 'inch', 'inches', '"'], factor: inchM },
} as const satisfies Readonly<Record<string, Unit>>;
export type UnitName = keyof typeof units;

export function toSi(value: number, name: UnitName): number {
  const unit: Unit = units[name];
  return (value + (unit.offset ?? 0)) * unit.factor;
}
export function fromSi(value: number, name: UnitName): number {
  const unit: Unit = units[name];
  return value / unit.factor - (unit.offset ?? 0);
}
/** A difference or an uncertainty: offsets don't count. */
export const differenceToSi = (value: number, name: UnitName): number => value * units[name].factor;
export const differenceFromSi = (value: number, name: UnitName): number => value / units[name].factor;

export const unitsOf = (dimension: Dimension): UnitName[] =>
  (Object.keys(units) as UnitName[]).filter((name) => units[name].dimension === dimension);
