// SPDX-License-Identifier: MIT
// What is plugged for more than one check, in one wording, so that a plan asks for it once.
import type { WiringStep } from './check.ts';

/** A step as it is told to whoever stands at the bench. */
export const wiringWords = ({ words }: Pick<WiringStep, 'words'>): string => `Wire: ${words}`;

export const packLead: WiringStep = { words: 'Pack lead through the pack adapter.', tap: 'packVoltage' };
/** Before anything is live, the tap that also shows a reversed pack. */
export const packLeadUnpowered: WiringStep = { ...packLead, tap: 'polarity' };
export const balanceLead: WiringStep = {
  words: 'Balance lead of the pack into the balance tap.',
  tap: 'midCell',
};
export const railAdapter: WiringStep = {
  words: 'Rail adapter with the load bank into a free receiver slot.',
  tap: 'railVoltage',
};
export const servoLead: WiringStep = {
  words: 'Servo lead into the rail adapter at the receiver slot.',
  tap: 'railVoltage',
};
export const servoThermistor: WiringStep = {
  words: 'Thermistor taped on the servo case, at its motor.',
  tap: 'thermistorServo',
};
export const throttleLead: WiringStep = {
  words: 'Throttle lead of the controller into the throttle socket, rail adapter at the receiver slot.',
  tap: 'railVoltage',
};
export const sensorCable: WiringStep = {
  words: 'Sensor cable through the sensor adapter.',
  tap: 'thermistorMotor',
};
export const bareMotor: WiringStep = {
  words: 'Clamp the bare motor in a stand, pinion off, zero timing on the controller, drag brake zero.',
};
