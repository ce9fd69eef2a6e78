// SPDX-License-Identifier: MIT
// What a rig says of itself, checked. The host learns taps, outputs and errors from here and from nowhere else.
// The JSON form and each field are told in firmware-protocol/PROTOCOL.md, "The descriptor".
import { z } from 'zod';

const errorModel = z.object({
  /** Half-widths of rectangular distributions. */
  gain: z.number().min(0).max(1),
  /** In the tap's unit, before a zero trim. */
  offset: z.number().min(0),
  /** Zero drift after a trim, in the tap's unit. */
  drift: z.number().min(0),
  /** Integral non-linearity in LSB of one conversion. */
  /** The shunt behind a current tap: its part of `gain`, shared by all taps on the same one. */
  shunt: z.object({ name: z.string().min(1), tolerance: z.number().min(0) }).optional(),
  inlLsb: z.number().min(0),
  /** Standard deviation of one conversion's noise, LSB. */
  noiseLsb: z.number().min(0),
});
const linear = z.object({ kind: z.literal('linear'), zeroV: z.number(), unitsPerV: z.number() });
const ntc = z.object({
  kind: z.literal('ntc'),
  pullUpOhm: z.number().positive(),
  r25Ohm: z.number().positive(),
  betaK: z.number().positive(),
});
export const tapSchema = z.object({
  id: z.string().min(1),
  /** Converter input 0..7. */
  channel: z.int().min(0).max(7),
  /** Multiplexer input 0..7 when channel is the multiplexer. */
  mux: z.int().min(0).max(7).optional(),
  /** Setting of a jumper on the board that a person must make first; taps of one channel differ in it. */
  jumper: z.string().min(1).optional(),
  quantity: z.enum(['voltage', 'current', 'temperature']),
  unit: z.enum(['V', 'A', 'C']),
  scale: z.discriminatedUnion('kind', [linear, ntc]),
  low: z.number(),
  high: z.number(),
  cornerHz: z.number().positive(),
  error: errorModel,
});
export const outputSchema = z.object({ id: z.string(), low: z.number(), high: z.number(), unit: z.string() });
export const descriptorSchema = z.object({
  board: z.string().min(1),
  variant: z.string(),
  firmware: z.string(),
  reference: z.object({ volts: z.number().positive(), tolerance: z.number().positive(), mux: z.int() }),
  nominalSupplyV: z.number().positive(),
  clockTolerance: z.number().positive(),
  tickS: z.number().positive(),
  conversionTicks: z.number().positive(),
  scansPerBlock: z.int().positive(),
  taps: z.array(tapSchema).min(1),
  outputs: z.array(outputSchema),
  /** Ohms of the load bank, bit order. */
  loadsOhm: z.array(z.number().positive()),
  limitedFeedOhm: z.number().positive(),
});
/** What one rig keeps in its store: its number, its name, its calibration. Blank stores mean defaults. */
export const storeSchema = z.object({
  serial: z.string(),
  name: z.string(),
  calibration: z.array(
    z.object({
      tap: z.string(),
      gain: z.number(),
      offset: z.number(),
      /** Expanded uncertainties, k = 2, of calibrated = gain x plain + offset. */
      gainU: z.number().min(0),
      offsetU: z.number().min(0),
      /** Of gain and offset: points far from zero tie them together. */
      correlation: z.number().min(-1).max(1).default(0),
      /** ISO 8601, the day. */
      date: z.string(),
      origin: z.string(),
      /** The meter it was made with, as a number, and what part of the variance is its per cent: all taps calibrated
       *  with one meter on one quantity share that part. */
      meter: z.object({ number: z.int().min(0), share: z.number().min(0).max(1) }).optional(),
    }),
  ),
});
export type Tap = z.infer<typeof tapSchema>;
export type Descriptor = z.infer<typeof descriptorSchema>;
export type Store = z.infer<typeof storeSchema>;
export interface RigDescription {
  readonly descriptor: Descriptor;
  readonly store: Store | null;
}
