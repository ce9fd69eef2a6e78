// SPDX-License-Identifier: MIT
import { describe, expect, it } from 'vitest';
import { reasonCode } from '#protocol/codes';
import { testRig } from '#core/samples/scan-block-fixture';
import { RigError } from './rig-error.ts';
import { connected, scene } from './session-fixture.ts';

const failure = async ({ clock, session }: ReturnType<typeof scene>): Promise<RigError> => {
  const error: unknown = await clock.settle(
    session.connect().then(
      () => null,
      (thrown: unknown) => thrown,
    ),
  );
  expect(error).toBeInstanceOf(RigError);
  expect(session.state.kind).toBe('none');
  return error as RigError;
};
const descriptorWith = (change: (descriptor: Record<string, never>) => void): string => {
  const descriptor = structuredClone(testRig().descriptor) as unknown as Record<string, never>;
  change(descriptor);
  return JSON.stringify(descriptor);
};

describe('the handshake', () => {
  it('knows taps and store after it, and reads the descriptor in chunks', async () => {
    const all = scene();
    all.rig.store = JSON.stringify({ serial: 'B-7', name: 'bench', calibration: [] });
    await all.clock.settle(all.session.connect());
    expect(all.session.state.kind).toBe('ready');
    expect(all.session.rig.descriptor.taps.map(({ id }) => id)).toContain('railVoltage');
    expect(all.session.rig.store?.serial).toBe('B-7');
    expect(all.rig.sentOf('readDescriptor').length).toBeGreaterThan(5);
  });
  it('waits for a board that is deaf after its port was opened', async () => {
    const all = scene();
    all.rig.script = (message) => (message.type === 'hello' && all.clock.now() < 1800 ? [] : undefined);
    await all.clock.settle(all.session.connect());
    expect(all.rig.sentOf('hello').length).toBeGreaterThan(6);
    expect(all.session.state.kind).toBe('ready');
  });
  it('gets through where every piece of memory is lost four times in a row, and gives up at the fifth', async () => {
    const losing = (times: number) => {
      const all = scene();
      const asked = new Map<string, number>();
      all.rig.script = (message) => {
        if (message.type !== 'readDescriptor' && message.type !== 'readStore') return undefined;
        const piece = `${message.type} ${message.offset}`;
        asked.set(piece, (asked.get(piece) ?? 0) + 1);
        return asked.get(piece)! <= times ? [] : undefined;
      };
      return all;
    };
    const bad = losing(4);
    await bad.clock.settle(bad.session.connect());
    expect(bad.session.state.kind).toBe('ready');
    expect(bad.session.queue.timeouts).toBeGreaterThan(20);
    expect((await failure(losing(5))).code).toBe('timeout');
  });
  it('is not led astray by stale and foreign bytes', async () => {
    const all = scene();
    let stale = true;
    all.rig.script = (message) => {
      if (message.type === 'hello' && stale)
        all.rig.raw(Uint8Array.from({ length: 700 }, (_, i) => (i * 37) & 0xff));
      stale = false;
      return undefined;
    };
    await all.clock.settle(all.session.connect());
    expect(all.session.line.faults.badFrames).toBeGreaterThan(0);
    expect(all.session.state.kind).toBe('ready');
  });
  it('tells a device that is silent from one that chatters, and calls neither a rig', async () => {
    const silent = scene();
    silent.rig.script = () => [];
    const first = await failure(silent);
    expect(first.code).toBe('notARig');
    expect(first.message).toMatch(/does not answer\. Choose the port of the rig/);
    const chatty = scene();
    chatty.rig.script = () => {
      chatty.rig.raw(new TextEncoder().encode('$GPGGA,120000,,*00\r\n'));
      return [];
    };
    const second = await failure(chatty);
    expect(second.code).toBe('notARig');
    expect(second.message).toMatch(/sends bytes/);
  });
  it('refuses a newer major with words, and says whose part is too old', async () => {
    const newer = scene();
    newer.rig.script = (message) =>
      message.type === 'hello'
        ? [
            {
              type: 'helloBack',
              id: message.id,
              major: 2,
              minor: 0,
              firmware: [9, 0, 0],
              resetCause: 1,
              descriptorLength: 0,
              descriptorCrc: 0,
              tick: 0,
            },
          ]
        : undefined;
    const first = await failure(newer);
    expect(first.code).toBe('newerProtocol');
    expect(first.message).toMatch(/version 2 .*Update this program/);
    const older = scene();
    older.rig.script = (message) =>
      message.type === 'hello'
        ? [{ type: 'nak', id: message.id, command: 1, reason: reasonCode.newerMajor, detail: 0 }]
        : undefined;
    const second = await failure(older);
    expect(second.code).toBe('olderProtocol');
    expect(second.message).toMatch(/firmware/);
  });
  it('asks a second time for a chunk that got lost', async () => {
    const all = scene();
    let lost = false;
    all.rig.script = (message) => {
      if (message.type !== 'readDescriptor' || message.offset === 0 || lost) return undefined;
      lost = true;
      return [];
    };
    await all.clock.settle(all.session.connect());
    expect(all.session.queue.timeouts).toBe(1);
    expect(all.session.state.kind).toBe('ready');
  });
  it('finds a rig that somebody left live, and brings it back to safe first', async () => {
    const all = scene();
    all.rig.state = 1;
    await all.clock.settle(all.session.connect());
    expect(all.rig.sentOf('safeAll')).toHaveLength(1);
    expect(all.session.state.kind).toBe('ready');
  });
  it('says when the store is unreadable, and goes on without it', async () => {
    const all = scene();
    all.rig.store = 'not json';
    await all.clock.settle(all.session.connect());
    expect(all.session.rig.store).toBeNull();
    expect(all.session.notes[0]).toMatch(/store can't be read/);
  });
});
describe('a descriptor that lies', () => {
  const cases: readonly [string, string, RegExp][] = [
    ['is not JSON', '{"board": "x",', /not JSON/],
    ['lacks its taps', descriptorWith((d) => Reflect.deleteProperty(d, 'taps')), /at "taps"/],
    [
      'gives a tap twice',
      descriptorWith((d) => (d.taps as unknown[]).push((d.taps as unknown[])[0])),
      /given twice/,
    ],
    [
      'puts two taps on one input',
      descriptorWith((d) => ((d.taps as { channel: number }[])[1].channel = 0)),
      /same converter input as "packVoltage"/,
    ],
    [
      'has a range upside down',
      descriptorWith((d) => ((d.taps as { low: number }[])[0].low = 20)),
      /range runs from 20 to 10/,
    ],
    [
      'claims what its converter cannot see',
      descriptorWith((d) => ((d.taps as { high: number }[])[0].high = 40)),
      /does not fit the converter/,
    ],
    [
      'tells a current in volts',
      descriptorWith((d) => ((d.taps as { unit: string }[])[1].unit = 'V')),
      /a current is not told in V/,
    ],
  ];
  it.each(cases)('%s', async (_, descriptor, words) => {
    const all = scene();
    all.rig.descriptor = descriptor;
    const error = await failure(all);
    expect(error.code).toBe('badDescriptor');
    expect(error.message).toMatch(words);
  });
  it('arrived damaged', async () => {
    const all = scene();
    all.rig.script = (message) =>
      message.type === 'readDescriptor'
        ? [{ type: 'descriptorChunk', id: message.id, offset: message.offset, bytes: new Uint8Array(100) }]
        : undefined;
    const error = await failure(all);
    expect(error.message).toMatch(/CRC|wrong piece/);
  });
});
describe('a link that is lost', () => {
  it('says exactly the words, and fails all that is asked afterwards', async () => {
    const { rig, session, clock } = await connected();
    rig.unplug();
    expect(session.state).toEqual({
      kind: 'lost',
      words: 'Link lost. The state of the rig is unknown: disconnect the pack.',
    });
    await expect(clock.settle(session.ask({ type: 'readState' }))).rejects.toThrow(
      'Link lost. The state of the rig is unknown: disconnect the pack.',
    );
  });
});
