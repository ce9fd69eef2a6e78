// SPDX-License-Identifier: MIT
// sensor-cable: from edges turned by hand to what each Hall line does, and whether the thermistor reads the room. Pure.
// A line that is dead is named; that two lines are swapped shows in the order, which two of them can't be told.
import { guarded, measured, notMeasured } from '#core/measurements/finding';
import type { Finding } from '#core/measurements/measurement';
import { difference, linear, uncertain, type Quantity } from '#core/measurements/quantity';
import { rectangular, typeA, typeB } from '#core/measurements/tap-errors';
import { NotMeasurable, reading, tapOf } from '#core/measurements/tap-reading';
import { sampleStandardDeviation, mean } from 'simple-statistics';
import type { AnalysisInput } from '../check.ts';
import type { Stretch } from '../stretch.ts';
import type { Evidence } from './evidence.ts';
import { evenShares, type HallLine, type HallSteps, lineNames, orderOf, steps } from './hall-steps.ts';

export const results = [
  { id: 'hall-liveness', title: 'Edges of the quietest Hall line, of the busiest', unit: '%' },
  { id: 'hall-order', title: 'Steps in the running order', unit: '%' },
  { id: 'hall-invalid-states', title: 'Edges with an invalid state', unit: '%' },
  { id: 'hall-extra-edges', title: 'Pulses that no magnet made', unit: 'pulses' },
  { id: 'hall-a-longer-half', title: 'Longer half of Hall line A', unit: '%' },
  { id: 'hall-b-longer-half', title: 'Longer half of Hall line B', unit: '%' },
  { id: 'hall-c-longer-half', title: 'Longer half of Hall line C', unit: '%' },
  { id: 'hall-drop-outs', title: 'Drop-outs while the cable was moved', unit: 'drop-outs' },
  { id: 'sensor-thermistor-lost', title: 'Readings of the motor thermistor lost', unit: 'readings' },
  { id: 'sensor-thermistor-offset', title: 'Motor thermistor away from the room', unit: 'K' },
] as const;
type Input = AnalysisInput<Evidence>;
type ResultId = (typeof results)[number]['id'];
const nameOf = (id: ResultId) => results.find((result) => result.id === id)!;

/** A line with fewer edges than this share of the busiest is dead, or nearly. */
const dead = 0.5;
/** Steps that can't be told apart, of all: more and the hand was too fast. An uneven line alone makes one of six. */
const togetherAtMost = 0.25;
/** Faster, and the line's own next edge looks like a pulse. */
const fastestPerS = 12;
const fewestSteps = 18;
const fewestTurns = 6;
/** What a hand's speed that comes back at the same place of every turn makes of a half, per cent of a turn. */
const handPerCent = 1.5;

export function analyse(input: Input): readonly Finding[] {
  const { forward, backward, moved } = input.evidence;
  return [
    ...guarded(results.slice(0, 8), () => {
      const [ahead, back, shaken] = [forward, backward, moved].map((at) => steps(input.samples, at));
      requireTurned(ahead, back);
      const quiet = quietLines(ahead, back);
      return [
        liveness(input, ahead, back, quiet),
        order(input, ahead, quiet),
        invalidStates(input, ahead, back, quiet),
        counted('hall-extra-edges', ahead.pairs + back.pairs, [forward, backward], quickFormula),
        ...([0, 1, 2] as const).map((line) => longerHalf(input, [ahead, back], line, quiet)),
        counted('hall-drop-outs', shaken.pairs, [moved], quickFormula),
      ];
    }),
    ...thermistor(input),
  ];
}
const quickFormula =
  'Pairs of edges on one line that came within 40 ms: no hand turns a rotor to and fro as fast as that.';
const evidenceAt = (stretches: readonly Stretch[], taps: readonly string[] = []) =>
  stretches.map((stretch) => ({ ...stretch, taps }));

function requireTurned(...turned: readonly HallSteps[]): void {
  if (turned.every(({ edges }) => edges < fewestSteps))
    throw new NotMeasurable(
      'Hardly an edge came on any Hall line. Check that the sensor cable sits in the sensor adapter and that the rotor was turned, then run again.',
    );
  for (const stretch of turned) {
    const { together, inOrder, against } = orderOf(stretch);
    if (stretch.perS > fastestPerS || together > togetherAtMost * (together + inOrder + against))
      throw new NotMeasurable(
        'The rotor was turned too fast to tell which Hall line came first. Turn it about once a second, then run again.',
      );
  }
}
const edgesOf = (turned: readonly HallSteps[], line: number): number =>
  turned.reduce((sum, { steps: all }) => sum + all.filter((step) => step.line === line).length, 0);

function quietLines(...turned: readonly HallSteps[]): HallLine[] {
  const counts = [0, 1, 2].map((line) => edgesOf(turned, line));
  return ([0, 1, 2] as const).filter((line) => counts[line] < dead * Math.max(...counts));
}
function liveness(
  { evidence }: Input,
  ahead: HallSteps,
  back: HallSteps,
  quiet: readonly HallLine[],
): Finding {
  const counts = [0, 1, 2].map((line) => edgesOf([ahead, back], line));
  const most = Math.max(...counts);
  const value = uncertain((100 * Math.min(...counts)) / most, [
    [typeB('ends', 'a turn not whole at either end', 'computed'), rectangular(200 / most)],
  ]);
  return measured(nameOf('hall-liveness'), value, {
    formula: 'Edges of the line with the fewest over those of the line with the most, turned both ways.',
    evidence: evidenceAt([evidence.forward, evidence.backward]),
    notes: quiet.map(
      (line) => `Hall line ${lineNames[line]} gives no edges: its wire, its contact or its sensor is dead.`,
    ),
  });
}
const deadWords = (quiet: readonly HallLine[]): string =>
  `Hall line ${quiet.map((line) => lineNames[line]).join(' and ')} is dead, so this can't be told. Mend it, then run again.`;

