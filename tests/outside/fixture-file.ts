// SPDX-License-Identifier: MIT
// Reads the transcribed figures of outside sources. Each file names its source.
import { readFileSync } from 'node:fs';

interface Files {
  'strd-nonlinear': { sets: readonly (RegressionSet & Starts)[] };
  'strd-linear': { sets: readonly RegressionSet[] };
  'strd-univariate': { sets: readonly UnivariateSet[] };
  'thermistor-tables': { tables: readonly ThermistorTable[] };
  quantiles: { t: readonly number[][]; f: readonly number[][]; chi2: readonly number[][] };
  'copper-gauges': { rows: readonly { gauge: number; diameterMm: number; ohmPer1000ft: number }[] };
  'order-spectrum': { source: string; orders: readonly { order: number; cos: number; sin: number }[] };
  'motor-rows': { rows: readonly MotorRow[] };
}
export interface RegressionSet {
  readonly name: string;
  readonly certified: readonly number[];
  readonly sd: readonly number[];
  readonly residualSd: number;
  /** x, y. */
  readonly points: readonly (readonly [number, number])[];
}
interface Starts {
  readonly start1: readonly number[];
  readonly start2: readonly number[];
  readonly rss: number;
}
export interface UnivariateSet {
  readonly name: string;
  readonly mean: number;
  readonly sd: number;
  readonly values?: readonly number[];
  /** Instead of values: one, then `pairs` times the pair. */
  readonly first?: number;
  readonly pair?: readonly [number, number];
  readonly pairs?: number;
}
export interface ThermistorTable {
  readonly name: string;
  readonly celsius: readonly number[];
  readonly ohm: readonly number[];
  readonly beta25to50K: number;
  readonly beta25to85K: number;
  readonly steinhartHart: readonly [number, number, number];
  readonly steinhartHartWorstK: number;
  readonly betaErrorsK: Readonly<Record<string, number>>;
}
export interface MotorRow {
  readonly name: string;
  readonly voltageV: number;
  readonly noLoadRpm: number;
  readonly noLoadA: number;
  readonly stallMNm: number;
  readonly stallA: number;
  readonly efficiencyPerCent: number;
  readonly ohm: number;
  readonly inductanceMH: number;
  readonly torqueMNmPerA: number;
  readonly speedRpmPerV: number;
  readonly gradientRpmPerMNm: number;
  readonly mechanicalTimeMs: number;
  readonly inertiaGcm2: number;
}
export function fixture<K extends keyof Files>(name: K): Files[K] & { source: string } {
  return JSON.parse(readFileSync(new URL(`fixtures/${name}.json`, import.meta.url), 'utf8'));
}
