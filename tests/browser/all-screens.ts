// SPDX-License-Identifier: MIT
// Every screen that an address opens, with a virtual rig connected and runs in the logbook; nothing is run.
import { plans } from '#checks/plans/index';
import { chainPlaces } from '../../web/src/state/chain-places.ts';
import type { OpenPage } from './page-fixture.ts';
import { carOnBench, keepRuns } from './kept-runs.ts';

const record = 'run-1';
export const screens: readonly string[] = [
  'car',
  'car/hand-over',
  ...chainPlaces.map(({ id }) => `car/${id}`),
  'plans',
  ...plans.map(({ id }) => `plans/${id}`),
  'logbook',
  `logbook/${record}`,
  'logbook/no-such-record',
  'shelf',
  'rig',
  'rig/calibrate',
  'run/rail-sag',
  'run/servo-end-points',
  'run/no-such-check',
];
/** One screen of each kind: parts, plans and checks have one component each. */
export const oneOfEach: readonly string[] = [
  'car',
  'car/hand-over',
  'car/motor',
  'plans',
  'plans/hot-servo',
  'logbook',
  `logbook/${record}`,
  'shelf',
  'rig',
  'rig/calibrate',
  'run/rail-sag',
];
/** A person's second visit: the virtual rig is known, six runs of the motor are kept, one failed. */
export async function secondVisit({ page, go }: OpenPage): Promise<void> {
  await page.getByRole('button', { name: 'Try it on the virtual rig' }).click();
  await page.getByRole('link', { name: 'Check the receiver rail' }).waitFor();
  const car = await carOnBench(page);
  const values = [3.0, 3.04, 2.98, 3.02, 3.01, 3.95];
  await keepRuns(
    page,
    values.map((value, k) => ({
      id: `run-${k + 1}`,
      day: k + 1,
      value,
      car,
      verdict: value > 3.9 ? 'fail' : 'pass',
    })),
  );
  await page.reload();
  await go('#/logbook');
  await page.locator('tbody tr').first().waitFor();
  await go('#/car');
  await page.getByRole('link', { name: /^Check the / }).waitFor();
}
