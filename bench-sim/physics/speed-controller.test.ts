// SPDX-License-Identifier: MIT
// The speed controller's states one by one: what arms it, what it refuses, what lets the motor go.
import { describe, expect, it } from 'vitest';
import type { SpeedControllerParameters } from './parameters.ts';
import { drawParameters } from './population.ts';
import { SpeedController } from './speed-controller.ts';

const stepS = 8e-6;
const plain: SpeedControllerParameters = {
  ...drawParameters(1).controller,
  neutralS: 1.5e-3,
  highS: 1.9e-3,
  lowS: 1.1e-3,
  deadBand: 0.05,
  fullAt: 0.95,
  slewS: 0.1,
  signalLossS: 0.3,
  wakeS: 0.3,
  armS: 1.5,
  cutOffV: 6.2,
  currentLimitA: 100,
};
interface Bench {
  readonly busV?: number;
  readonly motorA?: number;
}
function run(controller: SpeedController, seconds: number, pulseS: number | null, bench: Bench = {}): void {
  for (let ms = 0; ms < Math.round(seconds * 1e3); ms++) {
    controller.tick(bench.busV ?? 8, pulseS, bench.motorA ?? 0, 1e-3);
    for (let k = 0; k < 125; k++) controller.step();
  }
}
function armed(changes: Partial<SpeedControllerParameters> = {}): SpeedController {
  const controller = new SpeedController({ ...plain, ...changes }, stepS);
  run(controller, 2, 1.5e-3);
  return controller;
}

describe('arming', () => {
  it('takes the wake time and then neutral for the arming time', () => {
    const controller = new SpeedController(plain, stepS);
    run(controller, 0.29, 1.5e-3);
    expect(controller.state).toBe('waking');
    run(controller, 1.45, 1.5e-3);
    expect(controller.state).toBe('waiting');
    run(controller, 0.1, 1.5e-3);
    expect(controller.state).toBe('armed');
  });
  it('never happens on a wrong neutral, and full throttle enters programming', () => {
    const off = new SpeedController(plain, stepS);
    run(off, 5, 1.56e-3);
    expect(off.state).toBe('waiting');
    const full = new SpeedController(plain, stepS);
    run(full, 2, 1.9e-3);
    run(full, 5, 1.5e-3);
    expect(full.state).toBe('programming');
    expect(full.duty).toBe(0);
  });
  it('is lost with the bus or the switch', () => {
    const controller = armed();
    run(controller, 0.01, 1.5e-3, { busV: 3 });
    expect(controller.state).toBe('off');
    const switched = armed();
    switched.switchedOn = false;
    run(switched, 0.01, 1.9e-3);
    expect([switched.state, switched.duty, switched.drawA(8)]).toEqual(['off', 0, 0]);
  });
});

describe('driving', () => {
  it.each([
    [1.52e-3, 0],
    [1.7e-3, 0.5],
    [1.88e-3, 1],
    [1.9e-3, 1],
  ])('a pulse of %d s asks for duty %d', (pulseS, duty) => {
    const controller = armed();
    run(controller, 0.3, pulseS);
    expect(controller.duty).toBeCloseTo(duty, 9);
  });
  it('rises no faster than its slew', () => {
    const controller = armed();
    run(controller, 0.05, 1.9e-3);
    expect(controller.duty).toBeCloseTo(0.5, 2);
  });
  it('brakes below neutral, and not at neutral without drag brake', () => {
    const controller = armed();
    run(controller, 0.1, 1.5e-3);
    expect(controller.brake).toBe(0);
    run(controller, 0.1, 1.1e-3);
    expect(controller.brake).toBeCloseTo(plain.fullBrake, 9);
    const dragging = armed({ dragBrake: 0.2 });
    run(dragging, 0.1, 1.5e-3);
    expect(dragging.brake).toBe(0.2);
  });
});

describe('letting go', () => {
  it('follows the loss of pulses within the signal-loss time, until neutral is back', () => {
    const controller = armed();
    run(controller, 0.3, 1.9e-3);
    run(controller, 0.2, null);
    expect(controller.state).toBe('armed');
    run(controller, 0.2, null);
    expect([controller.state, controller.duty]).toEqual(['silent', 0]);
    run(controller, 0.5, 1.9e-3);
    expect(controller.duty).toBe(0);
    run(controller, 0.2, 1.5e-3);
    expect(controller.state).toBe('armed');
  });
  it('follows a bus below the cut-off', () => {
    const controller = armed();
    run(controller, 0.3, 1.9e-3);
    run(controller, 0.5, 1.9e-3, { busV: 6 });
    expect([controller.state, controller.duty]).toEqual(['cut off', 0]);
  });
  it('is partial above the current limit', () => {
    const controller = armed();
    run(controller, 0.3, 1.9e-3);
    run(controller, 0.02, 1.9e-3, { motorA: 150 });
    expect(controller.duty).toBeLessThan(0.9);
    expect(controller.duty).toBeGreaterThan(0.02);
  });
});
