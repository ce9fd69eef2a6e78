// SPDX-License-Identifier: MIT
// Joint after joint: clips and tips are set by the person, then one step of the pack load; once more in the probe's
// wide range where the small one does not reach.
import { jointLimit } from '#core/limits/joint-limits';
import { probeEndV } from '#core/measurements/load-step';
import type { Bench } from '../check.ts';
import { fourWirePlan, loadSteps, stepS, wasClipped, type ProbeTap } from '../four-wire.ts';
import type { Evidence } from './evidence.ts';
import { jointsOf, type ListedJoint } from './joint-list.ts';

/** What the pack load may draw, A. */
const mostA = 18;

export async function procedure(bench: Bench): Promise<Evidence> {
  await bench.powerUp(fourWirePlan, 'live');
  const joints = jointsOf(bench.car);
  const oneStep = loadSteps(bench);
  const steps: Evidence['steps'] = [];
  for (const [index, joint] of joints.entries()) {
    tell(bench, index, joints);
    await bench.ask(
      `Load clips on either side of the ${joint.name}. Probe tips across it, inside of the clips, plus tip towards the plus of the pack.`,
    );
    bench.mark(joint.name);
    const step = await oneStep(rangeFor(bench, joint));
    const again = step.tap === 'jointProbe' && wasClipped(bench, step);
    steps.push({ number: joint.number, step: again ? await oneStep('jointProbeWide') : step });
  }
  return { steps };
}
/** The small range where a good joint or lead, and half as much again, fits into it. */
function rangeFor(bench: Bench, joint: ListedJoint): ProbeTap {
  const fits = 1.5 * (jointLimit(joint).max ?? 0) * mostA < probeEndV(bench.rig, 'jointProbe');
  return fits ? 'jointProbe' : 'jointProbeWide';
}
function tell(bench: Bench, index: number, joints: readonly ListedJoint[]): void {
  bench.progress({
    step: index + 1,
    of: joints.length,
    words: `${joints[index].name}: one second of the pack load after its rest.`,
    leftS: stepS * (joints.length - index),
  });
}
