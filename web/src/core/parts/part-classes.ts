// SPDX-License-Identifier: MIT
// What parts of a class usually have, to fill a form quickly: typical values from memory, no source. Every figure is
// marked in the part as typical until somebody enters what the very part has. Pure.
import type { Car, PartKind } from './part.ts';
import type { Part } from './shelf.ts';

type Bare<Kind extends PartKind> = Omit<Extract<Part, { kind: Kind }>, 'name' | 'typical'>;
export interface PartClass {
  readonly title: string;
  readonly part: { readonly [Kind in PartKind]: Bare<Kind> }[PartKind];
}
const motor = (turns: number, kv: number, noLoadA: number): PartClass => ({
  title: `Motor, ${turns} turns, sensored`,
  part: {
    kind: 'motor',
    turns,
    polePairs: 1,
    sensored: true,
    ratedKvRpmPerV: kv,
    ratedKvTolerance: 0.07,
    /** Full packs and 40 % above it, from memory. */
    ratedSpeedRpm: Math.round((kv * 8.4 * 1.4) / 1000) * 1000,
    ratedNoLoadA: noLoadA,
  },
});
const servo = (size: 'standard' | 'low-profile', ratedVoltageV: number, stallA: number): PartClass => ({
  title: `Servo, ${size}, ${ratedVoltageV} V`,
  part: {
    kind: 'servo',
    size,
    digital: true,
    ratedVoltageV,
    ratedStallA: stallA,
    ratedStallTolerance: 0.15,
    degreesPerUs: 0.1,
  },
});
const controller = (railSettingV: number): PartClass => ({
  title: `Controller, rail at ${railSettingV.toFixed(1)} V`,
  part: {
    kind: 'controller',
    railSettingV,
    railFloorV: 4,
    throttle: { lowUs: 1000, neutralUs: 1500, highUs: 2000 },
  },
});
const pack = (chemistry: Car['pack']['chemistry'], words: string, capacityAh: number): PartClass => ({
  title: `Pack, 2 cells, ${words}, ${capacityAh} Ah`,
  part: { kind: 'pack', cells: 2, chemistry, capacityAh },
});
const drive = (words: string, pinionTeeth: number, spurTeeth: number, diameterM: number): PartClass => ({
  title: `Drive train, ${words}`,
  part: { kind: 'drive', pinionTeeth, spurTeeth, internalRatio: 2.6, tyreDiameterM: diameterM },
});
const leads: PartClass = {
  title: 'Leads of 12 AWG with plugs',
  part: {
    kind: 'leads',
    joints: [
      { name: 'pack plug', kind: 'plug' },
      { name: 'controller lead', kind: 'lead', gaugeAwg: 12, lengthM: 0.1 },
      { name: 'joint at the motor', kind: 'solder' },
    ],
  },
};
export const partClasses = {
  slowMotor: motor(21.5, 1800, 2),
  calmMotor: motor(17.5, 2300, 2.6),
  clubMotor: motor(13.5, 2900, 3.4),
  fastMotor: motor(10.5, 3700, 4.8),
  standardServo: servo('standard', 6, 2.5),
  lowServo: servo('low-profile', 7.4, 3.8),
  lowRail: controller(6),
  highRail: controller(7.4),
  lipo: pack('lipo', 'lithium polymer', 5),
  liHv: pack('liHv', 'high-voltage lithium polymer', 5),
  radio: { title: 'Radio, two channels', part: { kind: 'radio' } },
  leads,
  truckDrive: drive('1:10 truck', 24, 84, 0.083),
  buggyDrive: drive('1:10 buggy', 22, 81, 0.083),
} as const satisfies Readonly<Record<string, PartClass>>;
export type PartClassId = keyof typeof partClasses;

const names: Readonly<Record<PartKind, string>> = {
  motor: 'Motor',
  servo: 'Steering servo',
  controller: 'Controller',
  pack: 'Race pack',
  radio: 'Radio',
  leads: 'Leads',
  drive: 'Drive train',
};
/** Paths of the figures in a part, "throttle.lowUs"; its kind and name are nobody's typical value. */
function figures(value: object, before = ''): string[] {
  return Object.entries(value).flatMap(([key, each]) => {
    if (key === 'kind' || Array.isArray(each)) return [];
    const path = `${before}${key}`;
    return typeof each === 'object' && each !== null ? figures(each as object, `${path}.`) : [path];
  });
}
export function typicalPart(id: PartClassId, name?: string): Part {
  const { part } = partClasses[id] as PartClass;
  return { ...structuredClone(part), name: name ?? names[part.kind], typical: figures(part) } as Part;
}
const carClasses = {
  clubTruck: {
    title: '1:10 two-wheel-drive truck, 13.5 turns',
    parts: ['clubMotor', 'lowServo', 'truckDrive'],
  },
  guestTruck: {
    title: '1:10 two-wheel-drive truck, 17.5 turns',
    parts: ['calmMotor', 'standardServo', 'truckDrive'],
  },
  buggy: { title: '1:10 two-wheel-drive buggy, 13.5 turns', parts: ['clubMotor', 'lowServo', 'buggyDrive'] },
} as const;
export type CarClassId = keyof typeof carClasses;
export const carClassTitles = Object.entries(carClasses).map(
  ([id, { title }]) => [id as CarClassId, title] as const,
);

/** A car of the class; rail of 6 V, two lithium polymer cells. */
export function typicalCar(id: CarClassId, name: string): Car {
  const parts = [...carClasses[id].parts, 'lowRail', 'lipo'] as const;
  const fitted = parts.map((each) => typicalPart(each)).map((part) => [part.kind, part]);
  return { name, ...Object.fromEntries(fitted) } as Car;
}
/** The car, the figure at `path` ("motor.turns") no longer called typical. */
export function asOwn(car: Car, path: string): Car {
  const [kind, ...rest] = path.split('.');
  const part = car[kind as PartKind];
  if (!part?.typical) return car;
  const { typical, ...bare } = part;
  const left = typical.filter((each) => each !== rest.join('.'));
  return { ...car, [kind]: left.length > 0 ? { ...bare, typical: left } : bare } as Car;
}
export function isTypical(car: Car, path: string): boolean {
  const [kind, ...rest] = path.split('.');
  return car[kind as PartKind]?.typical?.includes(rest.join('.')) ?? false;
}
