// SPDX-License-Identifier: MIT
// Everything that passes between the page and the bench worker, checked on arrival at both ends. The page only
// asks and is told; it never sees frames. Times in `S` are rig time since the run began.
import { z } from 'zod';
import { meterSchema } from '#core/calibration/meter';
import { carSchema, partKinds } from '#core/parts/part';
import { numberWantedSchema } from '#core/units/asked-number';
import { descriptorSchema, storeSchema } from '#core/samples/rig-description';
import { fromCalibration, toCalibration } from './calibration-messages.ts';

/** Columns of one tap: mean times and values in the tap's unit. NaN marks a gap. */
const column = z.custom<Float64Array>(
  (value) => value instanceof Float64Array,
  'a column of numbers is needed',
);
const columns = z.object({ tap: z.string(), unit: z.string(), timeS: column, value: column });
const lines = (text: string) => z.array(z.string({ error: text }));

export const checkCardSchema = z.object({
  id: z.string(),
  title: z.string(),
  part: z.enum(partKinds),
  why: z.string(),
  taps: lines('tap ids'),
  outputs: lines('outputs it needs'),
  wiring: z.array(z.object({ words: z.string(), tap: z.string().optional() })),
  cautions: lines('cautions'),
  durationS: z.number(),
  moves: z.string().optional(),
  place: z.string().optional(),
  results: z.array(z.object({ id: z.string(), title: z.string(), unit: z.string() })),
});
export type CheckCard = z.infer<typeof checkCardSchema>;

export const toBenchSchema = z.discriminatedUnion('kind', [
  /** The main thread is alive; the worker beats only while the last one is younger than 300 ms. */
  z.object({ kind: z.literal('tick') }),
  /** A MessagePort to the virtual rig travels with it. */
  z.object({ kind: z.literal('openVirtual') }),
  /** Opens a port the person has allowed; the first whose ids match, or the first of all. */
  z.object({ kind: z.literal('openSerial'), vendor: z.number().optional(), product: z.number().optional() }),
  z.object({ kind: z.literal('close') }),
  /** Safe-all in any state. */
  z.object({ kind: z.literal('stop') }),
  z.object({ kind: z.literal('hidden'), hidden: z.boolean() }),
  z.object({
    kind: z.literal('run'),
    runId: z.string(),
    checkId: z.string(),
    car: carSchema,
    startedAt: z.string(),
    meter: meterSchema.optional(),
  }),
  /** `figure` where one was wanted. */
  z.object({ kind: z.literal('done'), askId: z.number(), figure: z.number().optional() }),
  z.object({ kind: z.literal('clearTrip') }),
  /** The record of a run is in the logbook: its journal may go. */
  z.object({ kind: z.literal('kept'), runId: z.string() }),
  /** What was written of a run that never ended; answered by `recovered`. */
  z.object({ kind: z.literal('recover'), runId: z.string() }),
  ...toCalibration,
  /** A record opened again, as text: its columns for the charts. */
  z.object({ kind: z.literal('show'), runId: z.string(), text: z.string() }),
]);
export type ToBench = z.infer<typeof toBenchSchema>;

export const rigPhaseSchema = z.enum(['none', 'opening', 'safe', 'live', 'tripped', 'lost']);
export type RigPhase = z.infer<typeof rigPhaseSchema>;

export const tapCardSchema = z.object({
  id: z.string(),
  unit: z.string(),
  low: z.number(),
  high: z.number(),
});
export type TapCard = z.infer<typeof tapCardSchema>;

export const rigCardSchema = z.object({
  way: z.enum(['virtual', 'serial']),
  board: z.string(),
  firmware: z.string(),
  serial: z.string(),
  name: z.string(),
  taps: z.array(tapCardSchema),
  loadsOhm: z.array(z.number()),
  /** All it says of itself, and what it keeps as it keeps it. */
  description: z.object({ descriptor: descriptorSchema, store: storeSchema.nullable() }),
  /** Tap ids, and the limited feed's resistor. */
  calibratable: z.array(z.string()),
  vendor: z.number().optional(),
  product: z.number().optional(),
});
export type RigCard = z.infer<typeof rigCardSchema>;

export const traceSchema = z.object({
  runId: z.string(),
  columns: z.array(columns),
  gaps: z.array(z.object({ fromS: z.number(), toS: z.number() })),
  marks: z.array(z.object({ atS: z.number(), label: z.string() })),
});
export type Trace = z.infer<typeof traceSchema>;

export const fromBenchSchema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('catalogue'), checks: z.array(checkCardSchema) }),
  z.object({ kind: z.literal('phase'), phase: rigPhaseSchema, words: z.string() }),
  z.object({ kind: z.literal('rig'), rig: rigCardSchema }),
  z.object({
    kind: z.literal('live'),
    /** Newest value of each tap; null: at the end of its range or not scanned. */
    values: z.array(z.object({ tap: z.string(), value: z.number().nullable() })),
    rowsPerS: z.number(),
    lostRows: z.number(),
    feedOn: z.boolean(),
  }),
  z.object({
    kind: z.literal('progress'),
    runId: z.string(),
    step: z.number(),
    of: z.number(),
    words: z.string(),
    leftS: z.number(),
  }),
  /** A hand is wanted on the bench, or a figure read there; answered by `done`. */
  z.object({
    kind: z.literal('ask'),
    runId: z.string(),
    askId: z.number(),
    words: z.string(),
    wanted: numberWantedSchema.optional(),
  }),
  /** Columns that follow those sent before, or, when fresh, stand in their place. */
  z.object({ kind: z.literal('trace'), trace: traceSchema, fresh: z.boolean() }),
  /** The record as text, ready to be kept. */
  z.object({ kind: z.literal('finished'), runId: z.string(), text: z.string() }),
  ...fromCalibration,
  /** Null: nothing was written. */
  z.object({ kind: z.literal('recovered'), runId: z.string(), text: z.string().nullable() }),
  /** Something was refused or failed: what was wrong and what to do. */
  z.object({
    kind: z.literal('trouble'),
    words: z.string(),
    during: z.enum(['open', 'run', 'show', 'calibrate']),
  }),
]);
export type FromBench = z.infer<typeof fromBenchSchema>;
