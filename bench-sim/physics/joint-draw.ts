// SPDX-License-Identifier: MIT
// Draws the joints and leads of a healthy car and the clips of the joint probe. Usual values from memory; the copper of
// a lead by its gauge (ASTM B258), a little more as strands are laid.
import { gaugeOhmPerM } from '#core/measurements/copper';
import type { SeededRandom } from '../seeded-random.ts';
import type { JointParameters, ProbeParameters } from './parameters.ts';

const gaugeAwg = 12;

export function drawJoints(random: SeededRandom): JointParameters[] {
  const bullet = () => random.between(0.12e-3, 0.28e-3);
  const lengthM = Math.round(random.between(100, 180)) / 1000;
  const strands = random.between(1, 1.03);
  return [
    { name: 'plus plug of the pack', kind: 'bullet', ohm: bullet() },
    { name: 'minus plug of the pack', kind: 'bullet', ohm: bullet() },
    { name: 'plus joint at the controller', kind: 'solder', ohm: random.between(0.03e-3, 0.09e-3) },
    { name: 'plus lead', kind: 'lead', gaugeAwg, lengthM, ohm: gaugeOhmPerM(gaugeAwg) * lengthM * strands },
  ];
}
export const drawProbe = (random: SeededRandom): ProbeParameters => ({
  contactV: random.between(-20e-6, 20e-6),
  clipOhm: random.between(5e-3, 12e-3),
});
