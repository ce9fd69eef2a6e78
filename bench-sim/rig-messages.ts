// SPDX-License-Identifier: MIT
// What passes between the page and the virtual rig's worker, checked on arrival. Two lines: the page commands
// the worker; bytes go over a MessagePort of their own, so that another worker can hold its far end.
//   page -> worker   open { seed, faults, speed, store }: a new rig and car; person { act }; unplug; close;
//                    meter { meter }: the person takes it in hand, or puts it away; readMeter { place }; exportStore
//   worker -> page   opened { car, description } with the port transferred; failed { words };
//                    acted { figure } answers person; metered { value }; store { bytes }
//   over the port    to the rig: open (resets it), bytes { bytes }, heard { nowMs }, askTruth, close
//                    from the rig: bytes { bytes }, time { nowMs }, truth { virtual }, lost { words }
import { z } from 'zod';
import { meterSchema } from '#core/calibration/meter';
import { carSchema } from '#core/parts/part';
import { virtualSchema } from '#core/record/run-record';
import { faultNames } from './faults/faults.ts';
import { meteredPlaces } from './virtual-meter.ts';

export const faultsSchema = z.partialRecord(z.enum(faultNames), z.number().min(0).max(1));

export const toRigWorkerSchema = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('open'),
    seed: z.int().min(0),
    faults: faultsSchema,
    /** 1 is real time; the rig slows down where the machine can't keep up. */
    speed: z.number().positive().max(100),
    /** What the rig kept in its memory, as `exportStore` gave it; a blank rig without. */
    store: z.instanceof(Uint8Array).optional(),
  }),
  z.object({ kind: z.literal('person'), act: z.string() }),
  /** The cable is pulled: the rig runs on, nobody hears it. */
  z.object({ kind: z.literal('unplug') }),
  z.object({ kind: z.literal('meter'), meter: meterSchema.nullable() }),
  z.object({ kind: z.literal('readMeter'), place: z.enum(meteredPlaces) }),
  z.object({ kind: z.literal('exportStore') }),
  z.object({ kind: z.literal('close') }),
]);
export type ToRigWorker = z.infer<typeof toRigWorkerSchema>;

export const fromRigWorkerSchema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('opened'), car: carSchema, description: z.string() }),
  z.object({ kind: z.literal('failed'), words: z.string() }),
  /** Answers `person`; null: the person read nothing. */
  z.object({ kind: z.literal('acted'), figure: z.number().nullable() }),
  /** Null: no meter is in hand, or it can't show what is there. */
  z.object({ kind: z.literal('metered'), value: z.number().nullable() }),
  z.object({ kind: z.literal('store'), bytes: z.instanceof(Uint8Array) }),
]);
export type FromRigWorker = z.infer<typeof fromRigWorkerSchema>;

const bytes = z.object({ kind: z.literal('bytes'), bytes: z.instanceof(Uint8Array) });
export const toRigPortSchema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('open') }),
  bytes,
  /** The host has worked off everything up to that time. */
  z.object({ kind: z.literal('heard'), nowMs: z.number() }),
  /** For the record, when a run is over. */
  z.object({ kind: z.literal('askTruth') }),
  z.object({ kind: z.literal('close') }),
]);
export const fromRigPortSchema = z.discriminatedUnion('kind', [
  bytes,
  /** The rig's true time after each slice: a host that waits on it is right at any speed. */
  z.object({ kind: z.literal('time'), nowMs: z.number() }),
  z.object({ kind: z.literal('truth'), virtual: virtualSchema }),
  z.object({ kind: z.literal('lost'), words: z.string() }),
]);
