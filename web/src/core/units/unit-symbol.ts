// SPDX-License-Identifier: MIT
// How a unit of the wire and the records, written in plain ASCII, is shown to people.

const symbols: Readonly<Record<string, string>> = {
  C: '°C',
  us: 'µs',
  'degrees/us': 'degrees/µs',
  'N.m': 'N·m',
};
export const unitSymbol = (unit: string): string => symbols[unit] ?? unit;
