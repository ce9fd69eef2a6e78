// SPDX-License-Identifier: MIT
// Parts as the shelf holds them: what the label says and what the person knows of them. zod guards the
// boundary (files, forms); impossible values get words that say what to do. Units SI, named in the field.
import { z } from 'zod';
import { baselinesSchema } from '../history/baseline.ts';
import { overridesSchema } from '../limits/override.ts';
import { identitySchema, type PartRef } from './identity.ts';
import { setUpSchema } from './set-up.ts';

const positive = (what: string, max: number, unit: string) =>
  z
    .number({ error: `${what}: a number in ${unit} is needed` })
    .positive(`${what} must be more than 0 ${unit}`)
    .max(max, `${what} can be at most ${max} ${unit}`);

const partName = z
  .string({ error: 'a name in words is needed' })
  .trim()
  .min(1, 'give it a name that it can be told by')
  .max(60, 'a name has at most 60 letters');
const share = (what: string, most: number) => {
  const words = `${what} is a share from 0 to ${most}: 0.05 means 5 %`;
  return z.number({ error: words }).min(0, words).max(most, words);
};

const whole = (what: string) => z.int({ error: `${what}: a whole number is needed` });
const yesOrNo = (what: string) => z.boolean({ error: `${what} is true or false` });
const chemistries = ['lipo', 'liHv', 'lifepo4', 'nimh'] as const;

const marked = {
  /** Stays with the part wherever it goes and whatever it is called. */
  id: identitySchema.optional(),
  /** Fields that hold what is usual for the class, until somebody enters what this very part has: "throttle.lowUs". */
  typical: z.array(z.string()).optional(),
};

const pulseUs = z
  .number({ error: 'a throttle pulse: a number in µs is needed' })
  .min(500, 'a throttle pulse is at least 500 µs')
  .max(2500, 'a throttle pulse is at most 2500 µs');

export const motorSchema = z.object({
  kind: z.literal('motor'),
  name: partName,
  ...marked,
  turns: positive('turns', 60, 'turns'),
  polePairs: whole('pole pairs').min(1, 'a motor has at least one pole pair').max(7, 'at most 7 pole pairs'),
  sensored: yesOrNo('sensored'),
  /** Mark of the end bell that the motor is set to. */
  timingDegrees: z
    .number({ error: 'timing: a number in degrees is needed' })
    .min(0, 'timing is at least 0 degrees')
    .max(70, 'timing is at most 70 degrees')
    .optional(),
  ratedKvRpmPerV: positive('rated kV', 20000, 'rpm/V'),
  ratedKvTolerance: share('tolerance of kV', 0.3),
  ratedSpeedRpm: positive('rated speed', 120000, 'rpm'),
  ratedNoLoadA: positive('rated no-load current', 40, 'A').optional(),
  /** Voltage the rated no-load current holds at; where the label does not say, 3.7 V a cell of the pack. */
  ratedNoLoadAtV: positive('voltage of the rated no-load current', 20, 'V').optional(),
  /** Phase to phase at 20 C as it was measured on this very motor, and its standard uncertainty. */
  windingOhm: z
    .strictObject({
      ohm: positive('measured winding resistance', 2, 'ohm'),
      u: positive('standard uncertainty of the winding resistance', 2, 'ohm'),
    })
    .refine(({ ohm, u }) => u < ohm / 4, {
      path: ['u'],
      error: 'a winding resistance that may be off by more than a quarter helps nothing: leave it out',
    })
    .optional(),
});
const torque = (what: string) =>
  z
    .number({ error: `${what}: a number in N.m is needed` })
    .positive(`${what} must be more than 0 N.m`)
    .max(10, `${what} can be at most 10 N.m; 1 N.m is 141.6 oz.in or 10.2 kg.cm`);
/** A label's second column. */
const secondRatingSchema = z
  .object({
    voltageV: positive('voltage of the second rating', 9, 'V'),
    stallA: positive('second stall current', 20, 'A').optional(),
    torqueNm: torque('second torque').optional(),
    secondsPer60: positive('second time for 60 degrees', 1, 's').optional(),
  })
  .refine(
    ({ stallA, torqueNm, secondsPer60 }) => (stallA ?? torqueNm ?? secondsPer60) !== undefined,
    'a second rating needs a stall current, a torque or a time',
  );
