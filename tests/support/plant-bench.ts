// SPDX-License-Identifier: MIT
// A bench on the plant without a processor: the same conversions, codes and edge counts as the rig's, from the solved
// plant, four times as fast as the emulated firmware. It refuses nothing and trips never, so it holds procedures
// against analyses only; what the firmware says of a check is held by the emulated runs.
import { readFileSync } from 'node:fs';
import type { Bench, BurstRecord, Check, NumberWanted, PowerStage, ScanPlan } from '#checks/check';
import type { Finding } from '#core/measurements/measurement';
import type { Car } from '#core/parts/part';
import { descriptorSchema, type RigDescription } from '#core/samples/rig-description';
import { outputBits } from '#core/samples/scan-block';
import { ScanColumns } from '#core/samples/scan-columns';
import { judge } from '#core/verdicts/judge';
import { scanListOf, zeroPlan } from '#session/scan-list';
import type { Faults } from '#sim/faults/faults';
import { codeOf } from '#sim/machine/converter';
import { drawCar } from '#sim/physics/population';
import { seededRandom } from '#sim/seeded-random';
import { analogFront } from '#sim/wiring/analog-front';
import type { HallEdge, Plant, PlantInputs } from '#sim/wiring/plant';
import { PlantClock } from '#sim/wiring/plant-clock';
import { drawRigErrors } from '#sim/wiring/rig-errors';

const descriptorFile = new URL('../../firmware-protocol/firmware/descriptor.json', import.meta.url);
export const referenceRig: RigDescription = {
  descriptor: descriptorSchema.parse(JSON.parse(readFileSync(descriptorFile, 'utf8'))),
  store: null,
};
const conversionTicks = 208;
const cyclesPerTick = 8;
/** From the start of a conversion to its sample. */
const holdCycles = 192;
const order = [0, 1, 1, 0, 2, 3, 3, 2, 4] as const;
const farDistance = 65535;
const stages: readonly PowerStage[] = ['live', 'limited', 'full', 'rail', 'neutral'];
type Writable<T> = { -readonly [K in keyof T]: T[K] };

export class PlantBench implements Bench {
  readonly rig = referenceRig;
  readonly samples = new ScanColumns(referenceRig);
  readonly plant: Plant;
  readonly car: Car;
  readonly asked: string[] = [];
  private readonly clock: PlantClock;
  private readonly read: (input: number, mux: number, cycle: number) => number;
  private readonly inputs: Writable<PlantInputs>;
  private plan = scanListOf(referenceRig, zeroPlan(referenceRig));
  private scanNumber = 0;
  private edgeTicks: number[] = [];
  private readonly counts = [0, 0, 0];
  private badHall = 0;
  private lastTick = Number.NEGATIVE_INFINITY;
  private waiting: HallEdge[] = [];
  private levels: [boolean, boolean, boolean];

