// SPDX-License-Identifier: MIT
// A figure asked during a run, from the check through the page's worker to the page and back, on the emulated rig:
// what the page answers is what the record's findings are made of.
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { readRecord } from '#core/record/record-reader';
import { drawCar } from '#sim/physics/population';
import { VirtualLink } from '#sim/virtual-link';
import { createVirtualRig } from '#sim/virtual-rig';
import { BenchDesk } from '../../web/src/worker/bench-desk.ts';
import {
  fromBenchSchema,
  toBenchSchema,
  type FromBench,
  type ToBench,
} from '../../web/src/worker/messages.ts';
import { hexFile } from '../support/bench-in-process.ts';

const seed = 4;
const figures = [3.5, 31.5];

/** A promise and what settles it; Node 20 has none of its own. */
function deferred() {
  let resolve: (text: string) => void = () => {};
  let reject: (cause: Error) => void = () => {};
  const promise = new Promise<string>((done, failed) => {
    resolve = done;
    reject = failed;
  });
  return { promise, resolve, reject };
}
it('carries the figures of a person to the findings', async () => {
  const { plant, car } = drawCar(seed);
  const link = new VirtualLink(createVirtualRig({ hex: readFileSync(hexFile, 'utf8'), plant, seed }));
  const asked: Extract<FromBench, { kind: 'ask' }>[] = [];
  const ended = deferred();
  const take = (message: ToBench) => desk.take(toBenchSchema.parse(message));
  const desk: BenchDesk = new BenchDesk({
    tell: (told) => hear(fromBenchSchema.parse(told)),
    now: () => link.clock.now(),
    randomWord: () => 7,
  });
  function hear(message: FromBench): void {
    if (message.kind === 'finished') ended.resolve(message.text);
    if (message.kind === 'trouble') ended.reject(new Error(message.words));
    if (message.kind !== 'ask') return;
    asked.push(message);
    const { askId, wanted } = message;
    const figure = wanted && figures[asked.length - 1];
    link.clock.after(1, () => take({ kind: 'done', askId, figure }));
  }
  link.clock.every(100, () => take({ kind: 'tick' }));
  take({ kind: 'tick' });
  await desk.open(link, link.clock, { kind: 'virtual' });
  const startedAt = '2031-05-04T10:00:00.000Z';
  take({ kind: 'run', runId: 'r', checkId: 'servo-centre', car, startedAt });
  const record = readRecord(await ended.promise);
  await desk.close();
  expect(asked.map(({ wanted }) => wanted?.unit)).toEqual(['degrees', 'degrees']);
  expect(record.evidence).toMatchObject({ atCentreDegrees: 3.5, longerDegrees: 31.5 });
  const [offset, , turn] = record.findings.map((each) => (each.measured ? each.value : Number.NaN));
  expect(offset).toBe(3.5);
  expect(turn).toBeCloseTo(28 / 300, 9);
});
