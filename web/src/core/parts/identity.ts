// SPDX-License-Identifier: MIT
// Which part a run, a baseline or a repair is of. A part has an identity that stays when it is renamed or moved; what
// is from before there were any goes by the name. An identity is any text: only sameness counts. Pure.
import { z } from 'zod';

export const identitySchema = z
  .string({ error: 'an identity is text' })
  .min(1, 'an identity is not empty: leave it out')
  .max(200, 'an identity has at most 200 letters');

export interface PartRef {
  /** As it was called then. */
  readonly partName: string;
  readonly partId?: string;
}
export interface CarRef {
  readonly name: string;
  readonly id?: string;
}
/** By identity where both have one, else by name. */
export const isOfPart = (of: PartRef, part: PartRef): boolean =>
  of.partId !== undefined && part.partId !== undefined
    ? of.partId === part.partId
    : of.partName === part.partName;
export const isSameCar = (a: CarRef, b: CarRef): boolean =>
  a.id !== undefined && b.id !== undefined ? a.id === b.id : a.name === b.name;

const marks = ['id', 'partId', 'unentered'];
/** A copy of a car, a part or a list of them that holds what is entered of it, and no identity. */
export function withoutIdentity<T>(value: T): T {
  if (Array.isArray(value)) return value.map(withoutIdentity) as T;
  if (typeof value !== 'object' || value === null) return value;
  const kept = Object.entries(value).filter(([key]) => !marks.includes(key));
  return Object.fromEntries(kept.map(([key, each]) => [key, withoutIdentity(each as unknown)])) as T;
}
