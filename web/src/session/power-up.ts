// SPDX-License-Identifier: MIT
// From everything off to a car at neutral with its rail up: what every check presupposes, done in the rig's own
// order and told in words. It measures nothing; the stretch with all off is kept for the zero of the current taps.
import { tapWords } from '#core/samples/tap-titles';
import { codeName, eventCode, outputBitCode, wire } from '#protocol/codes';
import type { PowerStage, ScanPlan } from '#checks/check';
import type { RunBench } from './bench.ts';
import { ticksOf } from './drive-keeper.ts';
import { RunStopped } from './run-stopped.ts';
import { powerPlan, zeroPlan } from './scan-list.ts';

/** Steering of a session, us; only the end-point check may widen it. Common practice, no source. */
export const steeringUs = { low: 1100, rest: 1500, high: 1900 } as const;
const zeroS = 0.7;
const settleS = 0.1;
const stopPressedWithinS = 120;
/** Seconds at neutral with the rail up: the rig wants 2.5, controllers 2 to 3 (from memory). */
const neutralS = 3;
const railUpV = 3.5;
const railUpWithinS = 5;
/** A spin-up ramped over 0.3 s stays below 20 A (computed from the plant); no check of a free motor needs more. */
const packLimit = { A: 30, ms: 100 } as const;
/** Thermistors beyond these are open or shorted, C. */
const plausibleC = { low: -20, high: 125 } as const;
/** What code 0 comes out as. */
const shortedC = -273;
const stepsOfAll = 6;
const stages: readonly PowerStage[] = ['live', 'limited', 'full', 'rail', 'neutral'];

export async function powerUp(bench: RunBench, plan: ScanPlan, upTo: PowerStage): Promise<void> {
  const goesTo = (stage: PowerStage) => stages.indexOf(upTo) >= stages.indexOf(stage);
  const tell = (step: number, words: string, leftS: number) =>
    bench.progress({ step, of: stepsOfAll, words, leftS });
  tell(1, 'Looking at the taps with everything off.', zeroS);
  await startStream(bench);
  await requireThermistors(bench);
  await setLimits(bench);
  tell(2, 'Press the stop once and let it go, so that it is known to work.', stopPressedWithinS);
  await untilStopProven(bench);
  tell(3, 'Zero of the current taps, everything off.', zeroS);
  await bench.wait(zeroS);
  await bench.scan(powerPlan);
  await bench.wait(settleS);
  tell(4, 'Going live; the limited feed fills the capacitor.', 1);
  await bench.guard(() => bench.session.goLive());
  if (goesTo('limited')) await feed(bench, goesTo('full'));
  if (goesTo('rail')) {
    tell(5, 'Waiting for the receiver rail.', railUpWithinS);
    await untilRailUp(bench);
  }
  if (goesTo('neutral')) {
    tell(6, 'Neutral.', neutralS);
    await bench.wait(neutralS);
  }
  await bench.scan(plan);
  await bench.wait(settleS);
}
export async function startStream(bench: RunBench): Promise<void> {
  await bench.scan(zeroPlan(bench.rig));
  await bench.command({ type: 'stream', on: 1 });
  await bench.command({ type: 'capture', source: 0 });
  await bench.wait(settleS);
}
/** Names the thermistor before anything gets warm, and has the rig watch those the check uses. */
async function requireThermistors(bench: RunBench): Promise<void> {
  const { descriptor } = bench.rig;
  const used = descriptor.taps.filter(
    ({ id, quantity }) => quantity === 'temperature' && bench.options.taps.includes(id),
  );
  for (const { id } of used) {
    const value = bench.samples.latest(id)?.value ?? Number.NaN;
    if (value >= plausibleC.low && value <= plausibleC.high) continue;
    const wrong = value > plausibleC.high || value <= shortedC ? 'shorted' : 'open';
    throw new RunStopped(
      'failed',
      `The thermistor "${tapWords(id)}" is ${wrong}, so nobody would see that part get hot. Plug it in or mend its lead, then run again.`,
    );
  }
  const thermistors = used.reduce((bits, { mux = 0 }) => bits | (1 << mux), 0);
  await bench.command({ type: 'watch', thermistors });
}
async function setLimits(bench: RunBench): Promise<void> {
  const { throttle } = bench.car.controller;
  await driveLimits(bench, 0, steeringUs);
  await driveLimits(bench, 1, { low: throttle.lowUs, rest: throttle.neutralUs, high: throttle.highUs });
  await bench.limit('packWideSlow', packLimit.A, packLimit.ms);
  await bench.limit('overSpeed', bench.car.motor.ratedSpeedRpm, 20);
}
export async function driveLimits(
  bench: RunBench,
  output: number,
  us: { low: number; rest: number; high: number },
): Promise<void> {
  const [low, rest, high] = [us.low, us.rest, us.high].map(ticksOf);
  await bench.command({ type: 'driveLimits', output, low, rest, high });
}
const bit = (name: keyof typeof outputBitCode): number => 1 << outputBitCode[name];

export async function untilStopProven(bench: RunBench): Promise<void> {
  const proven = () => (outputs(bench) & (bit('stopSeen') | bit('stopOpen'))) === bit('stopSeen');
  if (await bench.waitFor(proven, stopPressedWithinS)) return;
  throw new RunStopped(
    'failed',
    (outputs(bench) & bit('stopOpen')) !== 0
      ? 'The stop line stayed open. Release the stop or mend its line, then run again.'
      : 'The stop was not pressed. Run again and press it once when the light of the rig comes on.',
  );
}
function outputs({ samples }: RunBench): number {
  const { raw } = samples;
  return raw.length === 0 ? 0 : raw.words.outputs.at(raw.length - 1);
}
async function feed(bench: RunBench, fully: boolean): Promise<void> {
  const seen = { filled: false, opened: false };
  const end = bench.session.events.add(({ kind, value }) => {
    if (kind === eventCode.firstPower) seen.filled = true;
    if (kind === eventCode.feed && codeName('feedLevel', value) === 'off') seen.opened = true;
  });
  try {
    await bench.command({ type: 'feed', level: 1 });
    await bench.waitFor(() => seen.filled || seen.opened, wire.firstPowerMs / 1000 + 0.3);
  } finally {
    end();
  }
  if (seen.opened)
    throw new RunStopped(
      'failed',
      'The controller side stayed near 0 V behind 10 ohm: a short. Unplug the pack and look for it before you run again.',
    );
  // Whether the event came or got lost, the rig itself refuses the full feed unless the capacitor is full.
  if (fully) await bench.command({ type: 'feed', level: 2 });
}
async function untilRailUp(bench: RunBench): Promise<void> {
  const up = () => (bench.samples.latest('railVoltage')?.value ?? 0) > railUpV;
  if (await bench.waitFor(up, railUpWithinS)) return;
  throw new RunStopped(
    'failed',
    `The receiver rail did not come above ${railUpV} V. Switch the speed controller on and check the rail adapter, then run again.`,
  );
}
