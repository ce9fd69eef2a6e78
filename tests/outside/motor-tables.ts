// SPDX-License-Identifier: MIT
// Rows of general industrial motor tables against the plant's motor: a row's constants go in, its other figures
// must come out. Brushless rows have losses that grow with speed, so only what losses don't touch is asked of them.
import { DriveMotor } from '#sim/physics/drive-motor';
import type { MotorParameters } from '#sim/physics/parameters';
import { kvRpmPerV, noLoadState } from '#sim/physics/steady-state';
import { thermalFit } from '#core/measurements/thermal-fit';
import { fixture, type MotorRow } from './fixture-file.ts';
import { type OutsideCase, type OutsideCheck, share } from './outside-check.ts';

const { rows, source } = fixture('motor-rows');
export const rowOf = (name: string): MotorRow => rows.find((row) => row.name.startsWith(name))!;
const fluxOf = (row: MotorRow): number => row.torqueMNmPerA * 1e-3;

/** The row as parameters of the plant; all loss dry, as the table's own identities take it. */
export function motorOf(row: MotorRow, loadNm = 0): MotorParameters {
  const still = {
    hallErrorRad: [0, 0, 0] as [number, number, number],
    hallOffsetRad: 0,
    hallDuty: [0.5, 0.5, 0.5] as [number, number, number],
    startAngleRad: 0,
    phaseShare: [1, 1, 1] as [number, number, number],
    deadHallLines: [false, false, false] as [boolean, boolean, boolean],
    hallLinesSwapped: false,
    hallNoiseHz: 0,
    hallLooseHz: 0,
  };
  return {
    turns: 10,
    timingDegrees: 30,
    polePairs: 1,
    fluxVs: fluxOf(row),
    windingOhm: row.ohm,
    inductanceH: row.inductanceMH * 1e-3,
    inertiaKgM2: row.inertiaGcm2 * 1e-7,
    coulombNm: fluxOf(row) * row.noLoadA + loadNm,
    viscousNms: 0,
    quadraticNms2: 0,
    ...still,
    startAboveAirK: 0,
    windingJPerK: 25,
    windingToCanKPerW: 1.2,
    canJPerK: 60,
    canToAirKPerW: 7,
  };
}
const loaded = (row: MotorRow, loadNm: number) => noLoadState(motorOf(row, loadNm), row.ohm, row.voltageV);
const gradient = (row: MotorRow): number => loaded(row, 0).speedRpm - loaded(row, 1e-3).speedRpm;
function bestEfficiency(row: MotorRow): number {
  const at = (part: number) => {
    const loadNm = part * row.stallMNm * 1e-3;
    const { speedRpm, currentA } = loaded(row, loadNm);
    return (loadNm * speedRpm * ((2 * Math.PI) / 60)) / (row.voltageV * currentA);
  };
  return 100 * Math.max(...Array.from({ length: 400 }, (_, k) => at((k + 1) / 500)));
}
/** The load at which it stands still, by halving. */
function stall(row: MotorRow): { torqueMNm: number; currentA: number } {
  let [low, high] = [0, 2 * row.stallMNm * 1e-3];
  for (let k = 0; k < 60; k++) {
    const middle = (low + high) / 2;
    if (loaded(row, middle).speedRpm > 1e-3) low = middle;
    else high = middle;
  }
  const currentA = loaded(row, low).currentA;
  return { torqueMNm: currentA * row.torqueMNmPerA, currentA };
}
/** Spin-up of the stepped motor at a fiftieth of its inductance, so that one time constant is left. */
function mechanicalMs(row: MotorRow): number | null {
  const stepS = 8e-6;
  const motor = new DriveMotor({ ...motorOf(row), inductanceH: row.inductanceMH * 2e-5 }, 0, stepS);
  const points = [];
  const count = Math.round((3e-3 * row.mechanicalTimeMs) / stepS);
  for (let k = 1; k <= count; k++) {
    motor.step(1, 0, row.voltageV);
    if (k % Math.ceil(count / 40) === 0) points.push({ x: k * stepS, y: motor.speedRadS, u: 1 });
  }
  const fit = thermalFit(points, 1);
  return fit && fit.tausS[0] * 1e3;
}
const stallCases = (row: MotorRow): OutsideCase[] => [
  {
    name: 'stall current, A',
    expected: row.stallA,
    got: () => stall(row).currentA,
    within: share(row.stallA, 0.01),
  },
  {
    name: 'stall torque, mN m',
    expected: row.stallMNm,
    got: () => stall(row).torqueMNm,
    within: share(row.stallMNm, 0.01),
  },
  {
    name: 'rpm per volt',
    expected: row.speedRpmPerV,
    got: () => kvRpmPerV(motorOf(row)),
    within: share(row.speedRpmPerV, 0.01),
  },
  {
    name: 'speed over torque, rpm/mN m',
    expected: row.gradientRpmPerMNm,
    got: () => gradient(row),
    within: share(row.gradientRpmPerMNm, 0.01),
  },
];
const lossCases = (row: MotorRow): OutsideCase[] => [
  {
    name: 'no-load speed, rpm',
    expected: row.noLoadRpm,
    got: () => loaded(row, 0).speedRpm,
    within: share(row.noLoadRpm, 0.01),
  },
  {
    name: 'best efficiency, %',
    expected: row.efficiencyPerCent,
    got: () => bestEfficiency(row),
    within: 0.5,
  },
];
/** Row M2 prints a time constant 3.5 % off its own R J/k^2. */
const timeCases = (row: MotorRow): OutsideCase[] => [
  {
    name: 'mechanical time constant, ms',
    expected: row.mechanicalTimeMs,
    got: () => mechanicalMs(row),
    within: share(row.mechanicalTimeMs, 0.01),
  },
];
const checkOf = (name: string, cases: (row: MotorRow) => OutsideCase[]): OutsideCheck => ({
  source: `${source}: ${rowOf(name).name}`,
  code: '`noLoadState`, `kvRpmPerV`, `DriveMotor` of the plant',
  cases: cases(rowOf(name)),
});
export const motorTables: readonly OutsideCheck[] = [
  checkOf('M1', (row) => [...stallCases(row), ...lossCases(row), ...timeCases(row)]),
  checkOf('M2', (row) => [...stallCases(row), ...lossCases(row)]),
  checkOf('M4', (row) => [...stallCases(row), ...timeCases(row)]),
  checkOf('M5', (row) => [...stallCases(row), ...timeCases(row)]),
];
