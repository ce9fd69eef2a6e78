// SPDX-License-Identifier: MIT
// Everything that makes one car on the bench what it is, in SI units. It holds numbers only: no model, no
// label and no fault. The part models read it, `population.ts` draws it and `fault-effects.ts` spoils it.

export interface PackParameters {
  capacityAh: number;
  /** State of charge of the lower and the upper cell, 0..1. */
  charge: [number, number];
  seriesOhm: number;
  polarisationOhm: number;
  polarisationS: number;
}
export interface SupplyLineParameters {
  /** Pack terminals to the rig's pack tap, low-side shunt included. */
  leadOhm: number;
  feedOhm: number;
  limiterOhm: number;
  limiterDiodeV: number;
  packLoadOhm: number;
  bleederOhm: number;
  /** Controller-side tap to the capacitor. */
  postOhm: number;
  inductanceH: number;
  capacitanceF: number;
  esrOhm: number;
  leakA: number;
  startV: number;
}
export interface SpeedControllerParameters {
  neutralS: number;
  highS: number;
  lowS: number;
  /** Fractions of the travel: dead band about neutral, and where full duty is reached. */
  deadBand: number;
  fullAt: number;
  slewS: number;
  dragBrake: number;
  fullBrake: number;
  cutOffV: number;
  signalLossS: number;
  wakeS: number;
  armS: number;
  idleA: number;
  currentLimitA: number;
  driverOhm: number;
  heatCapacityJPerK: number;
  toAirKPerW: number;
  pwmHz: number;
}
export interface RailParameters {
  settingV: number;
  droopOhm: number;
  wiringOhm: number;
  loopHz: number;
  currentLoopS: number;
  capacitanceF: number;
  esrOhm: number;
  limitA: number;
  dropOutOhm: number;
  efficiency: number;
  standbyA: number;
}
export interface MotorParameters {
  turns: number;
  polePairs: number;
  /** Volt seconds per radian at 25 C. */
  fluxVs: number;
  /** Winding, phase to phase, at 20 C. */
  windingOhm: number;
  inductanceH: number;
  inertiaKgM2: number;
  coulombNm: number;
  viscousNms: number;
  quadraticNms2: number;
  /** Error of each Hall line from its place and the offset of all (timing), electrical radians. */
  hallErrorRad: [number, number, number];
  hallOffsetRad: number;
  hallDuty: [number, number, number];
  startAngleRad: number;
  hallADead: boolean;
  windingJPerK: number;
  windingToCanKPerW: number;
  canJPerK: number;
  canToAirKPerW: number;
}
export interface ServoParameters {
  digital: boolean;
  ratedV: number;
  /** Copper at 20 C; brushes, driver and lead, which do not warm. */
  copperOhm: number;
  fixedOhm: number;
  inductanceH: number;
  torqueNmPerA: number;
  inertiaKgM2: number;
  gear: number;
  coulombNm: number;
  viscousNms: number;
  bandRad: number;
  deadBandRad: number;
  loopS: number;
  centreS: number;
  radPerS: number;
  stopRad: number;
  stiffnessNmPerRad: number;
  dampingNms: number;
  electronicsA: number;
  /** Full drive is reached over this time; 0: at once. */
  softStartS: number;
  /** Chopped by its own electronics above this; 0: never. */
  currentLimitA: number;
  windingJPerK: number;
  windingToCaseKPerW: number;
  caseJPerK: number;
  caseToAirKPerW: number;
  startRad: number;
  /** How far a loose block gives way, rad/s per N m; 0: it holds. */
  blockCreep: number;
}
export interface SensorParameters {
  lagS: number;
  gain: number;
  /** Thermistors at the motor and at the servo case make no contact. */
  open: boolean;
}
export interface CarParameters {
  ambientC: number;
  pack: PackParameters;
  line: SupplyLineParameters;
  controller: SpeedControllerParameters;
  rail: RailParameters;
  motor: MotorParameters;
  servo: ServoParameters;
  sensor: SensorParameters;
  /** Ohms of the load bank's three resistors, and of the shunt in the rig's rail adapter. */
  bankOhm: [number, number, number];
  railShuntOhm: number;
}
