// SPDX-License-Identifier: MIT
// The plant of any car under the inputs of a logged run, read at the run's conversion instants by any rig's
// errors: the codes that the converter would have given, and the Hall edges, without a processor.
import { codeOf } from '../machine/converter.ts';
import type { SeededRandom } from '../seeded-random.ts';
import { analogFront } from '../wiring/analog-front.ts';
import type { HallEdge, Plant, PlantInputs } from '../wiring/plant.ts';
import { PlantClock } from '../wiring/plant-clock.ts';
import { drawRigErrors } from '../wiring/rig-errors.ts';
import { type BenchEvent, type BenchLog, firstMultiplexed, type GivenInputs } from './bench-log.ts';

export interface LineEdge {
  readonly cycle: number;
  readonly line: 0 | 1 | 2;
  readonly level: boolean;
}
export interface Replayed {
  /** One code a conversion of the log. */
  readonly codes: Uint16Array;
  readonly edges: readonly LineEdge[];
  /** Processor cycles in a second of true time of this rig. */
  readonly trueHz: number;
}
/** What the procedure would have sent to another car: widths in nominal microseconds. */
export interface PulseMap {
  steeringUs(us: number): number;
  throttleUs(us: number): number;
}
export const samePulses: PulseMap = { steeringUs: (us) => us, throttleUs: (us) => us };
const cyclesPerUs = 16;
type Writable<T> = { -readonly [K in keyof T]: T[K] };

export function replayPlant(
  log: BenchLog,
  plant: Plant,
  random: SeededRandom,
  pulses = samePulses,
): Replayed {
  const clock = new PlantClock(plant, drawRigErrors(random.stream('rig')));
  const analog = analogFront(clock, random.stream('converter noise'));
  const edges: LineEdge[] = [];
  const onEdge = ({ timeS, line, level }: HallEdge) => {
    if (line === 3 || line === 4) return;
    edges.push({ cycle: Math.ceil(timeS * clock.trueHz), line, level });
  };
  const codes = new Uint16Array(log.codes.length);
  let next = 0;
  for (let k = 0; k < codes.length; k++) {
    const cycle = log.cycles.at(k);
    while (Math.ceil(clock.toCycle) <= cycle || clock.toCycle === 1) {
      next = apply(log.events, next, clock, pulses);
      clock.advance(onEdge);
    }
    const input = log.inputsRead.at(k);
    const volts =
      input < firstMultiplexed
        ? analog.readTap(input, cycle)
        : analog.readMultiplexer(input - firstMultiplexed, cycle);
    codes[k] = codeOf(volts, analog.avccV);
  }
  return { codes, edges: edges.toSorted((a, b) => a.cycle - b.cycle), trueHz: clock.trueHz };
}
/** Everything that happened up to the start of the next chunk; returns the first event still to come. */
function apply(events: readonly BenchEvent[], from: number, clock: PlantClock, pulses: PulseMap): number {
  const { plant, toCycle, trueHz } = clock;
  const due = Math.ceil(toCycle);
  let next = from;
  for (; next < events.length && events[next].cycle <= due; next++) {
    const event = events[next];
    if ('act' in event) plant.person(event.act);
    else give(plant.inputs, event.inputs, trueHz, pulses);
  }
  return next;
}
function give(to: Writable<PlantInputs>, given: GivenInputs, hz: number, pulses: PulseMap): void {
  const { steeringCycles, throttleCycles, ...switched } = given;
  const seconds = (cycles: number | null, map: (us: number) => number) =>
    cycles === null ? null : (map(cycles / cyclesPerUs) * cyclesPerUs) / hz;
  Object.assign(to, switched, {
    steeringPulseS: seconds(steeringCycles, pulses.steeringUs),
    throttlePulseS: seconds(throttleCycles, pulses.throttleUs),
  });
}
