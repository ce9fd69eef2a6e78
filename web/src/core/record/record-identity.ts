// SPDX-License-Identifier: MIT
// The text of a record with the identities of its part and car, and whether two texts are of one run whatever their
// identities. What was kept before parts had identities is never written anew; copies of it carry them.
import { withoutIdentity } from '../parts/identity.ts';
import type { PartKind } from '../parts/part.ts';

interface Carried {
  readonly part: PartKind;
  readonly partId?: string;
  readonly carId?: string;
}
type Loose = Record<string, unknown>;
/** The very text where it carries these already. `text`: a whole record. */
export function withRunIdentity(text: string, { part, partId, carId }: Carried): string {
  const record = JSON.parse(text) as Loose & { car: Loose };
  const { car } = record;
  const entered = car[part] as Loose | undefined;
  const unentered = car.unentered as Loose | undefined;
  const has = entered ? entered.id : unentered?.[part];
  if ((partId === undefined || has === partId) && (carId === undefined || car.id === carId)) return text;
  const named = entered
    ? { [part]: { ...entered, ...(partId !== undefined && { id: partId }) } }
    : partId !== undefined && { unentered: { ...unentered, [part]: partId } };
  return JSON.stringify({ ...record, car: { ...car, ...named, ...(carId !== undefined && { id: carId }) } });
}
/** As it would be without identities: equal for copies of one run. */
export function plainRun(text: string): string {
  const record = JSON.parse(text) as Loose;
  return JSON.stringify({ ...record, car: withoutIdentity(record.car) });
}
export const isSameRun = (a: string, b: string): boolean => a === b || plainRun(a) === plainRun(b);
