// SPDX-License-Identifier: MIT
import { describe, expect, it } from 'vitest';
import { reasonCode } from '#protocol/codes';
import { RefusedError } from './rig-error.ts';
import { connected } from './session-fixture.ts';

describe('the command queue', () => {
  it('sends one command at a time, in order', async () => {
    const { clock, rig, session } = await connected();
    const before = rig.received.length;
    const both = Promise.all([
      session.ask({ type: 'capture', source: 0 }),
      session.ask({ type: 'watch', thermistors: 1 }),
    ]);
    expect(rig.received.length - before).toBe(0);
    await clock.advance(0.5);
    expect(rig.received.slice(before).map(({ type }) => type)).toEqual(['capture']);
    await clock.settle(both);
    expect(rig.received.slice(before).map(({ type }) => type)).toEqual(['capture', 'watch']);
  });
  it('turns a nak into the words of its reason', async () => {
    const { clock, rig, session } = await connected();
    rig.script = (message) =>
      message.type === 'load'
        ? [{ type: 'nak', id: message.id, command: 10, reason: reasonCode.loadHot, detail: 4000 }]
        : undefined;
    const error: unknown = await clock.settle(
      session.ask({ type: 'load', mask: 7, ms: 100 }).catch((e: unknown) => e),
    );
    expect(error).toBeInstanceOf(RefusedError);
    expect(error).toMatchObject({ code: 'refused', reason: reasonCode.loadHot, detail: 4000 });
    expect((error as Error).message).toMatch(/refused "load": The load bank has to cool down\./);
  });
  it('gives up after 300 ms: reads are asked twice, a load once', async () => {
    const { clock, rig, session } = await connected();
    rig.script = () => [];
    const startMs = clock.now();
    await expect(clock.settle(session.ask({ type: 'load', mask: 1, ms: 100 }))).rejects.toMatchObject({
      code: 'timeout',
    });
    expect(clock.now() - startMs).toBeLessThanOrEqual(305);
    expect(rig.sentOf('load')).toHaveLength(1);
    await expect(clock.settle(session.ask({ type: 'readCounters' }))).rejects.toMatchObject({
      code: 'timeout',
    });
    expect(rig.sentOf('readCounters')).toHaveLength(2);
    expect(clock.pending).toBe(0);
  });
  it('does not take the late answer to one command for the answer to the next', async () => {
    const { clock, rig, session } = await connected();
    const answers: number[] = [];
    rig.script = (message) => {
      if (message.type !== 'readState') return undefined;
      const { id } = message;
      clock.after(350, () => rig.tell({ type: 'ack', id, command: 0x11 }));
      return [];
    };
    session.ask({ type: 'readState' }).catch(() => answers.push(-1));
    await clock.advance(700);
    rig.script = () => undefined;
    const answer = await clock.settle(session.ask({ type: 'readState' }));
    expect(answer.type).toBe('state');
    expect(answers).toEqual([-1]);
  });
  it('tells a session of somebody else', async () => {
    const { clock, rig, session } = await connected();
    rig.script = (message) =>
      message.type === 'goLive'
        ? [{ type: 'nak', id: message.id, command: 6, reason: reasonCode.wrongSession, detail: 0 }]
        : undefined;
    await expect(clock.settle(session.goLive())).rejects.toMatchObject({ code: 'wrongSession' });
  });
});
