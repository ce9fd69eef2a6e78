// SPDX-License-Identifier: MIT
// Pulses as the plant sees them, Hall edges at their cycle, the person at the bench, the noisy cable.
import { describe, expect, it } from 'vitest';
import { EventQueue } from '../machine/event-queue.ts';
import { seededRandom } from '../seeded-random.ts';
import { BenchPerson } from './bench-person.ts';
import { Cable } from './cable.ts';
import { HallFeed } from './hall-feed.ts';
import { ServoPulses } from './servo-pulses.ts';

const HZ = 16e6;
/** Runs a queue in steps of one microsecond. */
function runTo(queue: EventQueue, from: number, to: number): void {
  for (let now = from; now <= to; now += 16) queue.fire(now);
}

describe('servo pulses', () => {
  it('are as wide as at the pins in true time, and gone after 50 ms of silence', () => {
    const pulses = new ServoPulses(HZ * 1.005);
    expect(pulses.widthS(0, 0)).toBeNull();
    pulses.edge(0, true, 1000);
    pulses.edge(0, false, 1000 + 24000);
    expect(pulses.widthS(0, 30000)).toBeCloseTo(24000 / (HZ * 1.005), 12);
    expect(pulses.widthS(1, 30000)).toBeNull();
    expect(pulses.widthS(0, 25000 + 0.0499 * HZ)).not.toBeNull();
    expect(pulses.widthS(0, 25000 + 0.0505 * HZ)).toBeNull();
  });
});

describe('Hall feed', () => {
  it('gives edges at their own cycle in the order of time, whatever order they were found in', () => {
    const queue = new EventQueue();
    const given: [number, boolean, number][] = [];
    const feed = new HallFeed(queue, HZ, (line, high, cycle) => given.push([line, high, cycle]));
    feed.take({ timeS: 20e-6, line: 1, level: true });
    feed.take({ timeS: 5e-6, line: 0, level: true });
    feed.take({ timeS: 12e-6, line: 2, level: false });
    runTo(queue, 0, 200);
    expect(given).toEqual([
      [0, true, 80],
      [2, false, 192],
    ]);
    runTo(queue, 208, 400);
    expect(given[2]).toEqual([1, true, 320]);
  });
});

describe('person at the bench', () => {
  const watch = (breaks: boolean) => {
    const queue = new EventQueue();
    const seen: [boolean, number][] = [];
    const person = new BenchPerson(queue, HZ, breaks, (open, cycle) => seen.push([open, cycle / HZ]));
    return { queue, seen, person };
  };

  it('presses for 200 ms, 300 ms after the light comes on', () => {
    const { queue, seen, person } = watch(false);
    person.lightChanged(true, 0);
    queue.fire(HZ);
    expect(seen).toEqual([
      [true, 0.3],
      [false, 0.5],
    ]);
  });

  it('does not press when the light goes out at once', () => {
    const { queue, seen, person } = watch(false);
    person.lightChanged(true, 0);
    person.lightChanged(false, 1000);
    queue.fire(HZ);
    expect(seen).toEqual([]);
  });

  it('finds the line open for good 2 s after the first drive, only in that fault', () => {
    const broken = watch(true);
    broken.person.drove(HZ);
    broken.person.drove(2 * HZ);
    broken.queue.fire(10 * HZ);
    broken.person.hold(false, 11 * HZ);
    expect(broken.seen).toEqual([
      [true, 3],
      [true, 11],
    ]);
    const whole = watch(false);
    whole.person.drove(HZ);
    whole.queue.fire(10 * HZ);
    expect(whole.seen).toEqual([]);
  });
});

describe('cable', () => {
  const through = (severity: number, seconds: number, disturbed = true) => {
    const got: number[] = [];
    const cable = new Cable(severity, HZ, seededRandom(1, 'cable'), (byte) => got.push(byte));
    cable.disturbed = disturbed;
    const count = seconds * 50_000;
    for (let i = 0; i < count; i++) cable.pass(i & 0xff, i * 320);
    return { got, count };
  };
  const isWhole = ({ got, count }: ReturnType<typeof through>): boolean =>
    got.length === count && got.every((byte, i) => byte === (i & 0xff));

  it('passes everything when healthy, and when noisy while no current disturbs it', () => {
    expect(isWhole(through(0, 2))).toBe(true);
    expect(isWhole(through(1, 2, false))).toBe(true);
    expect(isWhole(through(1, 2))).toBe(false);
  });

  it('damages about four bursts a second at severity 1, and half as many at a half', () => {
    const lost = (severity: number) => {
      const { got, count } = through(severity, 30);
      return (count - got.length) / 30;
    };
    // Mean burst 1 ms or 50 bytes, 30 % of them dropped: 60 a second; 120 bursts spread by 11 %.
    expect(lost(1)).toBeGreaterThan(40);
    expect(lost(1)).toBeLessThan(80);
    expect(lost(0.5) / lost(1)).toBeGreaterThan(0.3);
    expect(lost(0.5) / lost(1)).toBeLessThan(0.7);
  });
});
