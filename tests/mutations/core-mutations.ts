// SPDX-License-Identifier: MIT
// Deliberate faults in quantities, budgets, readings, calibration, samples and verdicts. Data; run.ts puts them in.
import { core, within, type Mutation } from './mutation.ts';

const measurements = `${core}/measurements`;
const quantity = within(measurements, 'quantity.ts', `${measurements}/quantity`);
const interval = within(measurements, 'coverage-interval.ts', `${measurements}/coverage`);
const york = within(measurements, 'york-fit.ts', `${measurements}/york`);
const steady = within(measurements, 'steady-mean.ts', `${measurements}/steady`);
const errors = within(measurements, 'tap-errors.ts', `${measurements}/tap`);
const reading = within(measurements, 'tap-reading.ts', `${measurements}/tap`);
const thermistor = within(measurements, 'thermistor-errors.ts', `${measurements}/thermistor`);
const contact = within(measurements, 'contact-temperature.ts', `${measurements}/thermistor`);
const meter = within(measurements, 'tap-errors.ts', `${core}/calibration/same-meter`);
const promised = within(`${core}/calibration`, 'expected-calibration.ts', `${core}/calibration/expected`);
const firstRuns = within(`${core}/verdicts`, 'first-runs.ts', `${core}/verdicts/first-runs`);
const judge = within(`${core}/verdicts`, 'judge.ts');
const chance = within(`${core}/verdicts`, 'chance-out.ts');
const settling = within(`${core}/verdicts`, 'settling.ts');
const scaling = within(`${core}/samples`, 'tap-scaling.ts');
const columns = within(`${core}/samples`, 'scan-columns.ts');
const edges = within(`${core}/samples`, 'edge-train.ts');
const supply = within(`${core}/samples`, 'supply-track.ts');
const clock = within('web/src/session', 'rig-clock.ts', 'web/src/session/rig-clock');

