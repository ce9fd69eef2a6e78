// SPDX-License-Identifier: MIT
// Which errors of a result stay with the rig from run to run: gain, offset, shunt, reference, bow, thermistor, clock.
// Zero drift, noise and rounding come anew with each run. It knows a budget's words only.
import type { BudgetLine } from './measurement.ts';

const ofTheRig = new RegExp(
  [
    '^(?:gain|offset|resistance at 25 °?C|pull-up|B value|bend from the B equation) of ',
    '^\\w+ shunt$',
    '^reference voltage$',
    '^bow of ',
    '^converter non-linearity at the reference$',
    "^the rig's clock$",
  ].join('|'),
);
export const staysWithRig = ({ source }: Pick<BudgetLine, 'source'>): boolean => ofTheRig.test(source);
