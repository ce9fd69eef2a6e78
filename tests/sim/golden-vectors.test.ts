// SPDX-License-Identifier: MIT
// The golden vectors on the compiled firmware: their bytes are put on its line as they stand in the files, and its
// answers are compared byte by byte with what PROTOCOL.md says, written here by hand, not by this project's codec.
import { beforeAll, describe, expect, it } from 'vitest';
import { FrameDecoder } from '#protocol/frame-decoder';
import { encodeFrame } from '#protocol/frame';
import { messageLayouts } from '#protocol/generated-messages';
import { encodeMessage, isMessageFault, parseMessage } from '#protocol/messages';
import { bytesOf, hexOf, vectorRows } from '../../firmware-protocol/vectors/vector-rows.ts';
import { RawRig } from '../support/raw-rig.ts';

/** A rig may drop payloads longer than the longest command; the reference board takes 38 bytes. */
const longestPayload = 38;
const messages = vectorRows('messages.txt');
const hostSide = messages.filter(([, , payload]) => payload < '80');
const byte = (value: number) => value.toString(16).padStart(2, '0');
const word = (value: number) => byte(value & 0xff) + byte(value >> 8);
const ack = (payload: string) => `80${payload.slice(2, 4)}${payload.slice(0, 2)}`;
const nak = (payload: string, reason: number, detail: number) =>
  `81${payload.slice(2, 4).padStart(2, '0')}${payload.slice(0, 2)}${byte(reason)}${word(detail)}`;
/** Blocks, events, and states nobody asked for, come in between. */
const unasked = (payload: string) => /^(84|85|89|8800)/.test(payload);
const answers = (payloads: readonly string[]) => payloads.filter((payload) => !unasked(payload));

/** What a rig in safe, its stream off, its store blank, answers: the whole payload, or how it begins. */
const fromSafe: Readonly<Record<string, (payload: string) => string>> = {
  hello: () => '82010100',
  'hello:newer-major': (p) => nak(p, 3, 1),
  readDescriptor: () => '8302c000',
  'burst:load-step': (p) => nak(p, 9, 0),
  'burst:without-end': (p) => nak(p, 9, 0),
  // stream off (bit 0), stop not seen (bit 2), supply not measured yet or measured: only the reason is told here
  goLive: (p) => nak(p, 9, 0).slice(0, 8),
  beat: () => '860102',
  'beat:wrap': () => '86ffff',
  drive: (p) => nak(p, 5, 0),
  load: (p) => nak(p, 5, 0),
  feed: (p) => nak(p, 5, 1),
  readCounters: () => '871000000000',
  readState: () => '881100',
  readStore: (p) => nak(p, 4, 0),
  commitStore: (p) => nak(p, 22, 504),
  failSafeTest: (p) => nak(p, 5, 0),
};

describe('a rig in safe', () => {
  it.each(hostSide)('answers %s', (name, _message, payload, frame) => {
    const wanted = (fromSafe[name] ?? ack)(payload);
    const came = answers(new RawRig().ask(bytesOf(frame)));
    expect(came).toHaveLength(1);
    expect(came[0].slice(0, wanted.length)).toBe(wanted);
  });
  it('was asked every command there is', () => {
    const commands = Object.values(messageLayouts).filter(({ code }) => code < 0x80);
    const asked = new Set(hostSide.map(([, , payload]) => parseInt(payload.slice(0, 2), 16)));
    expect([...asked].toSorted((a, b) => a - b)).toEqual(
      commands.map(({ code }) => code).toSorted((a, b) => a - b),
    );
  });
});

