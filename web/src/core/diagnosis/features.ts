// SPDX-License-Identifier: MIT
// What of the checks' results speaks about a hot servo, each set against what this very servo should have: a label, a
// setting. A feature is a number on which causes are told apart (mostly a logarithm); a result that is missing or was
// not measured gives none. It knows results by their ids, no check.
import type { Finding } from '../measurements/measurement.ts';
import type { Car } from '../parts/part.ts';

/** The findings of one check that was run. */
export interface CheckFindings {
  readonly check: string;
  readonly findings: readonly Finding[];
}
export const featureIds = [
  'rest-current',
  'hunting-current',
  'moving-current',
  'sweep-current',
  'tight-spot',
  'speed',
  'stall-current',
  'rail-voltage',
  'rail-resistance',
  'scrub-share',
  'scrub-hold',
  'scrub-drop',
  'left-right',
  'stop-met',
] as const;
export type FeatureId = (typeof featureIds)[number];
export interface Feature {
  readonly id: FeatureId;
  readonly check: string;
  readonly title: string;
  /** Null where the checks so far do not tell it. */
  read(found: Found, car: Car): number | null;
  /** The feature's number in words and units of the bench. */
  say(value: number): string;
}
/** Value of a result by 'check/result', null where it was not measured; why not, where that tells something. */
export interface Found {
  value(key: string): number | null;
  reason(key: string): string | null;
}
export function foundIn(runs: readonly CheckFindings[]): Found {
  const all = new Map<string, Finding>(
    runs.flatMap(({ check, findings }) =>
      findings.map((finding) => [`${check}/${finding.id}`, finding] as const),
    ),
  );
  return {
    value: (key) => {
      const finding = all.get(key);
      return finding?.measured && Number.isFinite(finding.value) ? finding.value : null;
    },
    reason: (key) => {
      const finding = all.get(key);
      return finding && !finding.measured ? finding.reason : null;
    },
  };
}
/** Currents below this are one: noise and the zero of the tap. */
const leastA = 0.003;
const logOf = (amps: number): number => Math.log(Math.max(leastA, amps));
const logValue = (key: string) => (found: Found) => {
  const value = found.value(key);
  return value === null ? null : logOf(value);
};
/** ln(result over what the label or the setting says). */
const logRatio = (key: string, reference: (car: Car) => number | undefined) => (found: Found, car: Car) => {
  const [value, of] = [found.value(key), reference(car)];
  return value === null || of === undefined || value <= 0 ? null : Math.log(value / of);
};
const say = (unit: string, digits: number) => (log: number) => `${Math.exp(log).toFixed(digits)} ${unit}`;
const sayShare = (of: string) => (log: number) => `${(100 * Math.exp(log)).toFixed(0)} % of ${of}`;

const rows: Readonly<Record<FeatureId, Omit<Feature, 'id'>>> = {
  'rest-current': {
    check: 'servo-idle',
    title: 'current at rest',
    read: logValue('servo-idle/centre-current'),
    say: say('A', 3),
  },
  'hunting-current': {
    check: 'servo-idle',
    title: 'alternating current at rest',
    read: logValue('servo-idle/hunting-current'),
    say: say('A', 3),
  },
  'moving-current': {
    check: 'servo-no-load',
    title: 'current moving free',
    read: logValue('servo-no-load/moving-current'),
    say: say('A', 2),
  },
  'sweep-current': {
    check: 'servo-no-load',
    title: 'current of a slow sweep',
    read: logValue('servo-no-load/sweep-current'),
    say: say('A', 3),
  },
  'tight-spot': {
    check: 'servo-no-load',
    title: 'tightest place against the middle',
    read: logValue('servo-no-load/tight-spot'),
    say: say('times', 1),
  },
  speed: {
    check: 'servo-speed',
    title: 'time for 60 degrees at rated voltage',
    read: logRatio('servo-speed/time-per-60-rated', ({ servo }) => servo.ratedSecondsPer60),
    say: sayShare("the label's"),
  },
  'stall-current': {
    check: 'servo-stall',
    title: 'stall current',
    read: logRatio('servo-stall/stall-current', ({ servo }) => servo.ratedStallA),
    say: sayShare("the label's"),
  },
  'rail-voltage': {
    check: 'rail-setting',
    title: 'rail against what the servo is rated for',
    read: logRatio('rail-setting/rail-setting', ({ servo }) => servo.ratedVoltageV),
    say: sayShare("the servo's rated voltage"),
  },
  'rail-resistance': {
    check: 'rail-sag',
    title: 'source resistance of the rail',
    read: (found) => {
      const ohm = found.value('rail-sag/source-resistance');
      return ohm === null ? null : Math.log(Math.max(ohm, 1e-3) * 1e3);
    },
    say: say('mohm', 0),
  },
  'scrub-share': {
    check: 'servo-scrub',
    title: 'current on its tyres',
    read: (found) => {
      const share = found.value('servo-scrub/scrub-share');
      return share === null ? null : Math.log(Math.max(0.5, share) / 100);
    },
    say: sayShare('the stall current'),
  },
  'scrub-hold': {
    check: 'servo-scrub',
    title: 'holding current at lock on its tyres',
    read: logValue('servo-scrub/scrub-hold'),
    say: say('A', 2),
  },
  'scrub-drop': {
    check: 'servo-scrub',
    title: 'dip of the rail while it works',
    read: (found, { controller }) => {
      const lowest = found.value('servo-scrub/scrub-dip');
      const rail = found.value('rail-setting/rail-setting') ?? controller.railSettingV;
      return lowest === null ? null : (rail - lowest) / rail;
    },
    say: (share) => `${(100 * Math.max(0, share)).toFixed(1)} %`,
  },
  'left-right': {
    check: 'servo-end-points',
    title: 'travel to the left over travel to the right',
    read: (found) => {
      const [left, right] = ['left', 'right'].map((side) => found.value(`servo-end-points/travel-${side}`));
      return left === null || right === null ? null : Math.log(left / right);
    },
    say: (log) => `${Math.exp(log).toFixed(2)} times`,
  },
  'stop-met': {
    check: 'servo-end-points',
    title: 'the stops of the steering',
    read: (found) => {
      const ends = ['left', 'right'].map((side) => `servo-end-points/end-point-${side}`);
      if (ends.some((key) => found.reason(key)?.startsWith('No stop was met'))) return 0;
      return ends.every((key) => found.value(key) !== null) ? 1 : null;
    },
    say: (met) => (met > 0.5 ? 'met on both sides' : 'not met: the horn gave way'),
  },
};
export const features: readonly Feature[] = featureIds.map((id) => ({ id, ...rows[id] }));

export type Features = Readonly<Partial<Record<FeatureId, number>>>;
/** What the runs tell; a feature they do not tell is absent. */
export function featuresOf(runs: readonly CheckFindings[], car: Car): Features {
  const found = foundIn(runs);
  const read = features.flatMap((feature) => {
    const value = feature.read(found, car);
    return value === null ? [] : [[feature.id, value] as const];
  });
  return Object.fromEntries(read);
}
