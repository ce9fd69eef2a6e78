// SPDX-License-Identifier: MIT
// Deliberate faults in what checks make of readings. Data; run.ts puts them in.
import { core, within, type Mutation } from './mutation.ts';

const noLoad = within(`${core}/limits`, 'no-load-voltage.ts', 'web/src/checks/motor-no-load');
const motor = within('web/src/checks/motor-no-load', 'analysis.ts');
const turning = within('web/src/checks', 'motor-step.ts', 'web/src/checks/motor-no-load');
const stall = within('web/src/checks/servo-stall', 'analysis.ts');
const drop = within('web/src/checks/rail-sag', 'steady-drop.ts');
const slope = within('web/src/checks', 'resistance-line.ts', 'web/src/checks/rail-sag');
const wave = within('web/src/checks', 'burst-wave.ts', 'web/src/checks/rail-sag');
const recovery = within('web/src/checks/rail-sag', 'recovery.ts');

export const checkMutations: readonly Mutation[] = [
  {
    words: 'kV without the drop over the resistance',
    ...motor,
    find: 'n / (v - i * r)',
    put: 'n / v',
  },
  {
    words: 'pole pairs ignored',
    ...turning,
    find: '((turns / spanS) * 60) / car.motor.polePairs',
    put: '(turns / spanS) * 60',
  },
  {
    words: 'heat corrected the wrong way',
    ...motor,
    find: '1 - fluxPerK * warmK',
    put: '1 + fluxPerK * warmK',
  },
  {
    words: 'pack current taken for motor current at part throttle',
    ...motor,
    find: 'combined([upper.volts, upper.driveA, upper.rpm, ohm, kv], motorCurrent)',
    put: 'upper.driveA',
  },
  {
    words: 'the clock fit not applied to the speed',
    ...turning,
    find: '(edges[2 * turns] - edges[0]) * samples.clock.ratio',
    put: '(edges[2 * turns] - edges[0])',
  },
  {
    words: 'stall current not taken back to the moment of stall',
    ...stall,
    find: '(ratedVoltageV * ratio) / r',
    put: 'ratedVoltageV / r',
  },
  {
    words: 'stall current at the voltage of the day',
    ...stall,
    find: 'const { ratedVoltageV } = input.car.servo;',
    put: 'const ratedVoltageV = 6.6;',
  },
  {
    words: 'source resistance with the wrong sign',
    ...slope,
    find: 'uncertain(-slope, [',
    put: 'uncertain(slope, [',
  },
  {
    words: 'drop summed over the passes, not averaged',
    ...drop,
    find: 'const share = 1 / steps.length;',
    put: 'const share = 1;',
  },
  {
    words: 'recovery to 20 %',
    ...recovery,
    find: 'const recoveredShare = 0.02;',
    put: 'const recoveredShare = 0.2;',
  },
  {
    words: 'the highest value taken for the dip',
    ...wave,
    find: '(v < wave[least] ? k : least)',
    put: '(v > wave[least] ? k : least)',
  },
  {
    words: 'a label used that the pack is far from',
    ...noLoad,
    find: 'noLoadReach(nominalV / labelV)',
    put: 'true',
  },
  {
    words: 'recovery without the exponential between two samples',
    ...recovery,
    find: '(intervalS * Math.log(here / bandV)) / Math.log(here / next)',
    put: 'intervalS',
  },
  {
    words: 'recovery counted from the marked sample instead of the step',
    ...recovery,
    find: 'k * intervalS - stepAfterSample.meanS',
    put: 'k * intervalS',
  },
  {
    words: 'stall current with what flows at rest left in',
    ...stall,
    find: '(v - r * i) / (i - other)',
    put: '(v - r * i) / i',
  },
  {
    words: 'the bend of drag taken away with the wrong sign',
    ...motor,
    find: '(rpm - low) * (high - rpm)',
    put: '(rpm - low) * (rpm - high)',
  },
];
