// SPDX-License-Identifier: MIT
// What two cars differ in, in the words of the shelf's form: for a person who must choose between them. Pure.
import { withoutIdentity } from '#core/parts/identity';
import type { Car } from '#core/parts/part';
import { fieldText, partForms, type PartField } from './part-fields.ts';

export interface CarDifference {
  readonly what: string;
  readonly mine: string;
  readonly theirs: string;
}
const none = 'not entered';
/** No figures of one field: told as a whole. */
const lists = [
  ['setUp', 'Set-up by date'],
  ['overrides', 'Own limits'],
  ['baselines', 'Limits from first runs'],
] as const;

export function carDifferences(mine: Car, theirs: Car): CarDifference[] {
  const fields = partForms.flatMap(({ title, fields: first, more = [] }) =>
    [...first, ...more].flatMap((field) => differing(mine, theirs, field, title)),
  );
  const name: PartField = { path: 'name', label: 'Name of the car', kind: 'text' };
  const told = [...differing(mine, theirs, name, ''), ...fields];
  return [...told, ...listDifferences(mine, theirs)];
}
function differing(mine: Car, theirs: Car, field: PartField, title: string): CarDifference[] {
  const [here, there] = [mine, theirs].map((car) => shown(car, field));
  if (here === there) return [];
  return [
    {
      what: title ? `${title}, ${field.label[0].toLowerCase()}${field.label.slice(1)}` : field.label,
      mine: here,
      theirs: there,
    },
  ];
}
function shown(car: Car, field: PartField): string {
  const text = fieldText(car, field);
  if (text === '') return none;
  const chosen = field.choices?.find(([value]) => value === text)?.[1];
  const yes = field.kind === 'yes' ? (text === 'true' ? 'yes' : 'no') : null;
  return chosen ?? yes ?? (field.kind === 'number' && field.unit ? `${text}\u00a0${field.unit}` : text);
}
function listDifferences(mine: Car, theirs: Car): CarDifference[] {
  const same = (a: unknown, b: unknown) =>
    JSON.stringify(withoutIdentity(a)) === JSON.stringify(withoutIdentity(b));
  const count = (list: readonly unknown[] | undefined) => (list?.length ? `${list.length} entries` : none);
  const differ = lists
    .filter(([key]) => !same(mine[key], theirs[key]))
    .map(([key, what]) => ({ what, mine: count(mine[key]), theirs: count(theirs[key]) }));
  const joints = (car: Car) => count(car.leads?.joints);
  return same(mine.leads?.joints, theirs.leads?.joints)
    ? differ
    : [...differ, { what: 'Leads and joints', mine: joints(mine), theirs: joints(theirs) }];
}
