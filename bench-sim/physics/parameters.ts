// SPDX-License-Identifier: MIT
// Everything that makes one car on the bench what it is, in SI units. It holds numbers only: no model, no
// label and no fault. The part models read it, `population.ts` draws it and `fault-effects.ts` spoils it.
import type { HornParameters } from './servo-horn.ts';

export interface PackParameters {
  capacityAh: number;
  /** State of charge of the lower and the upper cell, 0..1. */
  charge: [number, number];
  seriesOhm: number;
  polarisationOhm: number;
  polarisationS: number;
  /** What the lower cell has of both resistances, 0..1. */
  lowerShare: number;
  /** Plus and minus are changed over at the rig's plug. */
  reversed: boolean;
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
  /** Conductance straight across the controller's posts; 0: none. */
  shortS: number;
  /** What conducts above a voltage where something lies the wrong way round; 0: nothing does. */
  diodeV: number;
  diodeS: number;
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
  /** The regulator rings by itself: amplitude at the receiver (0: it does not) and frequency. */
  ringV: number;
  ringHz: number;
}
export interface MotorParameters {
  turns: number;
  /** Where the end bell stands, electrical degrees of advance. Change it by setTiming (motor-timing.ts) only. */
  timingDegrees: number;
  polePairs: number;
  /** Volt seconds per radian at 25 C. */
  fluxVs: number;
  /** Winding, phase to phase, at 20 C. */
  windingOhm: number;
  /** What each of the three windings in star has of their mean; two in series make a pair. */
  phaseShare: [number, number, number];
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
  /** Lines that stay low, whatever the rotor does. */
  deadHallLines: [boolean, boolean, boolean];
  /** Lines B and C have changed places in the sensor cable. */
  hallLinesSwapped: boolean;
  /** Pulses on line B that no magnet made, per second. */
  hallNoiseHz: number;
  /** Contacts of the sensor cable lost per second while somebody moves it. */
  hallLooseHz: number;
  /** How much warmer than the air it begins. */
  startAboveAirK: number;
  windingJPerK: number;
  windingToCanKPerW: number;
  canJPerK: number;
  canToAirKPerW: number;
}
export interface LinkageParameters {
  /** Stops of the steering from centre towards shorter and longer pulses, wheels off, as horn angles, both positive. */
  shortRad: number;
  longRad: number;
  /** How much earlier it stops with the wheels hanging, and with the suspension pressed down. */
  droopRad: number;
  compressionRad: number;
  stiffnessNmPerRad: number;
  dampingNms: number;
  /** Friction of the linkage, and the twist after which it slides. */
  frictionNm: number;
  frictionTwistRad: number;
  /** The same of the tyres on the ground. */
  scrubNm: number;
  scrubTwistRad: number;
  /** Torque above which the horn turns on its spline; Infinity: it holds. */
  holdsNm: number;
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
  /** More friction about one place of the travel, and the place; 0: none. */
  tightNm: number;
  tightAtRad: number;
  /** The feedback track is worn through at its centre: it reads this much too far on either side; 0: it is whole. */
  wornJumpRad: number;
  /** How far a loose block gives way, rad/s per N m; 0: it holds. */
  blockCreep: number;
  linkage: LinkageParameters;
  horn: HornParameters;
}
/** A joint or lead between pack, controller and motor, or on the receiver rail. */
export interface JointParameters {
  /** As the person calls it. */
  name: string;
  kind: 'solder' | 'bullet' | 'plug' | 'lead';
  /** At 20 C; leads warm up as copper does. */
  ohm: number;
  gaugeAwg?: number;
  lengthM?: number;
}
export interface ProbeParameters {
  /** What two metals at the tips make by themselves. */
  contactV: number;
  /** Clips and leads by which the pack load's current is sent through a part. */
  clipOhm: number;
}
/** Radio and receiver. Widths in the order left, centre, right and full brake, neutral, full throttle. */
export interface RadioParameters {
  frameS: number;
  /** Standard deviation of a pulse width. */
  jitterS: number;
  steeringS: [number, number, number];
  throttleS: [number, number, number];
  /** Steering on channel 2, throttle on channel 1. */
  crossed: boolean;
  /** From power to the first pulse. */
  startS: number;
  /** From the loss of the transmitter until the receiver takes its own throttle; until then it repeats the last. */
  failSafeS: number;
  failSafeTrigger: number;
  /** From the transmitter's power until the link stands again, and how long old positions come first. */
  linkS: number;
  staleS: number;
  noiseSeed: number;
}
/** Wheels off; torque and inertia at the motor's shaft. */
export interface DriveParameters {
  pinionTeeth: number;
  spurTeeth: number;
  internalRatio: number;
  tyreDiameterM: number;
  inertiaKgM2: number;
  frictionNm: number;
  /** Run-out of the spur: amplitude, and the spur's angle past its paint dot where it drags most. */
  runOutNm: number;
  runOutRad: number;
  /** A tight place on the spur. */
  tightNm: number;
  tightRad: number;
  /** The pinion off its centre: amplitude, and the angle of the shaft past the dot's start. */
  eccentricNm: number;
  eccentricRad: number;
}
export interface SensorParameters {
  lagS: number;
  gain: number;
  /** Thermistors at the motor and at the servo case make no contact. */
  open: boolean;
  /** The thermistor line of the sensor cable lies at ground. */
  motorShorted: boolean;
  /** Contacts of the thermistor line lost per second while somebody moves the sensor cable. */
  motorLooseHz: number;
}
export interface CarParameters {
  ambientC: number;
  pack: PackParameters;
  line: SupplyLineParameters;
  controller: SpeedControllerParameters;
  rail: RailParameters;
  motor: MotorParameters;
  servo: ServoParameters;
  radio: RadioParameters;
  joints: JointParameters[];
  probe: ProbeParameters;
  sensor: SensorParameters;
  drive: DriveParameters;
  /** Ohms of the load bank's three resistors, and of the shunt in the rig's rail adapter. */
  bankOhm: [number, number, number];
  railShuntOhm: number;
}