const stopUs = z
  .number({ error: 'an end point: a number in µs is needed' })
  .min(800, 'an end point is at least 800 µs')
  .max(2200, 'an end point is at most 2200 µs');
const endPointsSchema = z
  .object({ shortUs: stopUs, longUs: stopUs })
  .refine(
    ({ shortUs, longUs }) => shortUs < 1500 && longUs > 1500,
    'the end points lie either side of 1500 µs',
  );
const servoFields = z.object({
  kind: z.literal('servo'),
  name: partName,
  ...marked,
  size: z.enum(['standard', 'low-profile'], { error: 'a servo is standard or low-profile' }).optional(),
  digital: yesOrNo('digital'),
  ratedVoltageV: positive('rated voltage', 9, 'V'),
  ratedStallA: positive('rated stall current', 20, 'A').optional(),
  ratedStallTolerance: share('tolerance of the stall current', 0.5),
  degreesPerUs: positive('degrees per microsecond', 1, 'degrees/us'),
  /** Voltage the rated stall current holds at; the rated voltage where left out. */
  ratedStallAtV: positive('voltage of the rated stall current', 9, 'V').optional(),
  ratedTorqueNm: torque('rated torque').optional(),
  ratedSecondsPer60: positive('rated time for 60 degrees', 1, 's').optional(),
  splineTeeth: whole('teeth of the spline')
    .min(10, 'a spline has at least 10 teeth')
    .max(40, 'a spline has at most 40 teeth')
    .optional(),
  /** Degrees per microsecond as a protractor showed them on this very servo, and their standard uncertainty. */
  measuredDegreesPerUs: z
    .strictObject({
      degreesPerUs: positive('measured degrees per microsecond', 1, 'degrees/us'),
      u: positive('standard uncertainty of the degrees per microsecond', 1, 'degrees/us'),
    })
    .refine(({ degreesPerUs, u }) => u < degreesPerUs / 10, {
      path: ['u'],
      error: 'degrees per microsecond that may be off by more than a tenth help nothing: leave them out',
    })
    .optional(),
  secondRating: secondRatingSchema.optional(),
  /** Where the steering of its car stops, as servo-end-points found it. */
  endPoints: endPointsSchema.optional(),
});
export const servoSchema = servoFields.refine(
  ({ secondRating, ratedVoltageV, ratedStallAtV }) =>
    !secondRating || ![ratedVoltageV, ratedStallAtV].includes(secondRating.voltageV),
  {
    path: ['secondRating', 'voltageV'],
    error: 'the second rating is at the voltage of the first: keep one of them',
  },
);
export const controllerSchema = z.object({
  kind: z.literal('controller'),
  name: partName,
  ...marked,
  railSettingV: positive('rail setting', 9, 'V'),
  railFloorV: positive('lowest voltage of the receiver plus 0.5 V', 8, 'V'),
  throttle: z
    .object({ lowUs: pulseUs, neutralUs: pulseUs, highUs: pulseUs })
    .refine(
      ({ lowUs, neutralUs, highUs }) => lowUs < neutralUs && neutralUs < highUs,
      'the widths must rise from low over neutral to high',
    ),
  /** Switching frequency of its bridge, as its manual or its setting says. */
  pwmHz: positive('switching frequency', 100_000, 'Hz').optional(),
  /** All capacitors at its posts together. */
  capacitorF: z
    .number({ error: 'capacitor: a number in F is needed; 1 mF is 0.001 F' })
    .positive('the capacitor must be more than 0 F')
    .max(0.05, 'the capacitor can be at most 0.05 F; 1 mF is 0.001 F')
    .optional(),
});
export const packSchema = z.object({
  kind: z.literal('pack'),
  name: partName,
  ...marked,
  cells: whole('cells').min(1, 'a pack has at least one cell').max(4, 'the bench takes at most 4 cells'),
  chemistry: z.enum(chemistries, { error: `the chemistry is one of ${chemistries.join(', ')}` }),
  capacityAh: positive('capacity', 20, 'Ah'),
  /** Mean of a race, for what is told at race current. */
  raceCurrentA: positive('race current', 300, 'A').optional(),
});
const steeringPulseUs = z
  .number({ error: 'a steering pulse: a number in µs is needed' })
  .min(500, 'a steering pulse is at least 500 µs')
  .max(2500, 'a steering pulse is at most 2500 µs');
