// SPDX-License-Identifier: MIT
// A bench that has nothing but the plant's servo behind a rail of some source resistance: pulses come in frames and
// ramps as from a rig, taps show it in noisy codes without errors of their own. A hundred times as fast as the
// emulated rig, for procedures that move a servo and nothing else; what a rig refuses and trips on is held elsewhere.
import type { Bench, BurstRecord, Check, NumberWanted, ScanPlan } from '#checks/check';
import { encoder, samplesOf } from '#checks/synthetic-run-fixture';
import type { Finding } from '#core/measurements/measurement';
import type { Car } from '#core/parts/part';
import { testRig } from '#core/samples/scan-block-fixture';
import { outputBits } from '#core/samples/scan-block';
import { ScanColumns } from '#core/samples/scan-columns';
import { judge } from '#core/verdicts/judge';
import type { Faults } from '#sim/faults/faults';
import { personDoes } from '#sim/physics/bench-person';
import { truthOf } from '#sim/physics/truth';
import { drawCar } from '#sim/physics/population';
import { railSourceOhm } from '#sim/physics/steady-state';
import { CarPlant, stepS } from '#sim/physics/whole-plant';

const tickS = 0.5e-6;
const blockTicks = 8 * 1872;
const frameS = 0.02;
const watchS = 1e-3;
const quietS = 0.8;

export class ServoBench implements Bench {
  readonly rig = testRig();
  readonly samples = new ScanColumns(this.rig);
  readonly car: Car;
  readonly plant: CarPlant;
  private readonly encode = encoder(this.rig);
  private plan: ScanPlan = {
    fast: ['railVoltage', 'railCurrent', 'controllerVoltage', 'packCurrentWide'],
    slow: 'multiplexer',
  };
  private scans = 0;
  private steps = 0;
  private powered = false;
  private pulseS = 1.5e-3;
  private nextFrameS = 0.0037;
  private nextWatchS = 0;
  private plugV = 0;
  private ramp = { fromUs: 1500, toUs: 1500, startS: 0, lengthS: 0 };

