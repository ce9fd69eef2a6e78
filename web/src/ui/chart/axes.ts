// SPDX-License-Identifier: MIT
// The axes of a plot: figures as the page writes them, as many decimals as the steps need, seconds named once.
import type uPlot from 'uplot';
import { figure } from '../../state/figures.ts';
import { token } from './palette.ts';

const font = '14px "Atkinson Hyperlegible Next", system-ui';
const shared = { stroke: () => token('--soft'), font, gap: 4, ticks: { show: false } };

/** Decimals in which a step of an axis shows: 1 for 2.5, 2 for 0.05. */
function decimalsOf(step: number): number {
  const places = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  const lead = step * 10 ** places;
  return Math.abs(lead - Math.round(lead)) < 1e-6 ? places : places + 1;
}
const labels: uPlot.Axis.DynamicValues = (_chart, splits, _axis, _space, step) =>
  splits.map((at) => figure(at, decimalsOf(step)));
const seconds: uPlot.Axis.DynamicValues = (...from) =>
  (labels(...from) as string[]).map((text, index, all) => (index === all.length - 1 ? `${text} s` : text));

export const timeAxis = (show: boolean): uPlot.Axis => ({
  ...shared,
  show,
  grid: { show: false },
  size: 28,
  space: (_chart, _axis, from, to) => (to - from < 2 ? 80 : 54),
  values: seconds,
});
export const amountAxis = (size: number): uPlot.Axis => ({
  ...shared,
  size,
  space: 30,
  grid: { stroke: () => token('--hair'), width: 1 },
  values: labels,
});