/** Widths at the receiver with the wheel fully left, let go and fully right, both end points of the steering at 100 %. */
export const steeringWidthsSchema = z
  .object({ leftUs: steeringPulseUs, centreUs: steeringPulseUs, rightUs: steeringPulseUs })
  .refine(
    ({ leftUs, centreUs, rightUs }) => (leftUs - centreUs) * (rightUs - centreUs) < 0,
    'left and right must lie on either side of the centre',
  );
export const radioSchema = z.object({
  kind: z.literal('radio'),
  name: partName,
  ...marked,
  steering: steeringWidthsSchema.optional(),
});
export const jointKinds = ['solder', 'bullet', 'plug', 'lead'] as const;
/** One place where current passes from metal to metal, or one length of wire. */
const jointSchema = z
  .object({
    name: partName,
    kind: z.enum(jointKinds, { error: `a joint is one of ${jointKinds.join(', ')}` }),
    gaugeAwg: whole('gauge').min(4, 'a gauge is at least 4 AWG').max(30, 'at most 30 AWG').optional(),
    lengthM: positive('length of the lead', 2, 'm').optional(),
  })
  .refine(
    ({ kind, gaugeAwg, lengthM }) => kind !== 'lead' || (gaugeAwg !== undefined && lengthM !== undefined),
    'a lead needs its gauge (AWG) and its length in m',
  );
/** Leads and joints between pack, controller and motor, in the order they are probed. */
export const leadsSchema = z.object({
  kind: z.literal('leads'),
  name: partName,
  ...marked,
  joints: z
    .array(jointSchema)
    .min(1, 'leads have at least one joint: leave the list out otherwise')
    .max(16, 'at most 16 joints')
    .refine(
      (joints) => new Set(joints.map(({ name }) => name.toLowerCase())).size === joints.length,
      'every joint needs a name of its own',
    )
    .optional(),
});
/** From the motor's shaft to the road. */
export const driveSchema = z.object({
  kind: z.literal('drive'),
  name: partName,
  ...marked,
  pinionTeeth: whole('teeth of the pinion')
    .min(5, 'a pinion has at least 5 teeth')
    .max(99, 'at most 99 teeth'),
  spurTeeth: whole('teeth of the spur').min(20, 'a spur has at least 20 teeth').max(200, 'at most 200 teeth'),
  internalRatio: positive('internal ratio', 20, '(spur turns a wheel turn)'),
  tyreDiameterM: positive('tyre diameter', 0.5, 'm'),
});
export const partKinds = ['motor', 'servo', 'controller', 'pack', 'radio', 'leads', 'drive'] as const;
export type PartKind = (typeof partKinds)[number];
/** One car on the bench: the parts that a check may ask for. */
export const carSchema = z.object({
  name: partName,
  id: identitySchema.optional(),
  /** Identities of the car's own parts that nobody entered: runs are of them all the same. */
  unentered: z.partialRecord(z.enum(partKinds), identitySchema).optional(),
  motor: motorSchema,
  servo: servoSchema,
  controller: controllerSchema,
  pack: packSchema,
  radio: radioSchema.optional(),
  leads: leadsSchema.optional(),
  drive: driveSchema.optional(),
  /** A person's own limits, and what the parts' first runs set. */
  overrides: overridesSchema.optional(),
  baselines: baselinesSchema.optional(),
  /** What was set and when, oldest first. */
  setUp: setUpSchema.optional(),
});
export type Motor = z.infer<typeof motorSchema>;
export type Servo = z.infer<typeof servoSchema>;
export type Controller = z.infer<typeof controllerSchema>;
export type Pack = z.infer<typeof packSchema>;
export type Car = z.infer<typeof carSchema>;
export type Radio = z.infer<typeof radioSchema>;
export type Leads = z.infer<typeof leadsSchema>;
export type Joint = z.infer<typeof jointSchema>;
export type Drive = z.infer<typeof driveSchema>;
const partWords = { radio: 'radio', leads: 'leads', drive: 'drive train' } as const;
/** What a part is called; one that nobody entered is the car's own. */
export function partNameOf(car: Car, part: PartKind): string {
  const known = car[part];
  if (known) return known.name;
  return `${partWords[part as keyof typeof partWords]} of ${car.name}`;
}
export function partRefOf(car: Car, part: PartKind): PartRef {
  const partId = car[part] ? car[part].id : car.unentered?.[part];
  return { partName: partNameOf(car, part), ...(partId !== undefined && { partId }) };
}
