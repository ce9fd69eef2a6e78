// SPDX-License-Identifier: MIT
// A figure asked during a run, as the page handles it: rubbish stays on the page with words, a good figure goes to
// the worker, and the person at the virtual bench can read it instead.
import { describe, expect, it } from 'vitest';
import { usualMeter } from '#core/calibration/meter';
import { marmot } from '../checks/synthetic-run-fixture.ts';
import { fromBenchSchema, toBenchSchema, type CheckCard, type ToBench } from '../worker/messages.ts';
import { Run, type RunTools } from './run.svelte.ts';

const wanted = { unit: 'degrees', min: -30, max: 30 };
const card: CheckCard = {
  id: 'servo-centre',
  title: 'Centre',
  part: 'servo',
  why: '',
  taps: [],
  outputs: [],
  wiring: [],
  cautions: [],
  durationS: 1,
  results: [],
};
/** A run that has gone live, and what it told the bench. */
async function live(more: Partial<RunTools>) {
  const told: ToBench[] = [];
  const bench = {
    attend: () => {},
    tell: (message: ToBench) => told.push(message),
    connected: true,
    phase: 'safe',
  };
  const tools = {
    bench,
    logbook: { begin: () => Promise.resolve() },
    shelf: { car: marmot },
    now: () => 0,
    newId: () => 'r',
    ...more,
  };
  const run = new Run(tools as unknown as RunTools);
  run.prepare(card);
  await run.goLive();
  return { run, told };
}
/** A run under way that asks; `reads` is what the virtual person reads. */
async function asking(reads?: number, figureWanted = true) {
  const acts: string[] = [];
  const person = (act: string) => {
    acts.push(act);
    return Promise.resolve(reads);
  };
  const { run, told } = await live({ person });
  const words = 'Read the protractor.';
  run.hear(
    fromBenchSchema.parse({ kind: 'ask', runId: 'r', askId: 4, words, ...(figureWanted && { wanted }) }),
  );
  const answers = () => told.filter(({ kind }) => kind === 'done').map((each) => toBenchSchema.parse(each));
  return { run, answers, acts };
}
describe('a figure asked during a run', () => {
  it.each([
    ['', /Nothing was typed/],
    ['x', /"x" is not a number/],
    ['99', /99 degrees is outside what can be/],
  ])('keeps "%s" on the page and says what is wrong', async (typed, words) => {
    const { run, answers } = await asking();
    await run.done(typed);
    expect(run.askTrouble).toMatch(words);
    expect(run.ask?.askId).toBe(4);
    expect(answers()).toEqual([]);
  });
  it('sends a good one, once, after the virtual person has done its part', async () => {
    const { run, answers, acts } = await asking(7);
    await Promise.all([run.done('-4,5'), run.done('-4,5')]);
    expect(acts).toEqual(['Read the protractor.']);
    expect(answers()).toEqual([{ kind: 'done', askId: 4, figure: -4.5 }]);
    expect([run.ask, run.askTrouble]).toEqual([null, null]);
  });
  it('is read by the person at the virtual bench', async () => {
    const { run, answers } = await asking(7.25);
    await run.readAtVirtualBench();
    expect(answers()).toEqual([{ kind: 'done', askId: 4, figure: 7.25 }]);
  });
  it('stays asked when that person can read nothing', async () => {
    const { run, answers } = await asking();
    await run.readAtVirtualBench();
    expect(run.askTrouble).toMatch(/can read nothing there. Type the figure/);
    expect(answers()).toEqual([]);
  });
});
it('a hand that is asked answers without a figure', async () => {
  const { run, answers } = await asking(undefined, false);
  await run.done();
  expect(answers()).toEqual([{ kind: 'done', askId: 4, figure: undefined }]);
});
it.each([['the meter that a person told of', usualMeter] as const, ['none', undefined] as const])(
  'sends %s with the run, for what a calibration would bring',
  async (_, meter) => {
    const { told } = await live({ meter: () => meter });
    const [message] = told.map((each) => toBenchSchema.parse(each));
    expect(message).toMatchObject({ kind: 'run', checkId: 'servo-centre' });
    expect((message as { meter?: unknown }).meter).toEqual(meter);
  },
);
