// SPDX-License-Identifier: MIT
// What a run has learnt goes into the car it was learnt on, into no other, and not twice.
import { describe, expect, it } from 'vitest';
import { keptRecord } from './kept-run-fixture.ts';
import { offerOf } from './run-proposal.ts';
import { marmot } from './shelf.svelte.ts';

/** A record of winding-balance whose mean is 13.4 mohm. */
function windingRecord(u = 0.0003): string {
  const record = JSON.parse(keptRecord({ value: 0.0134 }));
  record.check = 'winding-balance';
  record.findings[0] = { ...record.findings[0], id: 'winding-mean', u };
  return JSON.stringify(record);
}
describe('the proposal of a run', () => {
  it('is none where the check proposes nothing, or the figure is too loose', () => {
    expect(offerOf(keptRecord(), marmot)).toBeNull();
    expect(offerOf(windingRecord(0.01), marmot)).toBeNull();
  });
  it('is none for another car or another motor', () => {
    expect(offerOf(windingRecord(), { ...marmot, name: 'Vole' })).toBeNull();
    expect(offerOf(windingRecord(), { ...marmot, motor: { ...marmot.motor, name: 'spare' } })).toBeNull();
  });
  it('brings the car with it, and then is held', () => {
    const offer = offerOf(windingRecord(), marmot)!;
    expect(offer.words).toMatch(/Take 13\.40 mΩ/);
    expect(offer.car?.motor).toEqual({ ...marmot.motor, windingOhm: { ohm: 0.0134, u: 0.0003 } });
    expect(offerOf(windingRecord(), offer.car!)?.car).toBeNull();
  });
  it('says why it does not fit', () => {
    const broken = { ...marmot, controller: { ...marmot.controller, railSettingV: -1 } };
    expect(offerOf(windingRecord(), broken)).toMatchObject({
      car: null,
      trouble: /^It does not fit the car: ./ as never,
    });
  });
});
