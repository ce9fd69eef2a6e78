// SPDX-License-Identifier: MIT
// The units that there are to choose, as the page asks for them: by kind, each with its symbol.
import { choices, type UnitKind } from '#core/units/shown-unit';
import { units, type UnitName } from '#core/units/units';

interface UnitChoices {
  readonly kind: UnitKind;
  readonly title: string;
  readonly choices: readonly { readonly unit: UnitName; readonly symbol: string }[];
}
const titles: Readonly<Record<UnitKind, string>> = {
  temperature: 'Temperature',
  torque: 'Torque',
  rotation: 'Rotational speed',
};
/** What there is to choose, as the page asks it. */
export const unitChoices: readonly UnitChoices[] = (Object.keys(choices) as UnitKind[]).map((kind) => ({
  kind,
  title: titles[kind],
  choices: choices[kind].map((unit) => ({ unit, symbol: units[unit].symbol })),
}));
