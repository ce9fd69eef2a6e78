// SPDX-License-Identifier: MIT
// The car's form: what is wrong stays beside its field, units as typed, groups of figures that need each other, doubts.
import { describe, expect, it } from 'vitest';
import { withoutIdentity } from '#core/parts/identity';
import { oneLess, oneMore } from './joints.ts';
import { fieldHint, fieldRead, fieldText, formsOf, partForms, type PartField } from './part-fields.ts';
import { marmot, Shelf } from './shelf.svelte.ts';

function memory() {
  const kept = new Map<string, string>();
  return {
    getItem: (at: string) => kept.get(at) ?? null,
    setItem: (at: string, value: string) => void kept.set(at, value),
  };
}
const fields = partForms.flatMap(({ fields: all, more = [] }) => [...all, ...more]);
const field = (path: string): PartField => fields.find((each) => each.path === path)!;
function type(shelf: Shelf, path: string, text: string): void {
  const read = fieldRead(field(path), text);
  if (read.ok) shelf.edit(path, read.value, field(path).dimension ? text : undefined);
  else shelf.refuse(path, read.words);
}
const shown = (shelf: Shelf, path: string) => fieldText(shelf.car, field(path), shelf.typed(path));

describe('a field', () => {
  it.each([
    ['motor.turns', 'many', /turns: a number in turns is needed/],
    ['motor.ratedNoLoadAtV', '-7', /must be more than 0 V/],
    ['servo.ratedTorqueNm', '12', /12 has no unit.*oz·in/],
    ['servo.ratedTorqueNm', '12 mph', /is a unit of speed, not of torque/],
    ['servo.secondRating.voltageV', '6', /needs a stall current, a torque or a time/],
  ])('%s of "%s" keeps the car and says why', (path, text, words) => {
    const shelf = new Shelf(memory());
    type(shelf, path, text);
    expect(shelf.error(path)).toMatch(words);
    expect(withoutIdentity(shelf.car)).toEqual(marmot);
  });
  it('shows a quantity as it was typed, and in the other units', () => {
    const place = memory();
    type(new Shelf(place), 'servo.ratedTorqueNm', '12 kg.cm');
    const shelf = new Shelf(place);
    expect(shelf.car.servo.ratedTorqueNm).toBeCloseTo(1.1768, 5);
    expect(shown(shelf, 'servo.ratedTorqueNm')).toBe('12 kg.cm');
    expect(fieldHint(shelf.car, field('servo.ratedTorqueNm'))).toMatch(
      /^1\.18\u00a0N·m, 118\u00a0N·cm, 167\u00a0oz·in/,
    );
    shelf.edit('servo.ratedTorqueNm', 2);
    expect(shown(shelf, 'servo.ratedTorqueNm')).toBe('200 N·cm');
  });
  it('waits for the others of its group, and leaves with the last of them', () => {
    const shelf = new Shelf(memory());
    type(shelf, 'servo.secondRating.voltageV', '6');
    type(shelf, 'servo.secondRating.stallA', '2.9');
    expect(shelf.car.servo.secondRating).toEqual({ voltageV: 6, stallA: 2.9 });
    expect(shelf.error('servo.secondRating.voltageV')).toBeUndefined();
    for (const path of ['stallA', 'voltageV']) type(shelf, `servo.secondRating.${path}`, '');
    expect(shelf.car.servo.secondRating).toBeUndefined();
  });
  it('of a part that nobody entered yet makes the part once it is whole', () => {
    const shelf = new Shelf(memory());
    type(shelf, 'drive.pinionTeeth', '21');
    type(shelf, 'drive.spurTeeth', '69');
    type(shelf, 'drive.internalRatio', '2.6');
    expect(shelf.car.drive).toBeUndefined();
    type(shelf, 'drive.tyreDiameterM', '3.2 in');
    expect(shelf.car.drive).toMatchObject({ kind: 'drive', pinionTeeth: 21 });
    expect(shelf.car.drive!.tyreDiameterM).toBeCloseTo(0.08128, 9);
  });
  it('of a joint: added, told to be a lead once its gauge and length are there, taken out', () => {
    const shelf = new Shelf(memory());
    for (let time = 0; time < 2; time++) shelf.edit('leads.joints', oneMore(shelf.car));
    expect(shelf.car.leads?.joints?.map(({ name }) => name)).toEqual(['joint 1', 'joint 2']);
    shelf.edit('leads.joints.1.kind', 'lead');
    expect(shelf.error('leads.joints.1.kind')).toMatch(/a lead needs its gauge \(AWG\) and its length/);
    const asked = formsOf(shelf.car, shelf.waiting)
      .at(-1)!
      .groups!.map(({ fields: each }) => each.length);
    expect(asked, 'gauge and length of the lead alone').toEqual([2, 4]);
    shelf.edit('leads.joints.1.gaugeAwg', 12);
    shelf.edit('leads.joints.1.lengthM', 0.1);
    expect(shelf.car.leads?.joints?.[1]).toEqual({
      name: 'joint 2',
      kind: 'lead',
      gaugeAwg: 12,
      lengthM: 0.1,
    });
    for (let time = 0; time < 2; time++) shelf.edit('leads.joints', oneLess(shelf.car));
    expect(shelf.car.leads).toBeUndefined();
  });
  it('that waits does not hold up others', () => {
    const shelf = new Shelf(memory());
    type(shelf, 'servo.secondRating.voltageV', '6');
    type(shelf, 'motor.turns', '17.5');
    expect(shelf.car.motor.turns).toBe(17.5);
    expect(shelf.error('servo.secondRating.voltageV')).toBeDefined();
  });
  it('that is allowed and unusual is doubted, not refused', () => {
    const shelf = new Shelf(memory());
    type(shelf, 'motor.ratedKvRpmPerV', '290');
    expect(shelf.car.motor.ratedKvRpmPerV).toBe(290);
    expect(shelf.doubt('motor.ratedKvRpmPerV')).toMatch(/^kV of 290 rpm\/V is unusual/);
    type(shelf, 'motor.ratedKvRpmPerV', '2900');
    expect(shelf.doubt('motor.ratedKvRpmPerV')).toBeUndefined();
  });
});
it('own limits come back when the virtual rig draws its car anew', () => {
  const shelf = new Shelf(memory());
  const own = {
    checkResultId: 'motor-no-load/no-load-current',
    max: 3.3,
    reason: 'as found on my track',
    date: '2026-11-27',
  };
  shelf.replace({ ...marmot, overrides: [own] });
  shelf.adopt({ ...marmot, name: 'Marmot no. 8' });
  expect(shelf.car.overrides).toBeUndefined();
  shelf.adopt(marmot);
  expect(shelf.car.overrides).toEqual([own]);
});
