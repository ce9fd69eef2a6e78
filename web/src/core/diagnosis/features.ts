// SPDX-License-Identifier: MIT
// What of the checks' results speaks about a hot servo, each set against what this very servo should have: a label, a
// setting. A feature is a number on which causes are told apart (mostly a logarithm); a result that is missing or was
// not measured gives none. It knows results by their ids, no check.
import type { Finding } from '../measurements/measurement.ts';
import type { Car } from '../parts/part.ts';
import { noStopMet } from './no-stop.ts';

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
  /** Null where the checks so far do not tell it. */
  read(found: Found, car: Car): number | null;
  /** The feature's number in words and units of the bench. */
  say(value: number): string;
  /** A sentence around what `say` gives, its full stop left away. */
  tell(said: string): string;
  /** No value can be told from one below this. */
  readonly least?: number;
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
const sayAmps = (log: number): string =>
  log <= Math.log(leastA) ? `less than ${leastA} A` : say('A', log < Math.log(0.1) ? 3 : 2)(log);
/** Of a current as it is. */
const amps = (key: string) => ({ read: logValue(key), say: sayAmps, least: Math.log(leastA) });
const sayShare = (of: string) => (log: number) => `${(100 * Math.exp(log)).toFixed(0)} % of ${of}`;

const rows: Readonly<Record<FeatureId, Omit<Feature, 'id'>>> = {
  'rest-current': {
    check: 'servo-idle',
    ...amps('servo-idle/centre-current'),
    tell: (said) => `It draws ${said} at rest, its horn free`,
  },
  'hunting-current': {
    check: 'servo-idle',
    ...amps('servo-idle/hunting-current'),
    tell: (said) => `Its current at rest swings by ${said} (r.m.s.)`,
  },
  'moving-current': {
    check: 'servo-no-load',
    ...amps('servo-no-load/moving-current'),
    tell: (said) => `It draws ${said} at full speed, its horn free`,
  },
  'sweep-current': {
    check: 'servo-no-load',
    ...amps('servo-no-load/sweep-current'),
    tell: (said) => `A slow sweep draws ${said} more than rest`,
  },
  'tight-spot': {
    check: 'servo-no-load',
    read: logValue('servo-no-load/tight-spot'),
    say: say('times', 1),
    tell: (said) => `At its tightest place it draws ${said} what it draws along the rest of its travel`,
    least: 0,
  },
  speed: {
    check: 'servo-speed',
    read: logRatio('servo-speed/time-per-60-rated', ({ servo }) => servo.ratedSecondsPer60),
    say: sayShare('the time on its label'),
    tell: (said) => `For 60 degrees at its rated voltage it takes ${said}`,
  },
  'stall-current': {
    check: 'servo-stall',
    read: logRatio('servo-stall/stall-current', ({ servo }) => servo.ratedStallA),
    say: sayShare('the current on its label'),
    tell: (said) => `Stalled, it draws ${said}`,
  },
  'rail-voltage': {
    check: 'rail-setting',
    read: logRatio('rail-setting/rail-setting', ({ servo }) => servo.ratedVoltageV),
    say: sayShare("the servo's rated voltage"),
    tell: (said) => `The receiver rail stands at ${said}`,
  },
  'rail-resistance': {
    check: 'rail-sag',
    read: (found) => {
      const ohm = found.value('rail-sag/source-resistance');
      return ohm === null ? null : Math.log(Math.max(ohm, 1e-3) * 1e3);
    },
    say: say('mΩ', 0),
    tell: (said) => `The receiver rail has a source resistance of ${said}`,
  },
  'scrub-share': {
    check: 'servo-scrub',
    read: (found) => {
      const share = found.value('servo-scrub/scrub-share');
      return share === null ? null : Math.log(Math.max(0.5, share) / 100);
    },
    say: sayShare('its stall current'),
    tell: (said) => `To turn the wheels on the ground it draws ${said}`,
  },
  'scrub-hold': {
    check: 'servo-scrub',
    ...amps('servo-scrub/scrub-hold'),
    tell: (said) => `Holding the wheels at lock on the ground it draws ${said}`,
  },
  'scrub-drop': {
    check: 'servo-scrub',
    read: (found, { controller }) => {
      const lowest = found.value('servo-scrub/scrub-dip');
      const rail = found.value('rail-setting/rail-setting') ?? controller.railSettingV;
      return lowest === null ? null : (rail - lowest) / rail;
    },
    say: (share) => `${(100 * Math.max(0, share)).toFixed(1)} %`,
    tell: (said) => `The receiver rail dips by ${said} while the servo works`,
    least: 0,
  },
  'left-right': {
    check: 'servo-end-points',
    read: (found) => {
      const [left, right] = ['left', 'right'].map((side) => found.value(`servo-end-points/travel-${side}`));
      return left === null || right === null ? null : Math.log(left / right);
    },
    say: sayShare('the travel to the right'),
    tell: (said) => `The steering's travel to the left is ${said}`,
  },
  'stop-met': {
    check: 'servo-end-points',
    read: (found) => {
      const ends = ['left', 'right'].map((side) => `servo-end-points/end-point-${side}`);
      if (ends.some((key) => found.reason(key)?.startsWith(noStopMet))) return 0;
      return ends.every((key) => found.value(key) !== null) ? 1 : null;
    },
    say: (met) => (met > 0.5 ? 'a stop on both sides' : 'no stop on one side at least'),
    tell: (said) => `The steering came to ${said}`,
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
