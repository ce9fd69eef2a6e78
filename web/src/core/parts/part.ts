// SPDX-License-Identifier: MIT
// Parts as the shelf holds them: what the label says and what the person knows of them. zod guards the
// boundary (files, forms); impossible values get words that say what to do. Units SI, named in the field.
import { z } from 'zod';

const positive = (what: string, max: number, unit: string) =>
  z
    .number({ error: `${what}: a number in ${unit} is needed` })
    .positive(`${what} must be more than 0 ${unit}`)
    .max(max, `${what} can be at most ${max} ${unit}`);

const pulseUs = z
  .number()
  .min(500, 'a throttle pulse is at least 500 us')
  .max(2500, 'a throttle pulse is at most 2500 us');

export const motorSchema = z.object({
  kind: z.literal('motor'),
  name: z.string().min(1).max(60),
  turns: positive('turns', 60, 'turns'),
  polePairs: z.int().min(1, 'a motor has at least one pole pair').max(7, 'at most 7 pole pairs'),
  sensored: z.boolean(),
  ratedKvRpmPerV: positive('rated kV', 20000, 'rpm/V'),
  ratedKvTolerance: z.number().min(0).max(0.3),
  ratedSpeedRpm: positive('rated speed', 120000, 'rpm'),
  ratedNoLoadA: positive('rated no-load current', 40, 'A').optional(),
});
export const servoSchema = z.object({
  kind: z.literal('servo'),
  name: z.string().min(1).max(60),
  digital: z.boolean(),
  ratedVoltageV: positive('rated voltage', 9, 'V'),
  ratedStallA: positive('rated stall current', 20, 'A').optional(),
  ratedStallTolerance: z.number().min(0).max(0.5),
  degreesPerUs: positive('degrees per microsecond', 1, 'degrees/us'),
});
export const controllerSchema = z.object({
  kind: z.literal('controller'),
  name: z.string().min(1).max(60),
  railSettingV: positive('rail setting', 9, 'V'),
  railFloorV: positive('lowest voltage of the receiver plus 0.5 V', 8, 'V'),
  throttle: z
    .object({ lowUs: pulseUs, neutralUs: pulseUs, highUs: pulseUs })
    .refine(
      ({ lowUs, neutralUs, highUs }) => lowUs < neutralUs && neutralUs < highUs,
      'the widths must rise from low over neutral to high',
    ),
});
export const packSchema = z.object({
  kind: z.literal('pack'),
  name: z.string().min(1).max(60),
  cells: z.int().min(1).max(4),
  chemistry: z.enum(['lipo', 'liHv', 'lifepo4', 'nimh']),
  capacityAh: positive('capacity', 20, 'Ah'),
});
/** One car on the bench: the parts that a check may ask for. */
export const carSchema = z.object({
  name: z.string().min(1).max(60),
  motor: motorSchema,
  servo: servoSchema,
  controller: controllerSchema,
  pack: packSchema,
});
export type Motor = z.infer<typeof motorSchema>;
export type Servo = z.infer<typeof servoSchema>;
export type Controller = z.infer<typeof controllerSchema>;
export type Pack = z.infer<typeof packSchema>;
export type Car = z.infer<typeof carSchema>;
