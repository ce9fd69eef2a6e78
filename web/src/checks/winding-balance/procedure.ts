// SPDX-License-Identifier: MIT
// Pair after pair: the person moves clips and tips, then one step of the pack load through the winding.
import type { Bench } from '../check.ts';
import { fourWirePlan, loadSteps, stepS, wasClipped, type ProbeTap } from '../four-wire.ts';
import { probeEndV } from '#core/measurements/load-step';
import { pairs, type Evidence } from './evidence.ts';

/** Upper end of what windings have, ohm per turns squared (from memory), and what the pack load may draw, A. */
const mostOhmPerTurns2 = 105e-6;
const mostA = 18;

export async function procedure(bench: Bench): Promise<Evidence> {
  await bench.powerUp(fourWirePlan, 'live');
  const oneStep = loadSteps(bench);
  const steps: Evidence['steps'] = [];
  for (const [index, pair] of pairs.entries()) {
    bench.progress({
      step: index + 1,
      of: pairs.length,
      words: `Phases ${pair}: one second of the pack load after its rest.`,
      leftS: stepS * (pairs.length - index),
    });
    await bench.ask(
      `Load clips on phases ${pair} at the motor's posts, probe tips on the same two posts inside of them, plus tip on the clip that comes from the plus. Fingers off the rotor: it jerks.`,
    );
    bench.mark(`phases ${pair}`);
    const step = await oneStep(rangeFor(bench));
    const again = step.tap === 'jointProbe' && wasClipped(bench, step);
    steps.push({ pair, step: again ? await oneStep('jointProbeWide') : step });
  }
  return { steps };
}
function rangeFor(bench: Bench): ProbeTap {
  const mostV = mostOhmPerTurns2 * bench.car.motor.turns ** 2 * mostA;
  return mostV < probeEndV(bench.rig, 'jointProbe') ? 'jointProbe' : 'jointProbeWide';
}
