// SPDX-License-Identifier: MIT
// `node --import tsx bench-sim/harness/end-stops.ts [SEEDS] [FIRST]`: servo-end-points on the emulated firmware, one
// car a seed with two looks with the wheels on: how long in all the linkage was pressed against its stops, as the plant
// counts it, and how far either end point that was found lies from the true one.
import type { Check } from '#checks/check';
import { servoEndPoints } from '#checks/servo-end-points/check';
import { runCheck } from '#session/check-runner';
import type { CarPlant } from '#sim/physics/whole-plant';
import type { Plant } from '#sim/wiring/plant';
import { openVirtual } from './bench-place.ts';
import { seedOf } from './command-arguments.ts';
import { table } from './run-table.ts';

const [seeds, first] = [seedOf(process.argv[2] ?? '8'), seedOf(process.argv[3] ?? '1')];
const ends = ['end-point-left', 'end-point-right'] as const;
interface Outcome {
  readonly seed: number;
  readonly digital: boolean;
  readonly verdict: string;
  readonly pressedS: number;
  /** Null where it was not measured. */
  readonly errorsUs: readonly (number | null)[];
}
async function outcomeOf(seed: number): Promise<Outcome> {
  let plant: CarPlant | undefined;
  const around = (bare: Plant): Plant => (plant = bare as CarPlant);
  const { session, car, hands, virtual } = await openVirtual(seed, {}, { around });
  const label = { id: `end stops ${seed}`, startedAt: new Date().toISOString(), tool: 'study' };
  const { record } = await runCheck(session, servoEndPoints as Check, { car, label, ask: hands });
  await session.close();
  const truth = virtual.truth();
  const errorsUs = ends.map((id) => {
    const finding = record.findings.find((one) => one.id === id);
    return finding?.measured ? finding.value - truth[id] : null;
  });
  const { digital } = car.servo;
  return { seed, digital, verdict: record.verdict, pressedS: plant!.servo.linkage.pressedS, errorsUs };
}
const told = (us: number | null): string => (us === null ? 'not measured' : us.toFixed(1));
const rowOf = ({ seed, digital, verdict, pressedS, errorsUs }: Outcome): string[] => [
  String(seed),
  digital ? 'digital' : 'simple',
  verdict,
  pressedS.toFixed(3),
  ...errorsUs.map(told),
];
const outcomes: Outcome[] = [];
for (let k = 0; k < seeds; k++) outcomes.push(await outcomeOf(first + k));
const heads = ['seed', 'servo', 'verdict', 'pressed, s', 'left off by, us', 'right off by, us'];
const pressed = outcomes.map(({ pressedS }) => pressedS);
const errors = outcomes.flatMap(({ errorsUs }) =>
  errorsUs.map((us) => (us === null ? Infinity : Math.abs(us))),
);
const mean = pressed.reduce((sum, s) => sum + s, 0) / pressed.length;
process.stdout.write(`${table([heads, ...outcomes.map(rowOf)]).join('\n')}
Pressed in all: mean ${mean.toFixed(2)} s, most ${Math.max(...pressed).toFixed(2)} s. Off by at most ${Math.max(...errors).toFixed(1)} us.
`);
