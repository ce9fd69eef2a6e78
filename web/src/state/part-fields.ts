// SPDX-License-Identifier: MIT
// The ratings of each part as form fields: path in the car, label, unit, kind; reading of what was typed, units as
// typed. Which values are allowed is the schema's business.
import type { Car, PartKind } from '#core/parts/part';
import type { Dimension } from '#core/units/units';
import { typedQuantity } from '#core/units/typed-quantity';
import { liveFigure, shownUnit } from './figures.ts';
import { otherUnits } from './typed-bound.ts';

export interface PartField {
  readonly path: string;
  readonly label: string;
  readonly unit?: string;
  /** 'quantity' takes any unit of its dimension, typed with it. */
  readonly kind: 'text' | 'number' | 'choice' | 'yes' | 'quantity';
  readonly dimension?: Dimension;
  /** Shown value = stored value x scale; percent fields store fractions. */
  readonly scale?: number;
  readonly optional?: boolean;
  readonly choices?: readonly (readonly [string, string])[];
}
export interface PartForm {
  readonly kind: PartKind;
  readonly title: string;
  readonly fields: readonly PartField[];
  /** Fields of one kind after the other, each with its own heading. */
  readonly groups?: readonly { readonly title: string; readonly fields: readonly PartField[] }[];
  /** What fewer labels tell, or a measurement brought; all may stay empty. */
  readonly more?: readonly PartField[];
}
const text = (path: string, label: string): PartField => ({ path, label, kind: 'text' });
const number = (path: string, label: string, unit = '', more: Partial<PartField> = {}): PartField => ({
  path,
  label,
  unit,
  kind: 'number',
  ...more,
});
const quantity = (path: string, label: string, dimension: Dimension, unit: string): PartField => ({
  path,
  label,
  unit,
  kind: 'quantity',
  dimension,
  optional: true,
});
const optional = { optional: true };
const percent = { scale: 100 };
const sizes = [
  ['', 'Not told'],
  ['standard', 'Standard'],
  ['low-profile', 'Low-profile'],
] as const;
const chemistries = [
  ['lipo', 'Lithium polymer'],
  ['liHv', 'Lithium, high voltage'],
  ['lifepo4', 'Lithium iron phosphate'],
  ['nimh', 'Nickel metal hydride'],
] as const;

export const partForms: readonly PartForm[] = [
  {
    kind: 'motor',
    title: 'Motor',
    fields: [
      text('motor.name', 'Name'),
      number('motor.turns', 'Turns'),
      number('motor.polePairs', 'Pole pairs'),
      number('motor.timingDegrees', 'Timing, mark of the end bell', '°', optional),
      { path: 'motor.sensored', label: 'Has a sensor cable', kind: 'yes' },
      number('motor.ratedKvRpmPerV', 'Rated kV', 'rpm/V'),
      number('motor.ratedKvTolerance', 'Tolerance of kV', '%', percent),
      number('motor.ratedSpeedRpm', 'Rated speed', 'rpm'),
      number('motor.ratedNoLoadA', 'Rated no-load current', 'A', optional),
      number('motor.ratedNoLoadAtV', 'No-load current holds at', 'V', optional),
    ],
    more: [
      number('motor.windingOhm.ohm', 'Measured winding, phase to phase', 'mΩ', { ...optional, scale: 1000 }),
      number('motor.windingOhm.u', 'Its standard uncertainty', 'mΩ', { ...optional, scale: 1000 }),
    ],
  },
  {
    kind: 'servo',
    title: 'Servo',
    fields: [
      text('servo.name', 'Name'),
      { path: 'servo.size', label: 'Size', kind: 'choice', choices: sizes, optional: true },
      { path: 'servo.digital', label: 'Digital', kind: 'yes' },
      number('servo.ratedVoltageV', 'Rated voltage', 'V'),
      quantity('servo.ratedTorqueNm', 'Rated torque', 'torque', 'N·m'),
      number('servo.ratedSecondsPer60', 'Rated time for 60°', 's', optional),
      number('servo.ratedStallA', 'Rated stall current', 'A', optional),
      number('servo.ratedStallAtV', 'Stall current holds at', 'V', optional),
      number('servo.ratedStallTolerance', 'Tolerance of stall current', '%', percent),
      number('servo.degreesPerUs', 'Angle per microsecond', '°'),
    ],
    more: [
      number('servo.secondRating.voltageV', 'Second column of the label at', 'V', optional),
      quantity('servo.secondRating.torqueNm', 'Torque there', 'torque', 'N·m'),
      number('servo.secondRating.secondsPer60', 'Time for 60° there', 's', optional),
      number('servo.secondRating.stallA', 'Stall current there', 'A', optional),
      number('servo.splineTeeth', 'Teeth of the spline', '', optional),
      number('servo.measuredDegreesPerUs.degreesPerUs', 'Measured angle per microsecond', '°', optional),
      number('servo.measuredDegreesPerUs.u', 'Its standard uncertainty', '°', optional),
      number('servo.endPoints.shortUs', 'Short end point', 'µs', optional),
      number('servo.endPoints.longUs', 'Long end point', 'µs', optional),
    ],
  },
  {
    kind: 'controller',
    title: 'Controller',
    fields: [
      text('controller.name', 'Name'),
      number('controller.railSettingV', 'Rail setting', 'V'),
      number('controller.railFloorV', 'Rail floor: receiver minimum and 0.5 V', 'V'),
      number('controller.throttle.lowUs', 'Full brake', 'µs'),
      number('controller.throttle.neutralUs', 'Neutral', 'µs'),
      number('controller.throttle.highUs', 'Full throttle', 'µs'),
    ],
    more: [number('controller.capacitorF', 'All capacitors together', 'µF', { ...optional, scale: 1e6 })],
  },
  {
    kind: 'pack',
    title: 'Pack',
    fields: [
      text('pack.name', 'Name'),
      number('pack.cells', 'Cells'),
      { path: 'pack.chemistry', label: 'Chemistry', kind: 'choice', choices: chemistries },
      number('pack.capacityAh', 'Capacity', 'Ah'),
      number('pack.raceCurrentA', 'Mean current of a race', 'A', optional),
    ],
  },
  {
    kind: 'drive',
    title: 'Drive train',
    fields: [
      number('drive.pinionTeeth', 'Teeth of the pinion', '', optional),
      number('drive.spurTeeth', 'Teeth of the spur', '', optional),
      number('drive.internalRatio', 'Spur turns a wheel turn', '', optional),
      quantity('drive.tyreDiameterM', 'Tyre diameter', 'length', 'mm'),
    ],
  },
  {
    kind: 'radio',
    title: 'Radio',
    fields: [
      number('radio.steering.leftUs', 'Steering fully left', 'µs', optional),
      number('radio.steering.centreUs', 'Wheel let go', 'µs', optional),
      number('radio.steering.rightUs', 'Steering fully right', 'µs', optional),
    ],
  },
];
const jointKinds = [
  ['solder', 'Solder joint'],
  ['bullet', 'Bullet plug'],
  ['plug', 'Plug'],
  ['lead', 'Length of lead'],
] as const;
const jointPath = (index: number, field: string) => `leads.joints.${index}.${field}`;
const wireFields = (index: number): PartField[] => [
  number(jointPath(index, 'gaugeAwg'), 'Gauge', 'AWG', optional),
  quantity(jointPath(index, 'lengthM'), 'Length, with its unit', 'length', 'mm'),
];
/** Only a length of lead has gauge and length. */
const jointFields = (index: number, isLead: boolean): PartField[] => [
  text(jointPath(index, 'name'), 'Name'),
  { path: jointPath(index, 'kind'), label: 'Kind', kind: 'choice', choices: jointKinds },
  ...(isLead ? wireFields(index) : []),
];
/** Those of every car, and one with the joints of this car in the order they are probed. `waiting`: what was typed
 *  and is not in the car yet, by path. */