  constructor(seed: number, faults: Faults = {}, change: (car: Car) => Car = (car) => car) {
    const { plant, car } = drawCar(seed, faults);
    const random = seededRandom(seed, 'rig');
    this.plant = plant;
    this.car = change(car);
    this.inputs = plant.inputs;
    this.clock = new PlantClock(plant, drawRigErrors(random.stream('rig')));
    const analog = analogFront(this.clock, random.stream('converter noise'));
    this.read = (input, mux, cycle) =>
      codeOf(input === 7 ? analog.readMultiplexer(mux, cycle) : analog.readTap(input, cycle), analog.avccV);
    this.levels = [...plant.outputs().hall] as [boolean, boolean, boolean];
    this.samples.clock = { ratio: 1 / (1 + this.clock.errors.clock), halfWidth: 3e-4, origin: 'fit' };
  }
  now(): number {
    return this.samples.latestS;
  }
  async wait(seconds: number): Promise<void> {
    const untilS = this.now() + seconds;
    while (this.now() < untilS) this.block();
  }
  async waitFor(seen: (samples: ScanColumns) => boolean, timeoutS: number): Promise<boolean> {
    const untilS = this.now() + timeoutS;
    while (this.now() < untilS) {
      if (seen(this.samples)) return true;
      this.block();
    }
    return false;
  }
  async scan(plan: ScanPlan): Promise<void> {
    this.plan = scanListOf(this.rig, plan);
  }
  async stream(plan: ScanPlan): Promise<void> {
    await this.scan(plan);
    await this.wait(0.1);
  }
  async powerUp(plan: ScanPlan, upTo: PowerStage = 'neutral'): Promise<void> {
    const goesTo = (stage: PowerStage) => stages.indexOf(upTo) >= stages.indexOf(stage);
    await this.stream(zeroPlan(this.rig));
    await this.wait(0.7);
    this.inputs.steeringPulseS = 1.5e-3;
    this.inputs.throttlePulseS = this.widthS(0);
    if (goesTo('limited')) await this.feed('limited');
    if (goesTo('full')) await this.wait(0.6);
    if (goesTo('full')) await this.feed('full');
    if (goesTo('rail')) await this.waitFor(() => this.plant.outputs().railV > 3.5, 5);
    if (goesTo('neutral')) await this.wait(3);
    await this.stream(plan);
  }
  async feed(level: PlantInputs['feed']): Promise<void> {
    this.inputs.feed = level;
  }
  async turn(which: 'hallSupply' | 'bleeder' | 'packLoad', on: boolean): Promise<void> {
    this.inputs[which] = on;
  }
  async capture(): Promise<void> {}
  async frame(): Promise<void> {}
  async steeringRange(): Promise<void> {}
  async limit(): Promise<void> {}
  progress(): void {}
  async throttle(fraction: number, rampS: number): Promise<void> {
    const from = this.inputs.throttlePulseS ?? this.widthS(0);
    const startS = this.now();
    while (this.now() < startS + rampS) {
      const part = (this.now() - startS) / rampS;
      this.inputs.throttlePulseS = from + part * (this.widthS(fraction) - from);
      this.block();
    }
    this.inputs.throttlePulseS = this.widthS(fraction);
  }
  async steer(widthUs: number, rampS: number): Promise<void> {
    this.inputs.steeringPulseS = widthUs * 1e-6;
    await this.wait(rampS);
  }
  async load(mask: number): Promise<void> {
    this.inputs.loadMask = mask;
  }
  async burst(): Promise<BurstRecord> {
    throw new Error('the bench on the bare plant gives no bursts');
  }
  /** Until no edge came for as long as two before. */
  async failSafeTest(seconds: number): Promise<number | null> {
    const startS = this.now();
    this.inputs.throttlePulseS = null;
    const before = this.samples.edges(startS - 0.1, startS).length;
    const fell = () => this.samples.edges(this.now() - 0.1, this.now()).length < 0.75 * before;
    const found = await this.waitFor(() => this.now() > startS + 0.1 && fell(), seconds);
    const took = this.now() - startS;
    this.inputs.throttlePulseS = this.widthS(0);
    return found ? took : null;
  }
  mark(): void {}
  async ask(words: string): Promise<void> {
    this.asked.push(words);
    this.plant.person(words);
  }
  async askNumber(words: string, { min, max }: NumberWanted): Promise<number> {
    this.asked.push(words);
    const value = this.plant.person(words);
    if (value === undefined || value < min || value > max) throw new Error(`"${words}" got ${value}`);
    return value;
  }
  private widthS(fraction: number): number {
    const { lowUs, neutralUs, highUs } = this.car.controller.throttle;
    return (neutralUs + fraction * (fraction < 0 ? neutralUs - lowUs : highUs - neutralUs)) * 1e-6;
  }
  private block(): void {
    const tick = this.scanNumber * 9 * conversionTicks;
    const samples = new Uint16Array(40);
    for (let k = 0; k < 72; k++) {
      const place = order[k % 9];
      const scan = Math.floor(k / 9);
      const input = place === 4 ? this.plan.slow : this.plan.fast[place];
      const cycle = (tick + k * conversionTicks) * cyclesPerTick + holdCycles;
      this.solveTo(cycle);
      samples[scan * 5 + place] += this.read(input, scan & 7, cycle);
    }
    this.takeEdges((tick + 72 * conversionTicks) * cyclesPerTick);
    this.push(tick, samples);
    this.scanNumber += 8;
  }
  private solveTo(cycle: number): void {
    while (Math.ceil(this.clock.toCycle) <= cycle || this.clock.toCycle === 1)
      this.clock.advance((edge) => void this.waiting.push(edge));
  }
  private takeEdges(untilCycle: number): void {
    const { trueHz } = this.clock;
    const due = this.waiting.filter(({ timeS }) => timeS * trueHz < untilCycle);
    this.waiting = this.waiting.filter(({ timeS }) => timeS * trueHz >= untilCycle);
    for (const { timeS, line, level } of due.toSorted((a, b) => a.timeS - b.timeS)) {
      // Those of the receiver stand at the capture input only where a check asks for them.
      if (line === 3 || line === 4) continue;
      this.levels[line] = level;
      this.counts[line]++;
      const high = this.levels.filter(Boolean).length;
      if (high === 0 || high === 3) this.badHall++;
      if (line === 0) this.edgeTicks.push(Math.floor((timeS * trueHz) / cyclesPerTick));
    }
  }
  private push(tick: number, samples: Uint16Array): void {
    const distances = this.edgeTicks.map((at) => {
      const distance = Math.min(farDistance, at - this.lastTick);
      this.lastTick = at;
      return distance;
    });
    this.edgeTicks = [];
    const { feed, throttlePulseS } = this.inputs;
    const outputs =
      (feed === 'limited' ? outputBits.feedLimited : feed === 'full' ? outputBits.feedFull : 0) |
      (throttlePulseS === null ? 0 : outputBits.throttlePulses);
    this.samples.push({
      scan: this.scanNumber,
      tick,
      fast: this.plan.fast,
      slow: this.plan.slow,
      slowFirst: 0,
      state: 1,
      trip: 0,
      outputs,
      steering: Math.round((this.inputs.steeringPulseS ?? 0) * 2e6),
      throttle: Math.round((throttlePulseS ?? 0) * 2e6),
      edgesA: this.counts[0] & 0xffff,
      edgesB: this.counts[1] & 0xff,
      edgesC: this.counts[2] & 0xff,
      badHall: this.badHall & 0xff,
      lastEdge: Number.isFinite(this.lastTick) ? this.lastTick >>> 0 : 0,
      samples,
      edges: distances,
    });
  }
}
export interface PlantRun {
  readonly findings: readonly Finding[];
  readonly verdicts: Readonly<Record<string, string>>;
  readonly truth: Readonly<Record<string, number>>;
  readonly bench: PlantBench;
}
/** One check on the plant of a seed. */
export async function runOnPlant<E>(
  check: Check<E>,
  seed: number,
  faults: Faults = {},
  change?: (car: Car) => Car,
): Promise<PlantRun> {
  const bench = new PlantBench(seed, faults, change);
  const { rig, car, samples } = bench;
  const evidence = await check.procedure(bench);
  const findings = check.analyse({ evidence, samples, rig, car });
  const limits = check.limits(car, rig);
  const verdicts = Object.fromEntries(
    findings.map((finding) => [finding.id, judge(finding, limits[finding.id]).verdict]),
  );
  return { findings, verdicts, truth: bench.plant.truth(), bench };
}
/** Results whose truth lies outside their interval, in words. */
export const outside = ({ findings, truth }: PlantRun): string[] =>
  findings.flatMap((finding) => {
    if (!finding.measured || truth[finding.id] === undefined) return [];
    const [low, high] = finding.interval;
    const known = truth[finding.id];
    return known >= low && known <= high ? [] : [`${finding.id}: ${known} not in ${low} to ${high}`];
  });
