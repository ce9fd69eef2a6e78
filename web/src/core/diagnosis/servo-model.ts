// SPDX-License-Identifier: MIT
// Written by bench-sim/harness/learn-diagnosis.ts; README.md says how and what from. Not for editing by hand.
import type { ServoModel } from './servo-model-form.ts';

export const servoModel: ServoModel = {
  date: '2026-11-27',
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
        middle: -4.369,
        spread: 0.354,
      },
      causes: {
        hunting: {
          middle: -1.439,
          spread: 0.732,
        },
        'stiff-gear-train': {
          middle: -2.853,
          spread: 0.916,
        },
        'tight-spot': {
          middle: -3.942,
          spread: 0.695,
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
          middle: -1.821,
          spread: 0.973,
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
          middle: -0.245,
          spread: 0.242,
        },
      },
    },
    'sweep-current': {
      usual: {
        middle: -3.707,
        spread: 0.3,
      },
      causes: {
        hunting: {
          middle: -3.378,
          spread: 0.3,
        },
        'stiff-gear-train': {
          middle: -2.007,
          spread: 0.487,
        },
        'tight-spot': {
          middle: -3.358,
          spread: 0.3,
        },
      },
    },
    'tight-spot': {
      usual: {
        middle: 0.016,
        spread: 0.15,
      },
      causes: {
        hunting: {
          middle: 1.921,
          spread: 1.056,
        },
        'tight-spot': {
          middle: 2.013,
          spread: 0.469,
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
          middle: 0.231,
          spread: 0.108,
        },
      },
    },
    'stall-current': {
      usual: {
        middle: -0.001,
        spread: 0.05,
      },
      causes: {
        'failing-motor': {
          middle: -0.294,
          spread: 0.106,
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
          spread: 0.031,
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
        },
      },
    },
    'scrub-share': {
      usual: {
        middle: -1.758,
        spread: 0.178,
      },
      causes: {
        'stiff-gear-train': {
          middle: -1.041,
          spread: 0.222,
        },
        overload: {
          middle: -0.824,
          spread: 0.173,
        },
        'slipping-horn': {
          middle: -1.946,
          spread: 0.212,
        },
      },
    },
    'scrub-hold': {
      usual: {
        middle: -3.011,
        spread: 0.717,
      },
      causes: {
        'stiff-gear-train': {
          middle: -1.968,
          spread: 1.27,
        },
        overload: {
          middle: -0.795,
          spread: 0.458,
        },
      },
    },
    'scrub-drop': {
      usual: {
        middle: 0.026,
        spread: 0.015,
      },
      causes: {
        'soft-rail': {
          middle: 0.047,
          spread: 0.015,
        },
      },
    },
    'left-right': {
      usual: {
        middle: -0.005,
        spread: 0.04,
      },
      causes: {
        'binding-left': {
          middle: -0.318,
          spread: 0.116,
        },
        'binding-right': {
          middle: 0.317,
          spread: 0.106,
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
        },
      },
    },
  },
  temper: 1,
};
