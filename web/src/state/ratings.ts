// SPDX-License-Identifier: MIT
// What the label of a part says, as words for its page. It reads the car on the shelf and nothing else.
import type { Car } from '#core/parts/part';
import { servoSpeed } from '#core/units/shown-unit';
import { figure, liveFigure, shownUnit } from './figures.ts';

export interface Rating {
  readonly label: string;
  readonly value: string;
}
/** Three digits, as labels have them. */
function torqueWords(torqueNm: number): string {
  const { unit, value } = shownUnit('N.m', torqueNm);
  const decimals = Math.max(0, 2 - Math.floor(Math.log10(value(torqueNm))));
  return `${figure(value(torqueNm), decimals)}\u00a0${unit}`;
}
const percent = (fraction: number) => `±\u00a0${figure(fraction * 100, 0)}\u00a0%`;

function motor({ motor: part }: Car): Rating[] {
  const rated = [
    { label: 'winding', value: `${part.turns} turns` },
    {
      label: 'rated',
      value: `${liveFigure(part.ratedKvRpmPerV, 'rpm/V')} ${percent(part.ratedKvTolerance)}`,
    },
    { label: 'at most', value: liveFigure(part.ratedSpeedRpm, 'rpm') },
  ];
  return part.ratedNoLoadA
    ? [...rated, { label: 'no-load', value: `${figure(part.ratedNoLoadA, 2)} A` }]
    : rated;
}
function servo({ servo: part }: Car): Rating[] {
  const { ratedTorqueNm, ratedSecondsPer60, ratedStallA } = part;
  return [
    { label: 'rated for', value: `${figure(part.ratedVoltageV, 1)} V` },
    ...(ratedTorqueNm ? [{ label: 'torque', value: torqueWords(ratedTorqueNm) }] : []),
    ...(ratedSecondsPer60 ? [{ label: 'speed', value: `${ratedSecondsPer60}\u00a0${servoSpeed}` }] : []),
    ...(ratedStallA
      ? [{ label: 'stall', value: `${figure(ratedStallA, 2)} A ${percent(part.ratedStallTolerance)}` }]
      : []),
  ];
}
const rail = ({ controller: part }: Car): Rating[] => [
  { label: 'setting', value: `${figure(part.railSettingV, 1)} V` },
  { label: 'floor', value: `${figure(part.railFloorV, 1)} V` },
];
const pack = ({ pack: part }: Car): Rating[] => [
  { label: 'cells', value: String(part.cells) },
  { label: 'capacity', value: `${figure(part.capacityAh, 1)} Ah` },
];
export function ratings(place: string, car: Car): Rating[] {
  if (place === 'motor') return motor(car);
  if (place === 'servo') return servo(car);
  if (place === 'rail') return rail(car);
  return place === 'pack' ? pack(car) : [];
}
