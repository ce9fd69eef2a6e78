// SPDX-License-Identifier: MIT
// How a servo is plugged that moves nothing of the car, shared by its checks.
import type { WiringStep } from './check.ts';
import { packLead } from './wiring.ts';

export const servoOutWiring: readonly WiringStep[] = [
  packLead,
  {
    words: 'Servo out of the car or its linkage off; servo lead into the rail adapter at the receiver slot.',
    tap: 'railVoltage',
  },
];
