// SPDX-License-Identifier: MIT
// What passes between page and worker about a guided calibration: the wish, what a person is asked and answers, points
// as they are taken, how it ended. Checked on arrival like all messages.
import { z } from 'zod';
import { meterQuantities, meterSchema } from '#core/calibration/meter';
import { carSchema } from '#core/parts/part';
import { storeSchema } from '#core/samples/rig-description';

const pointSchema = z.object({
  shown: z.number(),
  shownU: z.number(),
  meter: z.number(),
  meterOwnU: z.number(),
  shared: z.array(z.object({ key: z.string(), u: z.number() })),
});
const lineSchema = storeSchema.shape.calibration.element;
export const tapOutcomeSchema = z.object({
  tap: z.string(),
  state: z.enum(['adopted', 'not adopted', 'refused', 'not reached']),
  words: z.string(),
  line: lineSchema.optional(),
  points: z.array(pointSchema),
  tightness: z.array(z.object({ at: z.number(), declaredU: z.number(), calibratedU: z.number() })),
});
export type TapOutcome = z.infer<typeof tapOutcomeSchema>;

const actSchema = z.object({
  kind: z.literal('act'),
  words: z.string(),
  /** What comes after it is done: nothing is fed, the feed comes on, or a load while it is on. */
  after: z.enum(['safe', 'goes live', 'live']),
  taps: z.array(z.string()),
});
const readSchema = z.object({
  kind: z.literal('read'),
  words: z.string(),
  quantity: z.enum(meterQuantities),
  place: z.enum(['source', 'packCurrent', 'railCurrent', 'limitedFeed']),
  taps: z.array(z.string()),
  /** Why what was entered before can't be used. */
  refused: z.string().nullable(),
});
export const calibrationAskSchema = z.discriminatedUnion('kind', [actSchema, readSchema]);
export type CalibrationAsk = z.infer<typeof calibrationAskSchema>;

export const calibrationWishSchema = z.object({
  taps: z.array(z.string()).min(1, 'nothing was chosen to calibrate'),
  meter: meterSchema,
  car: carSchema,
  today: z.iso.date(),
  thermistorsIn: z.enum(['ice', 'together']),
  feedBy: z.enum(['taps', 'meter']),
});
export type CalibrationWish = z.infer<typeof calibrationWishSchema>;

export const toCalibration = [
  z.object({ kind: z.literal('calibrate'), wish: calibrationWishSchema }),
  /** `value` answers a reading; null is no number. */
  z.object({ kind: z.literal('calibrationAnswer'), askId: z.number(), value: z.number().nullable() }),
] as const;
export const fromCalibration = [
  z.object({ kind: z.literal('calibrationAsk'), askId: z.number(), ask: calibrationAskSchema }),
  z.object({ kind: z.literal('calibrationDoing'), words: z.string() }),
  z.object({ kind: z.literal('calibrationPoint'), tap: z.string(), point: pointSchema }),
  z.object({
    kind: z.literal('calibrationEnded'),
    outcomes: z.array(tapOutcomeSchema),
    stored: z.boolean(),
    words: z.string(),
  }),
] as const;
