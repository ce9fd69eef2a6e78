// SPDX-License-Identifier: MIT
// Hall lines against the code of 120-degree sensors: six valid states, one bit at a time, one order, never 000
// or 111; speed n = 60 f/(6 p). The order is that of common six-step tables.
import { describe, expect, it } from 'vitest';
import type { HallEdge } from '../wiring/plant.ts';
import { HallLines } from './hall-lines.ts';
import { drawParameters } from './population.ts';

const { motor } = drawParameters(3);
const perfect = {
  ...motor,
  hallErrorRad: [0, 0, 0] as [number, number, number],
  hallDuty: [0.5, 0.5, 0.5] as [number, number, number],
  hallOffsetRad: 0,
};
const ignore = () => undefined;

function powered(parameters = perfect): HallLines {
  const hall = new HallLines(parameters);
  hall.supply(true, 0, ignore);
  return hall;
}
const code = (hall: HallLines) => hall.levels.map((level) => (level ? '1' : '0')).join('');

describe('codes', () => {
  it('run through the six valid states in one order', () => {
    const hall = powered({ ...perfect, startAngleRad: 0.1 });
    const seen = [code(hall)];
    for (let k = 1; k < 6; k++) {
      hall.advance(Math.PI / 3, k, 1, ignore);
      seen.push(code(hall));
    }
    expect(seen).toEqual(['101', '100', '110', '010', '011', '001']);
  });
  it('never show 000 or 111 with errors of 3 degrees, whatever the start', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const hall = powered(drawParameters(seed).motor);
      for (let k = 0; k < 200; k++) {
        expect(['000', '111']).not.toContain(code(hall));
        hall.advance(0.13, k, 1, ignore);
      }
    }
  });
});

describe('edges', () => {
  it('fall where the angle says, within the step', () => {
    const edges: HallEdge[] = [];
    const hall = powered({ ...perfect, startAngleRad: 0 });
    hall.advance(Math.PI / 2, 10, 0.5, (edge) => edges.push(edge));
    expect(edges).toHaveLength(1);
    expect(edges[0]).toMatchObject({ line: 2, level: false });
    expect(edges[0].timeS).toBeCloseTo(10 + 0.5 * (Math.PI / 3 / (Math.PI / 2)), 9);
  });
  it('come six to an electrical turn, in order of time', () => {
    const times: number[] = [];
    const hall = powered(motor);
    for (let k = 0; k < 1000; k++) hall.advance(2 * Math.PI * 0.07, k, 1, (edge) => times.push(edge.timeS));
    expect(Math.abs(times.length - 6 * 70)).toBeLessThanOrEqual(1);
    expect(times.toSorted((a, b) => a - b)).toEqual(times);
  });
  it('of a dead line A never come, and its level stays low', () => {
    const lines = new Set<number>();
    const hall = powered({ ...motor, deadHallLines: [true, false, false] });
    for (let k = 0; k < 100; k++) hall.advance(0.5, k, 1, (edge) => lines.add(edge.line));
    expect([...lines].toSorted()).toEqual([1, 2]);
    expect(hall.levels[0]).toBe(false);
  });
  it('stop without supply, and its return raises the lines that are high', () => {
    const hall = powered({ ...perfect, startAngleRad: 0.1 });
    const edges: HallEdge[] = [];
    hall.supply(false, 1, (edge) => edges.push(edge));
    hall.advance(Math.PI / 3, 2, 1, (edge) => edges.push(edge));
    expect(code(hall)).toBe('000');
    hall.supply(true, 3, (edge) => edges.push(edge));
    expect(code(hall)).toBe('100');
    expect(edges.map(({ timeS, line, level }) => [timeS, line, level])).toEqual([
      [1, 0, false],
      [1, 2, false],
      [3, 0, true],
    ]);
  });
});
