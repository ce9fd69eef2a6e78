// SPDX-License-Identifier: MIT
// A servo's horn read with a protractor: what such a reading is off by, and degrees a microsecond from two of them.
// It asks nobody and moves nothing.
import { combined, uncertain, type Quantity } from '#core/measurements/quantity';
import { rectangular, typeB, type Line } from '#core/measurements/tap-errors';
import { NotMeasurable } from '#core/measurements/tap-reading';

/** Read to half a degree, the eye straight above (from memory). */
const readDegrees = 0.5;
/** The protractor's zero, the same in all readings of a run. */
const zeroDegrees = 0.5;
/** A servo comes to rest anywhere inside its dead band (0.2 to 0.5 degrees, from memory). */
const restDegrees = 0.5;
const fewestDegrees = 5;
const origin = 'from memory';

export const hornReading = (name: string, degrees: number): Quantity =>
  uncertain(degrees, [
    readLine(name),
    [typeB('protractor zero', "the protractor's zero", origin), rectangular(zeroDegrees)],
  ]);

const readLine = (name: string): Line => [
  typeB(`read ${name}`, `reading of the protractor, ${name}`, origin),
  rectangular(readDegrees),
];
const restLine = (name: string): Line => [
  typeB(`rest ${name}`, `where the servo comes to rest, ${name}`, origin),
  rectangular(restDegrees),
];
/** Signed: positive where the reading grows with the pulse. `look` tells two pairs of readings of one run apart.
 *  Throws NotMeasurable when the horn hardly turned. */
export function degreesPerUs(first: Quantity, second: Quantity, apartUs: number, look = ''): Quantity {
  const turned = second.value - first.value;
  if (Math.abs(turned) < fewestDegrees)
    throw new NotMeasurable(
      `The horn turned by only ${turned.toFixed(1)} degrees for ${apartUs} µs. Look at the servo's plug and at both readings, then run again.`,
    );
  const rests = ['first', 'second'].map((name) => uncertain(0, [restLine(`${name}${look}`)]));
  return combined([first, second, ...rests], (a, b, restA, restB) => (b + restB - a - restA) / apartUs);
}
