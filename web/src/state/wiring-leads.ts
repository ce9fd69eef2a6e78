// SPDX-License-Identifier: MIT
// Where the rig's leads end in the wiring picture: one anchor a tap, in a view box of 850 x 412. A step whose tap
// has no anchor keeps its number at the rig and is told in words only.
export interface Lead {
  readonly number: number;
  readonly rigX: number;
  readonly x: number;
  readonly y: number;
  readonly path: string | null;
}
const anchors: Readonly<Record<string, readonly [number, number]>> = {
  packVoltage: [300, 271],
  polarity: [300, 271],
  midCell: [196, 252],
  jointProbe: [352, 236],
  packCurrentNarrow: [322, 232],
  packCurrentWide: [322, 232],
  controllerVoltage: [352, 262],
  railVoltage: [190, 48],
  railCurrent: [222, 92],
  thermistorMotor: [706, 168],
  thermistorServo: [120, 184],
  thermistorController: [402, 168],
  hall: [490, 166],
};
function path(rigX: number, [x, y]: readonly [number, number]): string {
  const bend = Math.min(y + 70, 290);
  return `M${rigX} 322V${Math.max(bend, 262)}Q${rigX} ${bend - 26} ${(rigX + x) / 2} ${bend - 34}Q${x} ${bend - 42} ${x} ${y}`;
}
export function wiringLeads(steps: readonly { readonly tap?: string }[]) {
  const gap = Math.min(60, 400 / Math.max(steps.length, 1));
  const leads = steps.map((step, index): Lead => {
    const rigX = 432 + index * gap;
    const anchor = step.tap ? anchors[step.tap] : undefined;
    if (!anchor) return { number: index + 1, rigX, x: rigX, y: 338, path: null };
    return { number: index + 1, rigX, x: anchor[0], y: anchor[1], path: path(rigX, anchor) };
  });
  return { leads, rigWidth: Math.max(180, 64 + (steps.length - 1) * gap) };
}
