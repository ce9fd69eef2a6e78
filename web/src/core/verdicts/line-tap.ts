// SPDX-License-Identifier: MIT
// Which tap a line of a budget is of, by the words that the tap's error model gives it. It knows words only.
import type { BudgetLine } from '../measurements/measurement.ts';

const ofTap = /^(?:gain|offset|resistance at 25 C|pull-up|B value|bend from the B equation) of (\w+)$/;

/** Of gain and zero of a linear tap, or of a thermistor's curve; undefined for any other line. */
export const lineTap = ({ source }: BudgetLine): string | undefined => ofTap.exec(source)?.[1];

/** The same for a tap without a calibration. */
export const declaredTap = (line: BudgetLine): string | undefined =>
  line.origin.startsWith('calibration') ? undefined : lineTap(line);
