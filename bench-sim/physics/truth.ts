// SPDX-License-Identifier: MIT
// The true value of every result the plant can speak for, by result id. Each definition stands in README.md
// beside this file; a check that means another measurand must correct for the difference.
import { controlTruth } from './control-truth.ts';
import { linkageTruth, scrubTruth } from './linkage-truth.ts';
import { motorTruth } from './motor-truth.ts';
import type { CarParameters } from './parameters.ts';
import type { Radio } from './radio.ts';
import type { RailEvents } from './rail-events.ts';
import type { ScrubWatch } from './scrub-watch.ts';
import type { Servo } from './servo.ts';
import type { ServoRest } from './servo-rest.ts';
import type { ServoSweep } from './servo-sweep.ts';
import { servoTruth } from './servo-truth.ts';
import type { Pack } from './pack.ts';
import { kvRpmPerV, noLoad, railSourceOhm, railV, stallA } from './steady-state.ts';
import { supplyTruth } from './supply-truth.ts';
import type { Warmth } from './warmth.ts';

interface Reached {
  readonly car: CarParameters;
  readonly pack: Pack;
  readonly bank: { readonly conductanceS: readonly number[] };
  readonly servo: Servo;
  readonly scrub: ScrubWatch;
  readonly rest: ServoRest;
  readonly sweep: ServoSweep;
  readonly warmth: Warmth;
  readonly events: RailEvents;
  readonly radio: Radio;
}

type Truths = (plant: Reached) => Record<string, number>;
const truths: readonly Truths[] = [
  spineTruth,
  servoTruth,
  controlTruth,
  linkageTruth,
  scrubTruth,
  supplyTruth,
  motorTruth,
];

/** Ids without a value yet (no load step so far) are absent, never guessed. */
export const truthOf = (plant: Reached): Record<string, number> =>
  Object.assign({}, ...truths.map((part) => part(plant))) as Record<string, number>;

function spineTruth(plant: Reached): Record<string, number> {
  const { car, servo, warmth, bank } = plant;
  const spinning = noLoad(car);
  const restV = railV(car, 0);
  return {
    'no-load-current': spinning.currentA,
    'no-load-speed': spinning.speedRpm,
    kv: kvRpmPerV(car.motor),
    'stall-current': stallA(car.servo, servo.pushStartC ?? warmth.servo.innerC),
    'source-resistance': railSourceOhm(car),
    'rail-at-rest': restV,
    'steady-drop': restV - railV(car, bank.conductanceS[7]),
    ...happened(plant.events),
  };
}
function happened(events: RailEvents): Record<string, number> {
  const found: Record<string, number> = {};
  const lowest = events.lowest();
  const step = events.lowestStep();
  if (lowest !== null) found['deepest-dip'] = lowest.lowestV;
  if (step !== null) found['recovery'] = step.outsideUntilS - step.startS;
  return found;
}
