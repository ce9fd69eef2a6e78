// SPDX-License-Identifier: MIT
// A long budget: its small lines stand apart, none is dropped.
import { expect, it } from 'vitest';
import { budgetLine } from '#core/history/history-fixture';
import { budgetRows, parted } from './budget-rows.ts';

const rows = (...us: number[]) =>
  budgetRows(
    us.map((u, k) => budgetLine(`line ${k}`, u)),
    { difference: (x) => x },
  );

it('keeps lines below a hundredth of the variance apart once there are three', () => {
  const all = rows(1, 0.8, 0.01, 0.02, 0.03);
  expect(parted(all).shown.map(({ share }) => share)).toEqual([61, 39]);
  expect(parted(all).small).toHaveLength(3);
  expect(parted(rows(1, 0.8, 0.01, 0.02)).shown).toHaveLength(4);
});
