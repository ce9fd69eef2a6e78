// SPDX-License-Identifier: MIT
// Three hidden faults: which may be drawn, that nothing is told before they are shown, and what is said then.
import { describe, expect, it } from 'vitest';
import { faultTable, type Faults } from '#sim/faults/faults';
import { hideableFaults } from './fault-groups.ts';
import { HiddenFaults } from './hidden-faults.svelte.ts';

async function hiding(...chances: number[]) {
  const set: Faults[] = [];
  let turn = 0;
  const hidden = new HiddenFaults(
    (faults) => {
      set.push(faults);
      return Promise.resolve();
    },
    () => chances[turn++ % chances.length],
  );
  await hidden.hide(hideableFaults);
  return { hidden, set };
}

describe('hidden faults', () => {
  it.each([[0], [0.999_999], [0.5], [0.2, 0.9, 0.4]])(
    'draws three different ones by %j',
    async (...chances) => {
      const { set } = await hiding(...chances);
      expect(Object.values(set[0])).toEqual([1, 1, 1]);
      expect(hideableFaults.map(({ name }) => name)).toEqual(expect.arrayContaining(Object.keys(set[0])));
    },
  );
  it('hides only faults of the car that a check must find', () => {
    const names = hideableFaults.map(({ name }) => name as string);
    for (const { name, room, verdict } of faultTable)
      expect(names.includes(name), name).toBe(room !== 'cable' && room !== 'bench' && verdict !== 'pass');
  });
  it('tells found, not found and wrongly suspected only when shown', async () => {
    const { hidden } = await hiding(0);
    const [first, second, third, other] = hideableFaults;
    hidden.suspect(first.name, true);
    hidden.suspect(second.name, true);
    hidden.suspect(second.name, false);
    hidden.suspect(other.name, true);
    expect([hidden.searching, hidden.shown]).toEqual([true, null]);
    hidden.show();
    expect(hidden.searching).toBe(false);
    expect(hidden.shown).toEqual([
      { fault: first, found: true },
      { fault: second, found: false },
      { fault: third, found: false },
    ]);
    expect(hidden.sound).toEqual([other]);
  });
  it('takes them out when it ends', async () => {
    const { hidden, set } = await hiding(0);
    await hidden.end();
    expect([set.at(-1), hidden.searching, hidden.shown]).toEqual([{}, false, null]);
  });
});