export const coreMutations: readonly Mutation[] = [
  { words: 'a difference adds instead of subtracting', ...quantity, find: '[-1, b],', put: '[1, b],' },
  {
    words: 'shared sources are added as magnitudes, so a reference no longer falls out of a ratio',
    ...quantity,
    find: 'cu: (sum.get(id)?.cu ?? 0) + c * cu',
    put: 'cu: Math.hypot(sum.get(id)?.cu ?? 0, c * cu)',
  },
  {
    words: 'Welch-Satterthwaite with squares instead of fourth powers',
    ...quantity,
    find: 'cu ** 4 / source.dof',
    put: 'cu ** 2 / source.dof',
  },
  {
    words: 'standard uncertainty as a plain sum',
    ...quantity,
    find: 'Math.hypot(...Array.from(x.terms.values(), (term) => term.cu))',
    put: 'Array.from(x.terms.values()).reduce((sum, term) => sum + Math.abs(term.cu), 0)',
  },
  {
    words: 'the interval covers 90 % instead of 95 %',
    ...interval,
    find: 'probability = 0.95',
    put: 'probability = 0.9',
  },
  {
    words: 'a rectangle taken half as wide',
    ...interval,
    find: 'const halfCells = (u * Math.sqrt(3)) / step;',
    put: 'const halfCells = (u * Math.sqrt(3)) / step / 2;',
  },
  {
    words: 'the chance beyond a distance is two-sided',
    ...interval,
    find: 'return (1 - (low + high) / 2) / 2;',
    put: 'return 1 - (low + high) / 2;',
  },
  {
    words: 'errors of x ignored in the line',
    ...york,
    find: '1 / (p.uy ** 2 + (slope * p.ux) ** 2)',
    put: '1 / p.uy ** 2',
  },
  {
    words: 'neighbours taken as independent: the spread of single values instead of block means',
    ...steady,
    find: 'u: sampleStandardDeviation(means) / Math.sqrt(blocks)',
    put: 'u: sd / Math.sqrt(count)',
  },
  {
    words: 'degrees of freedom of the values instead of the blocks',
    ...steady,
    find: 'dof: blocks - 1',
    put: 'dof: count - 1',
  },
  {
    words: 'a half-width used as a standard uncertainty',
    ...errors,
    find: 'halfWidth / root3',
    put: 'halfWidth',
  },
  {
    words: 'the gain error forgotten',
    ...errors,
    find: 'rectangular(value * (gain - (shunt?.tolerance ?? 0)))',
    put: 'rectangular(0 * (gain - (shunt?.tolerance ?? 0)))',
  },
  {
    words: 'the reference of each tap is its own error',
    ...errors,
    find: "typeB('reference', ",
    put: 'typeB(`reference ${tap.id}`, ',
  },
  {
    words: 'after a zero trim the whole offset still counts',
    ...errors,
    find: 'rectangular(tap.error.drift)',
    put: 'rectangular(tap.error.offset)',
  },
  {
    words: 'the bow has no shape',
    ...errors,
    find: '4 * x * (1 - x) * step',
    put: 'step',
  },
  {
    words: 'the zero is not taken away',
    ...reading,
    find: 'return difference(value, zero);',
    put: 'return value;',
  },
  {
    words: 'a gap passes as a whole stretch',
    ...reading,
    find: 'if (series.lost > 0)',
    put: 'if (series.lost > 1e9)',
  },
  {
    words: 'clipped stretches are averaged',
    ...reading,
    find: 'series.clipped > clippedAtMost * all',
    put: 'series.clipped > 2 * all',
  },
  {
    words: 'no guard band: the value itself decides',
    ...chance,
    find: 'export const acceptedRisk = 0.025;',
    put: 'export const acceptedRisk = 0.5;',
  },
  {
    words: 'upper and lower limit swapped',
    ...chance,
    find: 'budgetAgainst(finding, limit, max), max - finding.value',
    put: 'budgetAgainst(finding, limit, max), finding.value - max',
  },
  {
    words: 'a value that is not finite may pass',
    ...judge,
    find: 'every((number) => Number.isFinite(number))',
    put: 'some((number) => Number.isFinite(number))',
  },
  {
    words: 'one fail is outvoted',
    ...judge,
    find: 'Math.max(...judged',
    put: 'Math.min(...judged',
  },
  {
    words: 'repeats counted without their square root',
    ...settling,
    find: 'u: line.u / Math.sqrt(n)',
    put: 'u: line.u / n',
  },
  {
    words: 'the converter has 1023 steps',
    ...scaling,
    find: 'export const codesPerSpan = 1024;',
    put: 'export const codesPerSpan = 1023;',
  },
  {
    words: 'the tap zero in the wrong place',
    ...scaling,
    find: '(pinV(code, supplyV) - scale.zeroV) * scale.unitsPerV',
    put: 'pinV(code, supplyV) * scale.unitsPerV - scale.zeroV',
  },
  {
    words: 'thermistor and pull-up swapped',
    ...scaling,
    find: '(pullUpOhm * code) / (codesPerSpan - code)',
    put: '(pullUpOhm * (codesPerSpan - code)) / code',
  },
  {
    words: 'kelvin without their offset',
    ...scaling,
    find: 'const kelvinAt25C = 298.15;',
    put: 'const kelvinAt25C = 273.15;',
  },
  {
    words: 'sums of two read as single conversions',
    ...columns,
    find: 'const perValue = slot < 4 ? 2 : 1;',
    put: 'const perValue = 1;',
  },
  {
    words: 'slow values placed a scan early',
    ...columns,
    find: 'const slotConversions = [1.5, 1.5, 5.5, 5.5, 8] as const;',
    put: 'const slotConversions = [1.5, 1.5, 5.5, 5.5, 0] as const;',
  },
  {
    words: 'a lost block is no gap',
    ...columns,
    find: 'if (missing < scansPerBlock || missing > 0x7fffffff) return;',
    put: 'return;',
  },
  {
    words: 'edges counted forward from the last one',
    ...edges,
    find: 'at - block.edges[i]',
    put: 'at + block.edges[i]',
  },
  {
    words: 'the supply from the reference upside down',
    ...supply,
    find: 'const volts = (this.referenceV * codesPerSpan) / code;',
    put: 'const volts = (this.referenceV * code) / codesPerSpan;',
  },
  {
    words: 'the clock bounds crossed',
    ...clock,
    find: 'this.low = Math.max(this.low, (late.fromMs - early.toMs) / rigMs)',
    put: 'this.low = Math.max(this.low, (late.toMs - early.fromMs) / rigMs)',
  },
  {
    words: 'a thermistor whose B value is exact',
    ...thermistor,
    find: 'error.gain * ((c + kelvinAtZeroC) / t25K)',
    put: '0 * ((c + kelvinAtZeroC) / t25K)',
  },
  {
    words: 'a thermistor that shows all of the rise',
    ...contact,
    find: '(shownC + lag * perS - airC) / share',
    put: 'shownC + lag * perS - airC',
  },
  {
    words: 'each tap has the meter to itself',
    ...meter,
    find: 'source(`meter ${meter.number} ${quantity}`,',
    put: 'source(`meter of ${id}`,',
  },
  {
    words: 'a calibration promised that would not be adopted',
    ...promised,
    find: 'line && adoption(rig, tap, line).adopted ? line : null',
    put: 'line',
  },
  {
    words: 'errors of another rig fall out of the comparison',
    ...firstRuns,
    find: "rigSerial !== '' && rigSerial === firstRuns.rigSerial",
    put: 'true',
  },
  {
    words: 'errors of the same rig counted in full against its own first runs',
    ...firstRuns,
    find: 'u: Math.abs(line.u - twin.u * scale)',
    put: 'u: line.u',
  },
];
