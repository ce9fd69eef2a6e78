// SPDX-License-Identifier: MIT
// Written by bench-sim/harness/learn-diagnosis.ts; README.md says how and what from. Not for editing by hand.
import type { ServoModel } from './servo-model-form.ts';

export const servoModel: ServoModel = {
  date: '2026-11-28',
  command:
    'node --import tsx bench-sim/harness/learn-diagnosis.ts fit servo-model.ts train-a.json train-b.json',
  seeds: [20001, 30280],
  cases: 560,
  priors: {
    'binding-left': 0.08,
    'binding-right': 0.08,
    hunting: 0.08,
    'stiff-gear-train': 0.08,
    'tight-spot': 0.08,
    'over-voltage': 0.08,
    overload: 0.08,
    'failing-motor': 0.08,
    'slipping-horn': 0.08,
    'soft-rail': 0.08,
    healthy: 0.2,
  },
  features: {
    'rest-current': {
      usual: {
        middle: -4.361,
        spread: 0.36,
      },
      causes: {
        hunting: {
          middle: -1.396,
          spread: 0.703,
          shows: 0.912,
        },
        'stiff-gear-train': {
          middle: -2.305,
          spread: 0.564,
          shows: 1,
        },
        'tight-spot': {
          middle: -2.818,
          spread: 0.973,
          shows: 0.265,
        },
      },
    },
    'hunting-current': {
      usual: {
        middle: -5.805,
        spread: 0.4,
      },
      causes: {
        hunting: {
          middle: -1.627,
          spread: 0.867,
          shows: 0.912,
        },
      },
    },
    'moving-current': {
      usual: {
        middle: -1.566,
        spread: 0.15,
      },
      causes: {
        'stiff-gear-train': {
          middle: -0.244,
          spread: 0.242,
          shows: 1,
        },
      },
    },
    'sweep-current': {
      usual: {
        middle: -3.71,
        spread: 0.3,
      },
      causes: {
        hunting: {
          middle: -3.38,
          spread: 0.3,
          shows: 1,
        },
        'stiff-gear-train': {
          middle: -2.007,
          spread: 0.488,
          shows: 1,
        },
        'tight-spot': {
          middle: -3.358,
          spread: 0.3,
          shows: 1,
        },
      },
    },
    'tight-spot': {
      usual: {
        middle: 0.007,
        spread: 0.15,
      },
      causes: {
        hunting: {
          middle: 1.766,
          spread: 1.001,
          shows: 1,
        },
        'tight-spot': {
          middle: 1.912,
          spread: 0.411,
          shows: 1,
        },
      },
    },
    speed: {
      usual: {
        middle: 0.002,
        spread: 0.05,
      },
      causes: {
        'stiff-gear-train': {
          middle: 0.23,
          spread: 0.108,
          shows: 1,
        },
      },
    },
    'stall-current': {
      usual: {
        middle: 0.001,
        spread: 0.05,
      },
      causes: {
        'failing-motor': {
          middle: -0.291,
          spread: 0.105,
          shows: 1,
        },
      },
    },
    'rail-voltage': {
      usual: {
        middle: 0.001,
        spread: 0.015,
      },
      causes: {
        'over-voltage': {
          middle: 0.128,
          spread: 0.03,
          shows: 1,
        },
      },
    },
    'rail-resistance': {
      usual: {
        middle: 3.574,
        spread: 0.199,
      },
      causes: {
        'soft-rail': {
          middle: 4.649,
          spread: 0.185,
          shows: 1,
        },
      },
    },
    'scrub-share': {
      usual: {
        middle: -1.758,
        spread: 0.177,
      },
      causes: {
        'stiff-gear-train': {
          middle: -1.042,
          spread: 0.221,
          shows: 1,
        },
        overload: {
          middle: -0.825,
          spread: 0.173,
          shows: 1,
        },
        'slipping-horn': {
          middle: -2.01,
          spread: 0.207,
          shows: 1,
        },
      },
    },
    'scrub-hold': {
      usual: {
        middle: -2.953,
        spread: 0.644,
      },
      causes: {
        'stiff-gear-train': {
          middle: -1.844,
          spread: 1.109,
          shows: 1,
        },
        overload: {
          middle: -0.758,
          spread: 0.437,
          shows: 1,
        },
        'slipping-horn': {
          middle: -3.409,
          spread: 0.683,
          shows: 1,
        },
      },
    },
    'scrub-drop': {
      usual: {
        middle: 0.027,
        spread: 0.015,
      },
      causes: {
        'soft-rail': {
          middle: 0.048,
          spread: 0.015,
          shows: 1,
        },
      },
    },
    'left-right': {
      usual: {
        middle: -0.004,
        spread: 0.04,
      },
      causes: {
        'binding-left': {
          middle: -0.333,
          spread: 0.121,
          shows: 1,
        },
        'binding-right': {
          middle: 0.326,
          spread: 0.106,
          shows: 1,
        },
        'tight-spot': {
          middle: -0.033,
          spread: 0.713,
          shows: 0.539,
        },
        'slipping-horn': {
          middle: -0.022,
          spread: 0.323,
          shows: 1,
        },
      },
    },
    'stop-met': {
      usual: {
        middle: 1,
        spread: 0.15,
      },
      causes: {
        'slipping-horn': {
          middle: 0,
          spread: 0.15,
          shows: 0.775,
        },
      },
    },
  },
  temper: 0.95,
};
