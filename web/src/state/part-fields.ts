// SPDX-License-Identifier: MIT
// The ratings of each part as form fields: path in the car, label, unit, kind. Which values are allowed is the
// schema's business.
export interface PartField {
  readonly path: string;
  readonly label: string;
  readonly unit?: string;
  readonly kind: 'text' | 'number' | 'choice' | 'yes';
  /** Shown value = stored value x scale; percent fields store fractions. */
  readonly scale?: number;
  readonly optional?: boolean;
  readonly choices?: readonly (readonly [string, string])[];
}
export interface PartForm {
  readonly title: string;
  readonly fields: readonly PartField[];
}
const text = (path: string, label: string): PartField => ({ path, label, kind: 'text' });
const number = (path: string, label: string, unit = '', more: Partial<PartField> = {}): PartField => ({
  path,
  label,
  unit,
  kind: 'number',
  ...more,
});
const percent = { scale: 100 };
const chemistries = [
  ['lipo', 'Lithium polymer'],
  ['liHv', 'Lithium, high voltage'],
  ['lifepo4', 'Lithium iron phosphate'],
  ['nimh', 'Nickel metal hydride'],
] as const;

export const partForms: readonly PartForm[] = [
  {
    title: 'Motor',
    fields: [
      text('motor.name', 'Name'),
      number('motor.turns', 'Turns'),
      number('motor.polePairs', 'Pole pairs'),
      { path: 'motor.sensored', label: 'Has a sensor cable', kind: 'yes' },
      number('motor.ratedKvRpmPerV', 'Rated kV', 'rpm/V'),
      number('motor.ratedKvTolerance', 'Tolerance of kV', '%', percent),
      number('motor.ratedSpeedRpm', 'Rated speed', 'rpm'),
      number('motor.ratedNoLoadA', 'Rated no-load current', 'A', { optional: true }),
    ],
  },
  {
    title: 'Servo',
    fields: [
      text('servo.name', 'Name'),
      { path: 'servo.digital', label: 'Digital', kind: 'yes' },
      number('servo.ratedVoltageV', 'Rated voltage', 'V'),
      number('servo.ratedStallA', 'Rated stall current', 'A', { optional: true }),
      number('servo.ratedStallTolerance', 'Tolerance of stall current', '%', percent),
      number('servo.degreesPerUs', 'Angle per microsecond', '°'),
    ],
  },
  {
    title: 'Controller',
    fields: [
      text('controller.name', 'Name'),
      number('controller.railSettingV', 'Rail setting', 'V'),
      number('controller.railFloorV', 'Rail floor: receiver minimum and 0.5 V', 'V'),
      number('controller.throttle.lowUs', 'Full brake', 'µs'),
      number('controller.throttle.neutralUs', 'Neutral', 'µs'),
      number('controller.throttle.highUs', 'Full throttle', 'µs'),
    ],
  },
  {
    title: 'Pack',
    fields: [
      text('pack.name', 'Name'),
      number('pack.cells', 'Cells'),
      { path: 'pack.chemistry', label: 'Chemistry', kind: 'choice', choices: chemistries },
      number('pack.capacityAh', 'Capacity', 'Ah'),
    ],
  },
];
/** Value at `path` as a field shows it. */
export function fieldText(car: object, field: PartField): string {
  const value = field.path
    .split('.')
    .reduce<unknown>((at, key) => (at as Record<string, unknown>)?.[key], car);
  if (value === undefined) return '';
  if (typeof value !== 'number') return String(value);
  return String(Number((value * (field.scale ?? 1)).toPrecision(12)));
}
/** What the person typed, as the car stores it; not-a-number stays so that the schema can say what is needed. */
export function fieldValue(field: PartField, text: string): unknown {
  if (field.kind !== 'number') return text;
  if (text.trim() === '') return field.optional ? undefined : Number.NaN;
  return Number(text.replace(',', '.')) / (field.scale ?? 1);
}
