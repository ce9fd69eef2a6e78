// SPDX-License-Identifier: MIT
// What each check is called on a screen and in a sentence, by its id.
export const checkTitles = {
  'rest-voltage': 'Pack at rest: polarity and cells',
  'first-power': 'First power: short, polarity, capacitor',
  'pack-sag': 'Pack: sag and resistance',
  'rail-setting': 'Receiver rail: setting and head-room',
  'rail-sag': 'Receiver rail: sag under load',
  'rail-ripple': 'Receiver rail: ripple',
  'pack-ripple': 'Capacitor: ripple in the pack lead',
  'servo-centre': 'Servo: centre and horn',
  'servo-idle': 'Servo: current at rest, hunting, dead band',
  'servo-no-load': 'Servo: moving current and tight spots',
  'servo-speed': 'Servo: speed',
  'servo-stall': 'Servo: stall current',
  'servo-end-points': 'Servo: end points of the steering',
  'servo-scrub': 'Servo: at work on its tyres',
  'servo-heat': 'Servo: heat at work',
  'sensor-cable': 'Motor: sensor cable',
  'motor-no-load': 'Motor: no-load current and speed',
  'motor-coastdown': 'Motor: run-down',
  'timing-sweep': 'Motor: timing of the end bell',
  'motor-heat': 'Motor: how it warms and cools',
  'gear-mesh': 'Drive train: gear mesh',
  'radio-range': 'Radio: ranges at the receiver',
  failsafe: 'Radio: fail-safe',
  'throttle-range': 'Controller: throttle range',
  'joint-drop': 'Joints and leads: what they cost',
  'winding-balance': 'Motor: winding, phase to phase',
} as const;
export type CheckId = keyof typeof checkTitles;

/** As a sentence names it, in quotes. */
export const named = (id: CheckId): string => `"${checkTitles[id]}"`;
/** The same of an id that may be a check of another version: then the id. */
export const namedOrId = (id: string): string =>
  `"${(checkTitles as Readonly<Record<string, string>>)[id] ?? id}"`;
