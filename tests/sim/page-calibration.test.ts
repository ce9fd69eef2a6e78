// SPDX-License-Identifier: MIT
// A guided calibration through the page's worker on the compiled firmware, in rig time: asked, answered and kept; a
// reading that jumps; stopped half-way; gone live and stopped. A simulated person reads a simulated meter.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { usualMeter } from '#core/calibration/meter';
import { MeterInHand } from '#sim/meter-in-hand';
import { drawCar } from '#sim/physics/population';
import { VirtualLink } from '#sim/virtual-link';
import { createVirtualRig } from '#sim/virtual-rig';
import { BenchDesk } from '../../web/src/worker/bench-desk.ts';
import type { FromBench } from '../../web/src/worker/messages.ts';
import { hexFile } from '../support/bench-in-process.ts';

const hex = readFileSync(hexFile, 'utf8');
const seed = 2;
type Asked = Extract<FromBench, { kind: 'calibrationAsk' }>;
type Ended = Extract<FromBench, { kind: 'calibrationEnded' }>;
/** What the person does with a question: a number, done (null), or nothing at all. */
type Answer = (asked: Asked, meter: MeterInHand, reads: number) => number | null | undefined;

const asToldTo: Answer = ({ ask }, meter) => (ask.kind === 'read' ? meter.read(ask.place) : null);

async function calibrated(taps: readonly string[], answer: Answer, meddle?: (desk: BenchDesk) => void) {
  const { plant: bare, car } = drawCar(seed);
  const meter = new MeterInHand(bare, seed);
  const rig = createVirtualRig({ hex, plant: meter.plant, seed });
  const link = new VirtualLink(rig);
  const { clock } = link;
  const told: FromBench[] = [];
  const desk = new BenchDesk({
    tell: (message) => {
      told.push(message);
      if (message.kind === 'calibrationAsk') clock.after(1, () => hear(message));
    },
    now: () => clock.now(),
    randomWord: () => 7,
    today: () => '2026-11-27',
  });
  let reads = 0;
  function hear(asked: Asked): void {
    if (asked.ask.kind === 'act') meter.act(asked.ask.words);
    else reads += 1;
    const value = answer(asked, meter, reads);
    if (value === undefined) meddle?.(desk);
    else desk.take({ kind: 'calibrationAnswer', askId: asked.askId, value });
  }
  clock.every(100, () => desk.take({ kind: 'tick' }));
  desk.take({ kind: 'tick' });
  expect(await desk.open(link, clock, { kind: 'virtual' })).toBe(true);
  meter.take(usualMeter);
  const choice = {
    meter: usualMeter,
    car,
    today: '2026-11-27',
    thermistorsIn: 'ice',
    feedBy: 'meter',
  } as const;
  desk.take({ kind: 'calibrate', wish: { taps: [...taps], ...choice } });
  const ended = () => told.find((message): message is Ended => message.kind === 'calibrationEnded');
  const endMs = clock.now() + 90_000;
  while (!ended() && clock.now() < endMs) await new Promise<void>((done) => clock.after(20, done));
  await new Promise<void>((done) => clock.after(200, done));
  await desk.close();
  return { ended: ended()!, told, plant: bare };
}
const points = (told: readonly FromBench[]) => told.filter(({ kind }) => kind === 'calibrationPoint').length;

describe('a calibration through the page’s worker', () => {
  it('tells each point, keeps the line, and shows the rig with it', async () => {
    const { ended, told } = await calibrated(['railVoltage'], asToldTo);
    expect(ended).toMatchObject({ stored: true, outcomes: [{ tap: 'railVoltage', state: 'adopted' }] });
    expect(points(told)).toBe(2);
    const cards = told.filter((message) => message.kind === 'rig');
    expect(cards.map(({ rig }) => rig.description.store?.calibration.length ?? 0)).toEqual([0, 1]);
  });
  it('asks again for a reading that jumps, and goes on with the right one', async () => {
    const { ended, told } = await calibrated(['railVoltage'], (asked, meter, reads) =>
      asked.ask.kind === 'read' && reads === 1 ? 7.2 : asToldTo(asked, meter, reads),
    );
    const refused = told.flatMap((message) =>
      message.kind === 'calibrationAsk' && message.ask.kind === 'read' ? [message.ask.refused] : [],
    );
    expect(refused).toEqual([null, expect.stringMatching(/^Rail voltage shows .* apart/), null]);
    expect(ended).toMatchObject({ stored: true });
  });
  it('is stopped at a question, and leaves what the rig keeps', async () => {
    const { ended } = await calibrated(
      ['railVoltage'],
      (asked, meter, reads) => (reads === 1 ? undefined : asToldTo(asked, meter, reads)),
      (desk) => desk.take({ kind: 'stop' }),
    );
    expect(ended).toMatchObject({ stored: false, outcomes: [{ state: 'not reached' }] });
    expect(ended.words).toMatch(/stopped by hand.*unchanged/);
  });
  it('is stopped with the feed on when the page is hidden, and the feed goes off', async () => {
    const { ended, told, plant } = await calibrated(
      ['railCurrent'],
      (asked, meter, reads) =>
        asked.ask.kind === 'act' && asked.ask.after === 'live' ? undefined : asToldTo(asked, meter, reads),
      (desk) => desk.take({ kind: 'hidden', hidden: true }),
    );
    expect(ended.words).toMatch(/The page was hidden/);
    expect(told.some((message) => message.kind === 'phase' && message.phase === 'live')).toBe(true);
    expect(plant.inputs.feed).toBe('off');
  });
});