  constructor(seed: number, faults: Faults = {}, change: (car: Car) => Car = (car) => car) {
    const { plant, car } = drawCar(seed, faults);
    this.plant = plant as CarPlant;
    this.car = change(car);
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
    while (!seen(this.samples)) {
      if (this.now() >= untilS) return false;
      this.block();
    }
    return true;
  }
  async scan(plan: ScanPlan): Promise<void> {
    this.plan = plan;
  }
  stream(plan: ScanPlan): Promise<void> {
    return this.scan(plan);
  }
  async powerUp(plan: ScanPlan): Promise<void> {
    await this.scan(plan);
    await this.wait(quietS);
    this.powered = true;
    await this.wait(0.5);
  }
  async steer(widthUs: number, rampS: number): Promise<void> {
    this.ramp = { fromUs: this.widthUs(), toUs: widthUs, startS: this.timeS, lengthS: rampS };
    await this.wait(rampS);
  }
  async ask(words: string): Promise<void> {
    personDoes(this.plant, words);
  }
  async askNumber(words: string, { min, max }: NumberWanted): Promise<number> {
    const value = personDoes(this.plant, words);
    if (value === undefined || value < min || value > max) throw new Error(`"${words}" got ${value}`);
    return value;
  }
  mark(label: string): void {
    this.samples.mark(label, this.now());
  }
  progress(): void {}
  async feed(): Promise<void> {}
  async turn(): Promise<void> {}
  async capture(): Promise<void> {}
  async frame(): Promise<void> {}
  async steeringRange(): Promise<void> {}
  async limit(): Promise<void> {}
  async load(): Promise<void> {}
  async throttle(): Promise<void> {
    throw new Error('this bench has no motor');
  }
  async burst(): Promise<BurstRecord> {
    throw new Error('this bench has no bursts');
  }
  async failSafeTest(): Promise<number | null> {
    throw new Error('this bench has no motor');
  }
  private get timeS(): number {
    return this.steps * stepS;
  }
  private widthUs(): number {
    const { fromUs, toUs, startS, lengthS } = this.ramp;
    const part = lengthS === 0 ? 1 : Math.min(1, (this.timeS - startS) / lengthS);
    return fromUs + part * (toUs - fromUs);
  }
  private runTo(timeS: number): void {
    while (this.timeS < timeS) this.step();
  }
  private step(): void {
    const { servo, car, rest, sweep, warmth } = this.plant;
    if (this.timeS >= this.nextFrameS) {
      this.nextFrameS += frameS;
      this.pulseS = Math.round(this.widthUs() * 2) / 2e6;
    }
    const restV = this.powered ? car.rail.settingV : 0;
    this.plugV = Math.max(0, restV - (railSourceOhm(car) + car.railShuntOhm) * servo.plugA);
    servo.step(this.plugV, this.powered ? this.pulseS : null, warmth.servo.innerC);
    this.steps++;
    if (this.timeS < this.nextWatchS) return;
    this.nextWatchS += watchS;
    warmth.tick(this.plant, watchS);
    rest.tick(servo, this.powered ? this.pulseS : null, watchS);
    sweep.tick(servo, this.powered ? this.pulseS : null, watchS);
  }
  private tap(id: string, timeS: number): number | undefined {
    this.runTo(timeS);
    const { servo, car } = this.plant;
    if (id === 'railCurrent') return servo.plugA;
    if (id === 'railVoltage') return this.plugV + car.railShuntOhm * servo.plugA;
    if (id === 'controllerVoltage') return this.powered ? 8 : 0;
    return id.startsWith('thermistor') ? car.ambientC : 0;
  }
  private block(): void {
    const tick = this.scans * 1872;
    const signals = {
      tap: (id: string, timeS: number) => this.tap(id, timeS),
      feedOnS: 0,
      endS: 0,
      fast: this.plan.fast,
    };
    const samples = samplesOf(signals, this.rig, this.encode, tick);
    this.runTo((tick + blockTicks) * tickS);
    this.samples.push({
      scan: this.scans,
      tick,
      fast: this.plan.fast.map((id) => this.rig.descriptor.taps.find((tap) => tap.id === id)!.channel),
      slow: 7,
      slowFirst: 0,
      state: 1,
      trip: 0,
      outputs: this.powered ? outputBits.feedFull : 0,
      steering: Math.round(this.widthUs() * 2),
      throttle: 3000,
      edgesA: 0,
      edgesB: 0,
      edgesC: 0,
      badHall: 0,
      lastEdge: 0,
      samples,
      edges: new Uint16Array(0),
    });
    this.scans += 8;
  }
}
export interface ServoRun {
  readonly bench: ServoBench;
  readonly findings: readonly Finding[];
  readonly verdicts: Readonly<Record<string, string>>;
  readonly truth: Readonly<Record<string, number>>;
}
/** One check on the servo of a seed. */
export async function runOnServo<E>(
  check: Check<E>,
  seed: number,
  faults: Faults = {},
  change?: (car: Car) => Car,
): Promise<ServoRun> {
  const bench = new ServoBench(seed, faults, change);
  const { rig, car, samples } = bench;
  const evidence = check.evidenceSchema.parse(await check.procedure(bench));
  const findings = check.analyse({ evidence, samples, rig, car });
  const limits = check.limits(car, rig);
  const verdicts = Object.fromEntries(
    findings.map((finding) => [finding.id, judge(finding, limits[finding.id]).verdict]),
  );
  return { bench, findings, verdicts, truth: truthOf(bench.plant) };
}
/** Results whose truth lies outside their interval, in words. */
export const outside = ({ findings, truth }: Pick<ServoRun, 'findings' | 'truth'>): string[] =>
  findings.flatMap((finding) => {
    if (!finding.measured || truth[finding.id] === undefined) return [];
    const [low, high] = finding.interval;
    const known = truth[finding.id];
    return known >= low && known <= high ? [] : [`${finding.id}: ${known} not in ${low} to ${high}`];
  });
