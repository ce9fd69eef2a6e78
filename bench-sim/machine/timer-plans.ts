// SPDX-License-Identifier: MIT
// The three timers of the ATmega328P as data: registers, dividers, vectors, output pins.
import type { TimerPlan } from './compare-timer.ts';
import type { Port } from './port.ts';
import { TCCR1A, TIFR0, TIFR1, TIFR2, TIMSK0, TIMSK1, TIMSK2, vectors } from './registers.ts';

const SYNCHRONOUS = [0, 1, 8, 64, 256, 1024, null, null] as const;
const ASYNCHRONOUS = [0, 1, 8, 32, 64, 128, 256, 1024] as const;
export const TCCR0A = 0x44;
export const TCCR2A = 0xb0;

export interface TimerPlans {
  readonly timer0: TimerPlan;
  readonly timer1: TimerPlan;
  readonly timer2: TimerPlan;
}

/** Only the outputs of timer 1 (OC1A at PB1, OC1B at PB2) are wired on the board. */
export function timerPlans(portB: Port): TimerPlans {
  return {
    timer0: {
      name: 'Timer 0',
      max: 0xff,
      dividers: SYNCHRONOUS,
      controlA: TCCR0A,
      flags: TIFR0,
      mask: TIMSK0,
      vectorA: vectors.timer0CompareA,
      vectorB: vectors.timer0CompareB,
      vectorOverflow: vectors.timer0Overflow,
      clearMode: 2,
      outputs: null,
    },
    timer1: {
      name: 'Timer 1',
      max: 0xffff,
      dividers: SYNCHRONOUS,
      controlA: TCCR1A,
      flags: TIFR1,
      mask: TIMSK1,
      vectorA: vectors.timer1CompareA,
      vectorB: vectors.timer1CompareB,
      vectorOverflow: vectors.timer1Overflow,
      clearMode: 4,
      outputs: { port: portB, bits: [1, 2] },
    },
    timer2: {
      name: 'Timer 2',
      max: 0xff,
      dividers: ASYNCHRONOUS,
      controlA: TCCR2A,
      flags: TIFR2,
      mask: TIMSK2,
      vectorA: vectors.timer2CompareA,
      vectorB: vectors.timer2CompareB,
      vectorOverflow: vectors.timer2Overflow,
      clearMode: 2,
      outputs: null,
    },
  };
}
