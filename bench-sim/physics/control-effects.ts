// SPDX-License-Identifier: MIT
// What the faults of radio, receiver and throttle settings do to a healthy car's numbers. Severity 0 leaves every number as it was.
import type { Effects } from './fault-effects.ts';

export const controlEffects: Effects = {
  'crossed-channels': ({ radio }, severity) => {
    radio.crossed = severity > 0.5;
  },
  'reversed-throttle': ({ radio }, severity) => {
    if (severity <= 0.5) return;
    const [brakeS, neutralS, fullS] = radio.throttleS;
    radio.throttleS = [2 * neutralS - brakeS, neutralS, 2 * neutralS - fullS];
  },
  'bad-joint': ({ joints, line }, severity) => {
    const joint = joints.find(({ kind }) => kind === 'solder');
    if (!joint) return;
    joint.ohm += 0.002 * severity;
    line.leadOhm += 0.002 * severity;
  },
  'unbalanced-winding': ({ motor }, severity) => {
    const [a, b, c] = motor.phaseShare;
    const raised = [a, b * (1 + 0.3 * severity), c];
    const mean = (raised[0] + raised[1] + raised[2]) / 3;
    motor.windingOhm *= mean;
    motor.phaseShare = raised.map((share) => share / mean) as [number, number, number];
  },
  'unlearnt-throttle-range': ({ controller }, severity) => {
    const { neutralS, highS, lowS } = controller;
    controller.highS = neutralS + (highS - neutralS) * (1 + 0.35 * severity);
    controller.lowS = neutralS - (neutralS - lowS) * (1 + 0.35 * severity);
  },
  'no-fail-safe': ({ radio }, severity) => {
    radio.failSafeS += 4 * severity;
    radio.staleS = 0.4 * severity;
  },
};
