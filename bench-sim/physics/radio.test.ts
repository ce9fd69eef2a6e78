// SPDX-License-Identifier: MIT
// The receiver's pulses: none without power, widths by position, crossed channels, what it does without a transmitter
// and on its return.
import { describe, expect, it } from 'vitest';
import type { HallEdge } from '../wiring/plant.ts';
import { spoil } from './fault-effects.ts';
import type { RadioParameters } from './parameters.ts';
import { drawParameters } from './population.ts';
import { Radio, widthAt } from './radio.ts';

const tickS = 1e-3;
const drawn = drawParameters(3).radio;
const steady: RadioParameters = { ...drawn, jitterS: 0, startS: 0.1, linkS: 0.5 };

function bench(p: RadioParameters = steady) {
  const radio = new Radio(p);
  let nowS = 0;
  const run = (seconds: number, receiverV = 6) => {
    const edges: HallEdge[] = [];
    for (const endS = nowS + seconds; nowS < endS - 1e-9; nowS += tickS)
      radio.tick(receiverV, nowS, tickS, (edge) => edges.push(edge));
    return edges;
  };
  return { radio, run };
}
/** Widths of the last pulse on either channel, us. */
function widths(edges: readonly HallEdge[]): [number, number] {
  const of = (line: 3 | 4) => {
    const own = edges.filter((edge) => edge.line === line);
    const fall = own.findLastIndex(({ level }) => !level);
    return fall < 1 ? Number.NaN : (own[fall].timeS - own[fall - 1].timeS) * 1e6;
  };
  return [of(3), of(4)];
}
const us = (widthS: number) => widthS * 1e6;

describe('receiver', () => {
  it('is silent without power and until it has started', () => {
    const { run } = bench();
    expect(run(1, 2)).toEqual([]);
    expect(run(0.099)).toEqual([]);
    expect(run(0.1).length).toBeGreaterThan(4);
    expect(run(1, 0)).toEqual([]);
  });
  it('gives frames at its own distance, channel 2 when channel 1 has ended', () => {
    const { run } = bench();
    const edges = run(2);
    const rises = edges.filter(({ line, level }) => line === 3 && level).map(({ timeS }) => timeS);
    expect((rises.at(-1)! - rises[0]) / (rises.length - 1)).toBeCloseTo(steady.frameS, 9);
    const second = edges.filter(({ line, level }) => line === 4 && level);
    expect(second[0].timeS).toBeCloseTo(rises[0] + steady.steeringS[1], 9);
  });
  it('follows wheel and trigger', () => {
    const { radio, run } = bench();
    radio.wheel = -1;
    radio.trigger = 0.5;
    const [steering, throttle] = widths(run(0.5));
    expect(steering).toBeCloseTo(us(steady.steeringS[0]), 6);
    expect(throttle).toBeCloseTo(us((steady.throttleS[1] + steady.throttleS[2]) / 2), 6);
    expect(widthAt(-0.5, [1, 3, 4])).toBe(2);
  });
  it('has the channels changed over where they are crossed', () => {
    const { radio, run } = bench({ ...steady, crossed: true });
    radio.trigger = 1;
    expect(widths(run(0.5))[0]).toBeCloseTo(us(steady.throttleS[2]), 6);
  });
  it('spreads its widths as drawn', () => {
    const edges = bench({ ...steady, jitterS: 1.5e-6 })
      .run(30)
      .filter(({ line }) => line === 4);
    const all = edges.flatMap((edge, k) => (edge.level ? [] : [us(edge.timeS - edges[k - 1].timeS)]));
    const mean = all.reduce((sum, x) => sum + x, 0) / all.length;
    const sd = Math.sqrt(all.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (all.length - 1));
    expect(mean).toBeCloseTo(us(steady.throttleS[1]), 0);
    // 1,300 to 2,700 widths know their deviation to 2 %.
    expect(sd).toBeGreaterThan(1.35);
    expect(sd).toBeLessThan(1.65);
  });
});
describe('receiver without its transmitter', () => {
  const lose = (change: Partial<RadioParameters> = {}) => {
    const all = bench({ ...steady, failSafeTrigger: -0.4, ...change });
    all.radio.trigger = 0.5;
    all.run(0.5);
    all.radio.turn(false);
    return all;
  };
  const throttle = ({ run }: ReturnType<typeof bench>, seconds: number) => widths(run(seconds))[1];
  const held = us(widthAt(0.5, steady.throttleS));
  it('repeats the last throttle for its time, then takes its own', () => {
    const all = lose();
    expect(throttle(all, steady.failSafeS - 0.03)).toBeCloseTo(held, 6);
    expect(throttle(all, 0.1)).toBeCloseTo(us(widthAt(-0.4, steady.throttleS)), 6);
    expect(all.radio.heldTrigger).toBe(0.5);
  });
  it('comes back with what the trigger does now, once the link stands', () => {
    const all = lose();
    all.run(1);
    all.radio.trigger = 0;
    all.radio.turn(true);
    expect(throttle(all, 0.45)).toBeCloseTo(us(widthAt(-0.4, steady.throttleS)), 6);
    expect(throttle(all, 0.3)).toBeCloseTo(us(steady.throttleS[1]), 6);
  });
  it('begins with the old throttle on return where its fail-safe is bad', () => {
    const all = lose({ staleS: 0.4 });
    all.run(1);
    all.radio.trigger = 0;
    all.radio.turn(true);
    expect(throttle(all, 0.7)).toBeCloseTo(held, 6);
    expect(throttle(all, 0.4)).toBeCloseTo(us(steady.throttleS[1]), 6);
  });
});
describe('faults of control, joints and winding', () => {
  const faults = [
    'crossed-channels',
    'reversed-throttle',
    'no-fail-safe',
    'bad-joint',
    'unbalanced-winding',
    'unlearnt-throttle-range',
  ] as const;
  it.each(faults)('%s at severity 0 leaves every number as it was', (name) => {
    const car = drawParameters(7);
    spoil(car, { [name]: 0 });
    expect(car).toEqual(drawParameters(7));
  });
  it.each(faults)('%s at severity 1 changes something', (name) => {
    const car = drawParameters(7);
    spoil(car, { [name]: 1 });
    expect(car).not.toEqual(drawParameters(7));
  });
});
