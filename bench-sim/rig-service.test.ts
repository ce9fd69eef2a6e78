// SPDX-License-Identifier: MIT
// The virtual rig behind a MessagePort, as the page's worker has it: open, bytes both ways, bad messages, bad
// firmware.
import { readFileSync } from 'node:fs';
import { afterEach, describe, expect, it } from 'vitest';
import { encodeFrame } from '#protocol/frame';
import { FrameDecoder } from '#protocol/frame-decoder';
import { encodeMessage } from '#protocol/messages';
import { usualMeter } from '#core/calibration/meter';
import { PortLink } from './port-link.ts';
import type { FromRigWorker } from './rig-messages.ts';
import { realClock } from './rig-pace.ts';
import { RigService } from './rig-service.ts';

const hex = readFileSync(new URL('../firmware-protocol/firmware/bench-marshal.hex', import.meta.url), 'utf8');
const services: RigService[] = [];
afterEach(async () => {
  for (const service of services.splice(0)) await service.take({ kind: 'close' });
});

async function ask(
  message: unknown,
  firmware = hex,
): Promise<{ answer: FromRigWorker; port: MessagePort | null }> {
  return new Promise((done) => {
    const service = new RigService(
      () => Promise.resolve(firmware),
      realClock,
      (answer, transfer) => done({ answer, port: (transfer[0] as MessagePort) ?? null }),
    );
    services.push(service);
    void service.take(message);
  });
}

describe('rig service', () => {
  it('gives the car of the seed and a port on which hello is answered', async () => {
    const { answer, port } = await ask({ kind: 'open', seed: 3, faults: {}, speed: 20 });
    expect(answer.kind).toBe('opened');
    const link = new PortLink(port!);
    const decoder = new FrameDecoder();
    const answered = new Promise<number>((done) => {
      link.onBytes((bytes) => {
        for (const result of decoder.push(bytes))
          if ('payload' in result && result.payload[0] === 0x82) done(result.payload[1]);
      });
    });
    await link.open();
    const hello = encodeFrame(encodeMessage({ type: 'hello', id: 77, major: 1, minor: 0 }));
    const asking = setInterval(() => void link.send(hello), 20);
    expect(await answered).toBe(77);
    clearInterval(asking);
    await link.close();
    port!.close();
  });

  it('has a person with a meter, and a memory that outlives it', async () => {
    const told: FromRigWorker[] = [];
    const service = new RigService(
      () => Promise.resolve(hex),
      realClock,
      (answer) => told.push(answer),
    );
    services.push(service);
    const open = { kind: 'open', seed: 3, faults: {}, speed: 20 };
    const readMeter = { kind: 'readMeter', place: 'source' };
    await service.take(open);
    await service.take(readMeter);
    await service.take({ kind: 'meter', meter: usualMeter });
    await service.take({ kind: 'person', act: 'Put the leads together on one cell.' });
    await service.take(readMeter);
    await service.take({ kind: 'meter', meter: null });
    await service.take(readMeter);
    const [without, with_, away] = told.flatMap((each) => (each.kind === 'metered' ? [each.value] : []));
    expect([without, away]).toEqual([null, null]);
    expect(with_).toBeGreaterThan(3.7);
    expect(with_).toBeLessThan(4.2);
    const store = new Uint8Array(1024).fill(7);
    await service.take({ ...open, store });
    await service.take({ kind: 'exportStore' });
    expect(told.at(-1)).toEqual({ kind: 'store', bytes: store });
  });

  it('answers whatever its person is told, with null where nothing is read and before there is a rig', async () => {
    const told: FromRigWorker[] = [];
    const service = new RigService(
      () => Promise.resolve(hex),
      realClock,
      (answer) => told.push(answer),
    );
    services.push(service);
    await service.take({ kind: 'person', act: 'Whistle.' });
    await service.take({ kind: 'open', seed: 3, faults: {}, speed: 20 });
    await service.take({ kind: 'person', act: 'Whistle.' });
    const acted = { kind: 'acted', figure: null };
    expect(told).toEqual([acted, expect.objectContaining({ kind: 'opened' }), acted]);
  });

  it.each([
    ['an unknown fault', { kind: 'open', seed: 1, faults: { gremlins: 1 }, speed: 1 }],
    ['a severity beyond 1', { kind: 'open', seed: 1, faults: { 'soft-rail': 2 }, speed: 1 }],
    ['an unknown message', { kind: 'dance' }],
  ])('refuses %s', async (_what, message) => {
    const { answer } = await ask(message);
    expect(answer).toMatchObject({ kind: 'failed', words: expect.stringMatching(/could not start/) });
  });

  it('says what is wrong with a damaged firmware file', async () => {
    const { answer } = await ask({ kind: 'open', seed: 1, faults: {}, speed: 1 }, hex.slice(0, 500));
    expect(answer).toMatchObject({
      kind: 'failed',
      words: expect.stringMatching(/firmware file is (damaged|cut off)/),
    });
  });
});
