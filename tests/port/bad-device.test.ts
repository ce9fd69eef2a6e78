// SPDX-License-Identifier: MIT
// What somebody reads who names the wrong device, or one that lies: a sentence each, and exit code 5. The devices
// are pseudo-terminals, opened as any serial device; the lying one is a scripted rig behind one. Needs socat.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, describe, expect, it } from 'vitest';
import { type Script, ScriptedRig } from '#session/scripted-rig-fixture';
import { Pty } from '#sim/pty';
import { openPlace } from '../../bench-sim/harness/bench-place.ts';
import { errorDocument, exitCode, exitOfError } from '../../bench-sim/harness/exit-code.ts';
import { nodeClock } from '../../bench-sim/harness/node-clock.ts';
import { startProgram } from './rig-fixture.ts';

const folder = mkdtempSync(join(tmpdir(), 'bad-device-'));
const ends: (() => void)[] = [];
let made = 0;
afterEach(() => ends.splice(0).forEach((end) => end()));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** A terminal with something at its other end, that hears bytes and may say some. */
async function device(heard: (bytes: Uint8Array, say: (bytes: Uint8Array) => void) => void): Promise<string> {
  const path = join(folder, `device-${made++}`);
  await new Promise<void>((ready, failed) => {
    const pty: Pty = new Pty(path, {
      ready,
      failed,
      opened: () => undefined,
      closed: () => undefined,
      bytes: (chunk) => heard(chunk, (bytes) => pty.write(bytes)),
    });
    ends.push(() => pty.end());
  });
  return path;
}
const rigThat = (change: (rig: ScriptedRig) => void): Promise<string> => {
  const rig = new ScriptedRig(nodeClock);
  change(rig);
  void rig.open();
  return device((bytes, say) => {
    rig.onBytes(say);
    void rig.send(bytes);
  });
};
async function refusalOf(path: string) {
  const nothing = { faults: {}, car: null, scene: null, record: null, resume: null, store: null, json: true };
  const wanted = {
    command: 'run',
    check: 'rail-sag',
    rig: path,
    seed: 1,
    handsReady: true,
    ...nothing,
  } as const;
  const error: unknown = await openPlace(wanted).then(
    () => null,
    (thrown: unknown) => thrown,
  );
  return { exit: exitOfError(error), ...errorDocument(error).error };
}
const lying = (change: (tap: Record<string, unknown>) => void) => (rig: ScriptedRig) => {
  const descriptor = JSON.parse(rig.descriptor);
  change(descriptor.taps[0]);
  rig.descriptor = JSON.stringify(descriptor);
};
/** The descriptor's first chunk, with one bit wrong. */
const chunkWithWrongBit = (rig: ScriptedRig): Script => {
  const bytes = new TextEncoder().encode(rig.descriptor).slice(0, 192);
  bytes[20] ^= 1;
  return (message) =>
    message.type === 'readDescriptor' && message.offset === 0
      ? [{ type: 'descriptorChunk', id: message.id, offset: 0, bytes }]
      : undefined;
};

describe('a device that is no rig', () => {
  it('that is not there ends the command line with 5 and one sentence of advice', async () => {
    const path = join(folder, 'nothing');
    const child = startProgram('bench-sim/harness/check.ts', 'run', 'rail-sag', '--rig', path, '--seed', '1');
    let told = '';
    child.stderr!.on('data', (chunk: Buffer) => (told += chunk));
    expect(await new Promise((done) => child.once('close', done))).toBe(exitCode.noRig);
    expect(told).toBe(
      `There is no device ${path}. Plug the rig in, check the cable and the name of the port, and connect again.\n`,
    );
  });
  it('that is a plain file', async () => {
    const path = join(folder, 'notes');
    writeFileSync(path, 'mine');
    const { exit, message } = await refusalOf(path);
    expect(exit).toBe(exitCode.noRig);
    expect(message).toContain(`${path} can't be opened as a serial device`);
    expect(message).toContain('check the cable and the name of the port');
  });
  it('that is silent', async () => {
    const path = await device(() => undefined);
    const refused = await refusalOf(path);
    expect(refused).toMatchObject({ exit: exitCode.noRig, code: 'notARig' });
    expect(refused.message).toBe(
      'The device at the other end does not answer. Choose the port of the rig, or load the firmware onto the board.',
    );
  });
  it('that sends garbage', async () => {
    const garbage = Uint8Array.from({ length: 400 }, (_, i) => (i * 37) & 0xff);
    const path = await device((_bytes, say) => say(garbage));
    const refused = await refusalOf(path);
    expect(refused).toMatchObject({ exit: exitCode.noRig, code: 'notARig' });
    expect(refused.message).toMatch(
      /^The device at the other end sends bytes \(\d+ so far\) but does not answer as a rig\. Choose the port/,
    );
  });
});

describe('a rig whose description can not be relied on', () => {
  it.each<[string, (rig: ScriptedRig) => void, RegExp]>([
    [
      'an inverted range',
      lying((tap) => ([tap.low, tap.high] = [tap.high, tap.low])),
      /^The rig describes itself in a way that can't be true in tap "packVoltage": its range runs from 10 to 0\. Renew the rig's firmware/,
    ],
    [
      'a range beyond the converter',
      lying((tap) => (tap.high = 40)),
      /in tap "packVoltage": its range does not fit the converter's 0 to 5 V\. Renew/,
    ],
    [
      'JSON that breaks off',
      (rig) => (rig.descriptor = rig.descriptor.slice(0, 900)),
      /^The rig's description is not JSON\. Renew the rig's firmware/,
    ],
    [
      'a wrong bit, though each frame is sound',
      (rig) => (rig.script = chunkWithWrongBit(rig)),
      /^The rig's description arrived damaged: its CRC does not agree\. Renew the rig's firmware/,
    ],
  ])('%s', async (_what, change, words) => {
    const { exit, code, message } = await refusalOf(await rigThat(change));
    expect([exit, code]).toEqual([exitCode.noRig, 'badDescriptor']);
    expect(message).toMatch(words);
  });
  it('a line that damages every piece of it', async () => {
    const rig = new ScriptedRig(nodeClock);
    void rig.open();
    const path = await device((bytes, say) => {
      rig.onBytes((answer) => {
        // Only the long frames of the description; a hello comes through.
        if (answer.length > 100) answer[50] ^= 0x40;
        say(answer);
      });
      void rig.send(bytes);
    });
    const { exit, message } = await refusalOf(path);
    expect(exit).toBe(exitCode.noRig);
    expect(message).toBe(
      'The rig did not answer "readDescriptor" within 300 ms. Check the cable, and connect again.',
    );
  });
});