function order({ evidence }: Input, ahead: HallSteps, quiet: readonly HallLine[]): Finding {
  const name = nameOf('hall-order');
  if (quiet.length > 0) return notMeasured(name, deadWords(quiet));
  const { inOrder, against } = orderOf(ahead);
  const all = inOrder + against;
  const value = uncertain((100 * inOrder) / all, [
    [typeB('step', 'one step at either end', 'computed'), rectangular(100 / all)],
  ]);
  return measured(name, value, {
    formula:
      'Steps from A to C to B to A over all steps, while the rotor was turned in its running direction.',
    evidence: evidenceAt([evidence.forward]),
    notes:
      against > inOrder
        ? [
            'The order is that of the other direction: two of the three lines are swapped (which two can not be told from here), or the rotor was turned against its running direction twice.',
          ]
        : [],
  });
}
function invalidStates(
  { evidence }: Input,
  ahead: HallSteps,
  back: HallSteps,
  quiet: readonly HallLine[],
): Finding {
  const name = nameOf('hall-invalid-states');
  if (quiet.length > 0) return notMeasured(name, deadWords(quiet));
  const edges = ahead.edges + back.edges;
  const value = uncertain((100 * (ahead.invalid + back.invalid)) / edges, [
    [typeB('one', 'one edge more or less', 'computed'), rectangular(50 / edges)],
  ]);
  return measured(name, value, {
    formula: 'Edges after which all three lines were alike, which no rotor makes, over all edges.',
    evidence: evidenceAt([evidence.forward, evidence.backward]),
  });
}
/** Counts are what they are; the half says that there is nothing between none and one. */
function counted(id: ResultId, count: number, at: readonly Stretch[], formula: string): Finding {
  const value = uncertain(count, [
    [typeB('count', 'nothing between none and one', 'computed'), rectangular(0.4)],
  ]);
  return measured(nameOf(id), value, { formula, evidence: evidenceAt(at) });
}
function longerHalf(
  { evidence }: Input,
  turned: readonly HallSteps[],
  line: HallLine,
  quiet: readonly HallLine[],
): Finding {
  const name = nameOf(`hall-${lineNames[line].toLowerCase() as 'a' | 'b' | 'c'}-longer-half`);
  if (quiet.includes(line)) return notMeasured(name, deadWords([line]));
  const shares = turned.flatMap((stretch) => evenShares(stretch, line));
  if (shares.length < fewestTurns)
    return notMeasured(
      name,
      `Only ${shares.length} whole turns of line ${lineNames[line]} came, at least ${fewestTurns} are needed. Turn on for longer, then run again.`,
    );
  const share = mean(shares);
  const value = uncertain(100 * Math.max(share, 1 - share), [
    [
      typeA(`turns ${line}`, 'spread from turn to turn', shares.length - 1),
      (100 * sampleStandardDeviation(shares)) / Math.sqrt(shares.length),
    ],
    [typeB('hand', 'a hand that is slow at one place', 'from memory'), rectangular(handPerCent)],
  ]);
  return measured(name, value, {
    formula:
      'Time from one edge of the line to the next over the time of the electrical turn, mean over the turns both ways; the longer of the two halves, as which level it is can not be told.',
    evidence: evidenceAt([evidence.forward, evidence.backward]),
  });
}
function thermistor(input: Input): readonly Finding[] {
  const { forward, backward, moved } = input.evidence;
  const names = [nameOf('sensor-thermistor-lost'), nameOf('sensor-thermistor-offset')];
  return guarded(names, () => {
    tapOf(input.rig, 'thermistorMotor');
    const whole = { fromS: Math.min(forward.fromS, backward.fromS), toS: moved.toS };
    const { clipped } = input.samples.series('thermistorMotor', whole.fromS, whole.toS);
    const lost = counted(
      'sensor-thermistor-lost',
      clipped,
      [whole],
      'Readings at either end of the range: an open or a shorted line.',
    );
    return [lost, ...guarded(names.slice(1), () => [offset(input, forward)])];
  });
}
function offset(input: Input, at: Stretch): Finding {
  const motorC = reading(input, 'thermistorMotor', at);
  const apart = difference(motorC, reading(input, 'thermistorAmbient', at));
  const value: Quantity = linear([[Math.sign(apart.value) || 1, apart]]);
  return measured(nameOf('sensor-thermistor-offset'), value, {
    formula: 'Motor thermistor against the one in the air, before the motor has run, whichever way.',
    evidence: evidenceAt([at], ['thermistorMotor', 'thermistorAmbient']),
    notes:
      apart.value > 3
        ? ['A motor that has just run is warmer than the room: let it cool, then run again.']
        : [],
  });
}