describe('what is no command', () => {
  const odd = vectorRows('odd-payloads.txt');
  it.each(odd)('%s: refused or dropped, and the rig goes on', (_name, payload, frame, fault) => {
    const raw = new RawRig();
    const came = answers(raw.ask(bytesOf(frame)));
    const body = payload.length / 2 - 1;
    if (body + 1 > longestPayload) expect(came).toEqual([]);
    else if (fault === 'unknownMessage') expect(came).toEqual([nak(payload, 1, 0)]);
    else expect(came).toEqual([nak(payload, 2, body)]);
    const [counters] = answers(raw.ask(bytesOf(frameOf('readCounters'))));
    expect(counters.slice(4, 8)).toBe(word(body + 1 > longestPayload ? 1 : 0));
  });
  it.each(messages.filter(([, , p]) => p >= '80' && p.length / 2 <= longestPayload))(
    'a report, %s, is an unknown command to a rig',
    (_name, _message, payload, frame) => {
      expect(answers(new RawRig().ask(bytesOf(frame)))).toEqual([nak(payload, 1, 0)]);
    },
  );
});

const frameOf = (name: string) => hostSide.find(([each]) => each === name)![3];

describe('streams with damage', () => {
  const shownBy = (payload: string) =>
    payload.startsWith('09') ? nak(payload, 5, 0) : payload < '80' ? null : nak(payload, 1, 0);
  it.each(vectorRows('streams.txt'))('%s: sound frames answered, damaged ones counted', (_n, line, told) => {
    const results = told === '-' ? [] : told.split(' ');
    const taken = (result: string) =>
      result.startsWith('frame:') && (result.length - 6) / 2 <= longestPayload;
    const sound = results.filter(taken).map((result) => result.slice(6));
    const raw = new RawRig();
    const came = answers(raw.ask(bytesOf(line)));
    expect(came).toHaveLength(sound.length);
    sound.forEach((payload, i) => expect(came[i]).toBe(shownBy(payload) ?? came[i]));
    // A zero first: one row ends without it, in the middle of nothing damaged.
    const counters = answers(raw.ask(Uint8Array.of(0, ...bytesOf(frameOf('readCounters'))))).at(-1)!;
    expect(counters.slice(0, 8)).toBe(`8710${word(results.length - sound.length)}`);
    expect(counters.slice(8, 12)).toBe(word(0));
  });
});

describe('what the rig sends', () => {
  const raw = new RawRig(2);
  beforeAll(() => {
    const say = (name: string, waitMs?: number) => raw.ask(bytesOf(frameOf(name)), waitMs);
    say('hello');
    say('readDescriptor');
    say('stream', 1500);
    say('burst:without-end', 100);
    say('scanList', 200);
    say('writeStore', 200);
    raw.ask(encodeFrame(Uint8Array.of(0x12, 1, 0, 0)));
    say('readCounters');
    say('readState');
    expect(answers(say('goLive', 5))).toContain('800706');
    expect(answers(say('beat', 5)).some((payload) => payload.startsWith('860102'))).toBe(true);
    // Another session's beat: refused with wrongSession and id 0.
    expect(answers(say('beat:wrap', 5))).toContain('810007170000');
    say('safeAll', 2100);
  });
  it('holds every report there is, and no damaged frame', () => {
    const reports = Object.values(messageLayouts).filter(({ code }) => code >= 0x80);
    const sent = new Set(raw.payloads.map((payload) => parseInt(payload.slice(0, 2), 16)));
    expect([...sent].toSorted((a, b) => a - b)).toEqual(
      reports.map(({ code }) => code).toSorted((a, b) => a - b),
    );
    expect(raw.faults).toBe(0);
  });
  it('decodes, and encodes again to identical bytes, each frame of it', () => {
    expect(raw.frames.length).toBeGreaterThan(300);
    for (const frame of raw.frames) {
      const [result] = new FrameDecoder().push(bytesOf(frame));
      if (result?.kind !== 'frame') throw new Error(`no frame: ${frame}`);
      const message = parseMessage(result.payload);
      if (isMessageFault(message)) throw new Error(`no message: ${frame}`);
      expect(hexOf(encodeFrame(encodeMessage(message)))).toBe(frame);
    }
  });
});
