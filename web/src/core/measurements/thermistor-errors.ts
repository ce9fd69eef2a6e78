// SPDX-License-Identifier: MIT
// The error model of a thermistor tap as named sources: thermistor and pull-up at 25 C, B value, how far such a curve
// bends from the B equation, or the calibration at one temperature. It tells the thermistor's own temperature;
// what it lies against is told in contact-temperature.ts.
import type { RigDescription, Tap } from '../samples/rig-description.ts';
import type { Source } from './quantity.ts';
import { rectangular, typeB, type Line } from './tap-errors.ts';

const kelvinAtZeroC = 273.15;
const t25K = 298.15;
/** K per K squared that makers' tables leave the B equation of 25 and 50 C by: 4.3e-4 to 6.4e-4 from 0 to 100 C in
 *  four tables of 3,380 to 4,250 K (tests/outside), zero at both ends of B. */
const bendPerK2 = 6.5e-4;
const bendEndsC = [25, 50] as const;
/** Where a calibration was made: melting ice, else the room. */
const iceC = 0;
const roomC = 25;

/** What a thermistor's value is off by, in K, at `valueC`. */
export function thermistorLines(rig: RigDescription, tap: Tap, valueC: number): Line[] {
  const kept = rig.store?.calibration.find((line) => line.tap === tap.id);
  if (!kept) return declaredLines(tap, (reach) => reach(valueC));
  const atC = kept.origin.startsWith('ice') ? iceC : roomC;
  const offset: Source = {
    ...typeB(`offset ${tap.id}`, `offset of ${tap.id}`, `calibration of ${kept.date}`),
    shape: 'normal',
  };
  // What was there at the calibration's temperature fell out; what it grew by since is left.
  return [[offset, kept.offsetU / 2], ...declaredLines(tap, (reach) => reach(valueC) - reach(atC))];
}
/** K at a temperature. */
type Reach = (celsius: number) => number;

function declaredLines({ id, error }: Tap, at: (reach: Reach) => number): Line[] {
  const line = (name: string, words: string, reach: Reach): Line => [
    typeB(`${name} ${id}`, `${words} of ${id}`, name === 'bend' ? bendOrigin : 'rig description'),
    rectangular(at(reach)),
  ];
  // The declared offset is of two parts alike, the thermistor at 25 C and its pull-up.
  return [
    line('r25', 'resistance at 25 °C', (c) => (error.offset / 2) * ((c + kelvinAtZeroC) / t25K) ** 2),
    line('pull-up', 'pull-up', (c) => (error.offset / 2) * ((c + kelvinAtZeroC) / t25K) ** 2),
    line('beta', 'B value', (c) => error.gain * ((c + kelvinAtZeroC) / t25K) * (c - bendEndsC[0])),
    line('bend', 'bend from the B equation', (c) => bendPerK2 * (c - bendEndsC[0]) * (c - bendEndsC[1])),
  ];
}
const bendOrigin = "makers' tables of such thermistors";
