// SPDX-License-Identifier: MIT
// From evidence to judged findings, the same for a run that just ended and for its record: the check's analysis, what
// calibrations that are old or missing mean for each result, and its verdicts. It knows no check by name.
import { calibrationNotes } from '../calibration/calibration-notes.ts';
import { withLine } from '../calibration/adoption.ts';
import { expectedCalibration } from '../calibration/expected-calibration.ts';
import { usualMeter, type Meter } from '../calibration/meter.ts';
import type { Finding } from '../measurements/measurement.ts';
import type { Car } from '../parts/part.ts';
import type { RigDescription } from '../samples/rig-description.ts';
import type { SampleStore } from '../samples/sample-store.ts';
import { judgeAll, overallVerdict } from '../verdicts/judge.ts';
import type { Judged, Limit, VerdictWord } from '../verdicts/limit.ts';

/** What of a check is needed to judge. */
export interface Judging {
  analyse(input: {
    evidence: never;
    samples: SampleStore;
    rig: RigDescription;
    car: Car;
  }): readonly Finding[];
  limits(car: Car, rig: RigDescription): Readonly<Record<string, Limit>>;
}
export interface Measuring {
  /** As the check's schema gives it. */
  readonly evidence: unknown;
  readonly samples: SampleStore;
  readonly rig: RigDescription;
  readonly car: Car;
  /** Number of the rig; its own where nobody tells another. */
  readonly rigSerial?: string;
  /** The person's, for what a calibration would bring; a usual one where nobody tells. */
  readonly meter?: Meter;
}
export interface JudgedFindings {
  readonly findings: readonly Finding[];
  readonly judged: readonly Judged[];
  readonly verdict: VerdictWord;
}
export function judgedFindings(check: Judging, run: Measuring): JudgedFindings {
  const { evidence, samples, rig, car, meter = usualMeter } = run;
  const analysed = (of: RigDescription) =>
    check.analyse({ evidence: evidence as never, samples, rig: of, car });
  const expected = remembered((tap) => expectedCalibration(rig, tap, meter));
  const findings = analysed(rig).map((finding) => noted(finding, calibrationNotes(rig, finding, expected)));
  // Gain 1 and offset 0: the values stay, only what is known of them changes.
  const calibrated = remembered((tap) => {
    const line = expected(tap);
    return line ? analysed(withLine(rig, line)) : [];
  });
  const withCalibrated = (tap: string, id: string) => {
    const found = calibrated(tap).find((finding) => finding.id === id);
    return found?.measured ? found : undefined;
  };
  const rigSerial = run.rigSerial ?? rig.store?.serial ?? '';
  const judged = judgeAll(findings, check.limits(car, rig), { rigSerial, withCalibrated });
  return { findings, judged, verdict: overallVerdict(judged) };
}
const noted = (finding: Finding, more: readonly string[]): Finding =>
  finding.measured && more.length > 0 ? { ...finding, notes: [...finding.notes, ...more] } : finding;

function remembered<T>(make: (key: string) => T): (key: string) => T {
  const known = new Map<string, T>();
  return (key) => {
    if (!known.has(key)) known.set(key, make(key));
    return known.get(key) as T;
  };
}