export function formsOf({ leads }: Car, waiting: Readonly<Record<string, unknown>> = {}): PartForm[] {
  const groups = (leads?.joints ?? []).map(({ kind }, index) => ({
    title: `Joint ${index + 1}`,
    fields: jointFields(index, (waiting[jointPath(index, 'kind')] ?? kind) === 'lead'),
  }));
  return [...partForms, { kind: 'leads', title: 'Leads and joints', fields: [], groups }];
}
const at = (car: object, path: string): unknown =>
  path
    .split('.')
    .reduce<unknown>((inside, key) => (inside as Record<string, unknown> | undefined)?.[key], car);

/** Value at `path` as a field shows it; a quantity as it was typed, if that is still what is stored. */
export function fieldText(car: object, field: PartField, typed?: string): string {
  const value = at(car, field.path);
  if (value === undefined) return '';
  if (typeof value !== 'number') return String(value);
  if (field.dimension) return quantityText(value, field.dimension, typed);
  return String(Number((value * (field.scale ?? 1)).toPrecision(12)));
}
function quantityText(si: number, dimension: Dimension, typed: string | undefined): string {
  const read = typed === undefined ? null : typedQuantity(typed, dimension);
  if (typed !== undefined && read?.ok && Math.abs(read.si - si) <= 1e-9 * Math.abs(si)) return typed;
  if (dimension === 'length') return `${Number((si * 1000).toPrecision(4))} mm`;
  const { unit, value } = shownUnit('N.m', si);
  return `${Number(value(si).toPrecision(4))} ${unit}`;
}
/** The same in the other units, for whoever typed another, or in the chosen one, where a label has its own; empty
 *  where there are none. */
export function fieldHint(car: object, { path, dimension, unit = '' }: PartField): string {
  const value = at(car, path);
  if (typeof value !== 'number') return '';
  if (dimension) return otherUnits(value, dimension);
  const chosen = unit.startsWith('rpm') && shownUnit(unit, value).unit !== unit;
  return chosen ? liveFigure(value, unit) : '';
}
export type FieldRead =
  { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly words: string };

/** What the person typed, as the car stores it; not-a-number stays so that the schema can say what is needed. */
export function fieldRead(field: PartField, text: string): FieldRead {
  const empty = text.trim() === '';
  if (empty && field.optional) return { ok: true, value: undefined };
  if (field.dimension) {
    const read = typedQuantity(text, field.dimension);
    return read.ok ? { ok: true, value: read.si } : read;
  }
  if (field.kind !== 'number') return { ok: true, value: text };
  const number = empty ? Number.NaN : Number(text.replace(',', '.'));
  return { ok: true, value: Number((number / (field.scale ?? 1)).toPrecision(12)) };
}
