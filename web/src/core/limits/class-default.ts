// SPDX-License-Identifier: MIT
// From the rows of the class data to the limit of one car: picks the part's class and fills in what the bounds are
// multiples of. It knows the rows and the parts, no check.
import type { Car } from '../parts/part.ts';
import type { Limit } from '../verdicts/limit.ts';
import { classRows, type ClassRow } from './class-data.ts';
import { noLoadV } from './no-load-voltage.ts';
import type { Unusable } from './precedence.ts';
import { scaledNoLoad, scaledRating, type RatingAt, type Scaled } from './rating-scaling.ts';
import { electricalFloorA } from './servo-ratings.ts';

export function classDefault(key: string, car: Car): Limit | undefined {
  const row = rowOf(key, car);
  const base = row && baseOf(row, car);
  if (!row || base === undefined) return undefined;
  const limit: Limit = {
    ...(row.min !== undefined && { min: row.min * base }),
    ...(row.max !== undefined && { max: row.max * base }),
    unit: row.unit,
    kind: 'common practice',
    source: `${row.partClass}: ${row.condition}; ${row.mark}`,
  };
  if (isServoClass(row)) return carried(limit, scaledRating('current', [atClassV], car.servo.ratedVoltageV));
  if (row.result === 'motor-no-load/no-load-current')
    return carried(limit, scaledNoLoad(atClassV, noLoadV(car)));
  return watched(limit, row, car, base);
}
/** The row of the car's part class; for a motor of more turns than any class, the last one. */
export function rowOf(key: string, car: Car): ClassRow | undefined {
  const rows = classRows.filter(({ result }) => result === key);
  if (rows.some(({ upToTurns }) => upToTurns !== undefined))
    return rows.find(({ upToTurns }) => car.motor.turns <= (upToTurns ?? 0)) ?? rows.at(-1);
  if (rows.some(({ chemistry }) => chemistry !== undefined))
    return rows.find(({ chemistry }) => chemistry === car.pack.chemistry);
  if (!rows.some(isServoClass)) return rows[0];
  if (electricalFloorA(car.servo) !== undefined) return rows.find(({ of }) => of === 'electrical floor');
  return rows.find(({ partClass }) => partClass === car.servo.size);
}
const isServoClass = ({ partClass }: ClassRow): boolean =>
  partClass === 'standard' || partClass === 'low-profile';

function baseOf({ of }: ClassRow, { motor, servo, controller, pack }: Car): number | undefined {
  if (of === 'rail setting') return controller.railSettingV;
  if (of === 'receiver floor') return controller.railFloorV;
  if (of === 'one over turns') return 1 / motor.turns;
  if (of === 'turns squared') return motor.turns ** 2;
  if (of === 'cells') return pack.cells;
  return of === 'electrical floor' ? electricalFloorA(servo) : 1;
}
function watched(limit: Limit, row: ClassRow, { controller }: Car, base: number): Limit {
  const { watchBelowSetting, watchMin = 0, watchMax } = row;
  const warnMin = Math.max((watchBelowSetting ?? 0) * controller.railSettingV, watchMin * base);
  return {
    ...limit,
    ...(warnMin > (limit.min ?? Number.POSITIVE_INFINITY) && { warnMin }),
    ...(watchMax !== undefined && { warnMax: watchMax * base }),
  };
}
/** Classes of servos and no-load currents are told at 7.4 V; carried to the voltage the result is given at, or none. */
const atClassV: RatingAt = { value: 1, atV: 7.4 };
function carried(limit: Limit, factor: Scaled | Unusable): Limit | undefined {
  if ('unusable' in factor) return undefined;
  const times = (bound: number | undefined) => bound && bound * factor.value;
  return {
    ...limit,
    ...(limit.min !== undefined && { min: times(limit.min) }),
    ...(limit.max !== undefined && { max: times(limit.max) }),
    ...(factor.share > 0 && {
      source: `${limit.source}, ${factor.words}`,
      doubt: { words: 'carrying the class to another voltage', share: factor.share },
    }),
  };
}
