// SPDX-License-Identifier: MIT
// Taps as a person calls them in a sentence. It knows names only.
const titles: Readonly<Record<string, string>> = {
  packVoltage: 'pack voltage',
  controllerVoltage: 'controller voltage',
  railVoltage: 'rail voltage',
  packCurrentNarrow: 'pack current (narrow)',
  packCurrentWide: 'pack current (wide)',
  railCurrent: 'rail current',
  thermistorMotor: 'motor',
  thermistorServo: 'servo',
  thermistorController: 'controller',
  thermistorAmbient: 'ambient air',
};
export const titleOf = (id: string): string => titles[id] ?? id;
