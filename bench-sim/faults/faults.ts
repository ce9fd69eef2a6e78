// SPDX-License-Identifier: MIT
// The named faults of the virtual bench, by what they are faults of, and what a person types to ask for one.
// It does not know how a fault is made: the plant, the wiring and the cable read `Faults`.
import { benchFaults } from './bench-faults.ts';
import { controlFaults } from './control-faults.ts';
import type { FaultRow } from './fault-row.ts';
import { motorFaults } from './motor-faults.ts';
import { servoFaults } from './servo-faults.ts';
import { supplyFaults } from './supply-faults.ts';

const groups = [supplyFaults, servoFaults, motorFaults, controlFaults, benchFaults] as const;
export type FaultName = (typeof groups)[number][number]['name'];
/** Severity by fault, 0 (healthy) to 1 (gross). A fault not named is healthy. */
export type Faults = Readonly<Partial<Record<FaultName, number>>>;
export interface FaultEntry extends FaultRow {
  readonly name: FaultName;
}
/** In groups of the panel. */
export const faultGroups: readonly { readonly title: string; readonly faults: readonly FaultEntry[] }[] = [
  { title: 'Supply', faults: supplyFaults },
  { title: 'Servo', faults: servoFaults },
  { title: 'Motor', faults: motorFaults },
  { title: 'Control', faults: controlFaults },
  { title: 'Rig', faults: benchFaults },
];
export const faultTable: readonly FaultEntry[] = faultGroups.flatMap(({ faults }) => faults);
export const faultNames: readonly FaultName[] = faultTable.map(({ name }) => name);

/** Severity of a fault, 0 where it is not named. */
export function severityOf(faults: Faults, name: FaultName): number {
  return faults[name] ?? 0;
}

/** Reads `name=severity`; the error says what was wrong and what is known. */
export function parseFault(text: string): { readonly name: FaultName; readonly severity: number } {
  const [name, value = '1', ...rest] = text.split('=');
  const severity = Number(value);
  if (!faultNames.includes(name as FaultName)) {
    throw new Error(`There is no fault "${name}". Known faults: ${faultNames.join(', ')}.`);
  }
  if (rest.length > 0 || value.trim() === '' || !(severity >= 0 && severity <= 1)) {
    throw new Error(
      `The severity of "${name}" must be a number from 0 to 1, not "${text.slice(name.length + 1)}".`,
    );
  }
  return { name: name as FaultName, severity };
}
