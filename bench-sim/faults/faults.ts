// SPDX-License-Identifier: MIT
// The named faults of the virtual bench: what each is, what its severity 0..1 means, and the verdict it must
// cause at severity 1. It does not know how a fault is made: the plant, the wiring and the cable read `Faults`.

export const faultNames = [
  'worn-bearings',
  'weak-rotor',
  'failing-servo-motor',
  'soft-rail',
  'rail-current-limit',
  'dead-hall-line',
  'open-thermistor',
  'block-loose',
  'noisy-cable',
  'stop-line-open',
] as const;
export type FaultName = (typeof faultNames)[number];
/** Severity by fault, 0 (healthy) to 1 (gross). A fault not named is healthy. */
export type Faults = Readonly<Partial<Record<FaultName, number>>>;
export type FaultVerdict = 'fail' | 'notMeasured' | 'tripped';

export interface FaultEntry {
  readonly name: FaultName;
  /** What is wrong, in words of the trade. */
  readonly words: string;
  /** What severity 1 stands for; between 0 and 1 the change is proportional unless said otherwise. */
  readonly severity: string;
  /** The check that must notice it. */
  readonly check: string;
  /** What that check must say at severity 1. `tripped` is an event whose results are not measured. */
  readonly verdict: FaultVerdict;
  /** Where it is made. */
  readonly room: 'plant' | 'wiring' | 'cable' | 'bench';
}

export const faultTable: readonly FaultEntry[] = [
  {
    name: 'worn-bearings',
    words: 'The motor bearings are worn: more friction at every speed.',
    severity: '1: friction torque 2.2 times what it was',
    check: 'motor-no-load',
    verdict: 'fail',
    room: 'plant',
  },
  {
    name: 'weak-rotor',
    words: 'The rotor magnet has lost flux: the motor turns faster and draws more.',
    severity: '1: 12 % of the flux gone',
    check: 'motor-no-load',
    verdict: 'fail',
    room: 'plant',
  },
  {
    name: 'failing-servo-motor',
    words: 'The servo motor is failing: worn brushes and windings let too little current through.',
    severity: '1: stall current down to 60 %',
    check: 'servo-stall',
    verdict: 'fail',
    room: 'plant',
  },
  {
    name: 'soft-rail',
    words: 'The receiver rail is soft: too much resistance between regulator and receiver.',
    severity: '1: source resistance 140 mohm',
    check: 'rail-sag',
    verdict: 'fail',
    room: 'plant',
  },
  {
    name: 'rail-current-limit',
    words: 'The regulator of the receiver rail gives up early.',
    severity: '1: current limit at 1.5 A',
    check: 'rail-sag',
    verdict: 'fail',
    room: 'plant',
  },
  {
    name: 'dead-hall-line',
    words: 'Hall line A of the sensor cable is dead: no speed.',
    severity: 'above 0.5: the line stays low',
    check: 'motor-no-load',
    verdict: 'notMeasured',
    room: 'plant',
  },
  {
    name: 'open-thermistor',
    words: 'The thermistors at the motor and at the servo case are open.',
    severity: 'above 0.5: no connection',
    check: 'motor-no-load',
    verdict: 'notMeasured',
    room: 'plant',
  },
  {
    name: 'block-loose',
    words: 'The block the servo horn rests against is loose and gives way.',
    severity:
      '1: gives way at 100 degrees a second under the full stall torque; between: proportionally slower',
    check: 'servo-stall',
    verdict: 'notMeasured',
    room: 'plant',
  },
  {
    name: 'noisy-cable',
    words: 'The USB cable drops and garbles bytes on the way to the computer.',
    severity: '1: about four bursts of damage a second while the feed is on; the rate is proportional',
    check: 'rail-sag',
    verdict: 'notMeasured',
    room: 'cable',
  },
  {
    name: 'stop-line-open',
    words: 'The stop line opens two seconds after the first drive.',
    severity: 'above 0.5: the line opens and stays open',
    check: 'motor-no-load',
    verdict: 'tripped',
    room: 'bench',
  },
];

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
