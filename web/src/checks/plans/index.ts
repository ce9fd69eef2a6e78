// SPDX-License-Identifier: MIT
// The eight plans. Chance is the share of cars on which the item finds something at that occasion, cost what it
// costs to find it on the track instead; both from memory and only good for the order.
import { looks } from './looks.ts';
import type { CheckItem, LookItem, Plan, PlanItem } from './plan.ts';

const check = (id: string, chance: number, cost: number, ...after: string[]): CheckItem => ({
  kind: 'check',
  check: id,
  chance,
  cost,
  after,
});
type Look = (typeof looks)[keyof typeof looks];
const seen = (look: Look, chance: number, cost: number, ...after: string[]): LookItem => ({
  ...look,
  chance,
  cost,
  after,
});
/** Nothing is powered before pack and polarity were looked at and measured. */
const beforePower: readonly PlanItem[] = [
  seen(looks.packSkin, 0.03, 10),
  seen(looks.polarity, 0.03, 10),
  check('rest-voltage', 0.06, 8, 'pack-skin', 'polarity-marks'),
];
const powered = ['rest-voltage'];
/** The winding is measured while the motor is as warm as the air: before it spins. */
const cold = 'winding-balance';

export const plans: readonly Plan[] = [
  {
    id: 'parts-before-soldering',
    title: 'Parts before soldering',
    why: 'A part that is bad out of its box is sent back before a soldering iron touched it.',
    items: [
      ...beforePower,
      seen(looks.phases, 0.03, 3),
      check('sensor-cable', 0.1, 4),
      check('servo-centre', 0.3, 2, ...powered),
      check('servo-idle', 0.08, 4, ...powered),
      check('servo-no-load', 0.08, 4, 'servo-idle'),
      check('servo-speed', 0.06, 3, 'servo-no-load'),
      // After everything that wants the horn free: it leaves a block beside it.
      check('servo-stall', 0.06, 4, 'servo-speed'),
      check('winding-balance', 0.04, 5, ...powered),
      check('motor-no-load', 0.08, 5, 'sensor-cable', cold, ...powered),
    ],
  },
  {
    id: 'first-power-up',
    title: 'First power',
    why: 'A new or rewired car meets its pack for the first time through ten ohm, and smoke stays where it is.',
    items: [
      ...beforePower,
      seen(looks.joints, 0.1, 9),
      seen(looks.capacitor, 0.04, 10),
      seen(looks.sensorPlug, 0.05, 3),
      seen(looks.wheelsClear, 0.05, 6),
      check('first-power', 0.08, 10, 'rest-voltage', 'solder-joints', 'capacitor-side'),
      check('rail-setting', 0.1, 6, 'first-power'),
      check('radio-range', 0.15, 6, 'first-power'),
      check('failsafe', 0.15, 9, 'radio-range', 'wheels-clear'),
      check('servo-centre', 0.3, 3, 'rail-setting'),
      check('servo-end-points', 0.35, 5, 'servo-centre', 'radio-range'),
      // Measured it is with the motor in a stand: motor before a race.
      seen(looks.throttleTaught, 0.2, 4, 'failsafe', 'wheels-clear', 'sensor-plug'),
    ],
  },
  {
    id: 'motor-before-race',
    title: 'Motor before a race',
    why: 'Whether bearings, rotor and winding are what they were, before ninety minutes in the dark.',
    items: [
      ...beforePower,
      seen(looks.motorScrews, 0.05, 4),
      check('sensor-cable', 0.08, 5, 'motor-screws'),
      check('motor-no-load', 0.1, 5, 'sensor-cable', cold, ...powered),
      check('motor-coastdown', 0.08, 4, 'motor-no-load'),
      check('throttle-range', 0.06, 3, 'motor-no-load'),
      check('winding-balance', 0.03, 5, ...powered),
    ],
  },
  {
    id: 'hot-servo',
    title: 'Servo that runs hot',
    why: 'Binding, hunting, friction, too much voltage, overload or a failing motor: the checks that tell them apart.',
    asksWhy: 'servo',
    items: [
      ...beforePower,
      seen(looks.servoMount, 0.1, 3),
      check('rail-setting', 0.1, 5, ...powered),
      check('rail-sag', 0.05, 4, 'rail-setting'),
      check('servo-end-points', 0.35, 4, 'rail-setting', 'servo-mount'),
      check('servo-no-load', 0.15, 4, 'servo-idle'),
      check('servo-speed', 0.1, 3, 'servo-no-load'),
      check('servo-stall', 0.1, 3, 'servo-speed'),
      check('servo-scrub', 0.15, 4, 'servo-end-points'),
      // From here on the linkage is off.
      check('servo-idle', 0.25, 4, 'servo-scrub'),
    ],
  },
  {
    id: 'controller-supply',
    title: 'Supply of the controller',
    why: 'Whether the receiver rail holds its setting while the servo works its hardest.',
    items: [
      ...beforePower,
      check('rail-setting', 0.1, 6, ...powered),
      check('rail-sag', 0.12, 7, 'rail-setting'),
      check('rail-ripple', 0.06, 4, 'rail-setting'),
      check('servo-scrub', 0.08, 5, 'rail-setting'),
      check('pack-sag', 0.12, 5, ...powered),
    ],
  },
  {
    id: 'whole-car',
    title: 'Whole car',
    why: 'Everything that can be judged with the motor in the car and the wheels clear, the evening before.',
    withinS: 15 * 60,
    items: [
      ...beforePower,
      seen(looks.wires, 0.08, 6),
      seen(looks.wheelsClear, 0.05, 6),
      seen(looks.mesh, 0.1, 4),
      seen(looks.servoMount, 0.05, 3),
      check('first-power', 0.03, 10, 'rest-voltage', 'wires'),
      check('rail-setting', 0.06, 6, 'first-power'),
      check('rail-sag', 0.08, 7, 'rail-setting'),
      check('rail-ripple', 0.04, 4, 'rail-setting'),
      check('radio-range', 0.05, 6, 'first-power'),
      check('failsafe', 0.1, 9, 'radio-range', 'wheels-clear'),
      check('servo-scrub', 0.08, 5, 'first-power', 'servo-mount'),
      check('sensor-cable', 0.06, 5),
      check('pack-sag', 0.1, 5, 'first-power'),
      check('joint-drop', 0.08, 6, 'first-power'),
    ],
  },
  {
    id: 'between-rounds',
    title: 'Between rounds',
    why: 'Three minutes, the car closed, two adapters: pack lead and receiver.',
    withinS: 3 * 60,
    items: [
      seen(looks.hot, 0.08, 6),
      check('rest-voltage', 0.08, 7),
      check('rail-setting', 0.04, 6, ...powered),
      check('servo-scrub', 0.08, 5, ...powered),
    ],
  },
  {
    id: 'after-crash',
    title: 'After a crash',
    why: 'Five minutes: what bends, tears and pinches first.',
    withinS: 5 * 60,
    items: [
      seen(looks.packSkin, 0.1, 10),
      seen(looks.wires, 0.15, 8),
      seen(looks.chassis, 0.3, 4),
      seen(looks.servoMount, 0.15, 5),
      seen(looks.sensorPlug, 0.1, 5),
      check('rest-voltage', 0.08, 8, 'pack-skin', 'wires'),
      check('servo-scrub', 0.2, 5, ...powered, 'servo-mount', 'chassis'),
      check('sensor-cable', 0.15, 5, 'sensor-plug'),
    ],
  },
];
export const planById = (id: string): Plan | undefined => plans.find((plan) => plan.id === id);
