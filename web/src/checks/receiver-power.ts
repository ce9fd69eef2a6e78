// SPDX-License-Identifier: MIT
// How a receiver is listened to: the car on its own pack and switch, the rig only hearing. The throttle adapter hands
// the controller's power on to the receiver and keeps the receiver's pulses to the rig, so that no trigger can turn the
// motor. Words and steps shared by the checks of the radio.
import type { Bench, ScanPlan, WiringStep } from './check.ts';
import { manualCaution, packCaution, polarityCaution } from './cautions.ts';

export const listeningPlan: ScanPlan = {
  fast: ['railVoltage', 'railCurrent', 'packVoltage', 'controllerVoltage'],
  slow: 'multiplexer',
};
export const listeningWiring: readonly WiringStep[] = [
  { words: 'Leave the pack adapter out: the car runs on its own pack and switch, which stay off for now.' },
  { words: "Y-lead into the receiver's channel 1, the servo's lead into its other branch." },
  {
    words:
      "Throttle lead of the controller into the throttle adapter, the adapter's lead into the receiver's channel 2: power passes, the pulses go to the rig alone.",
  },
  { words: 'Rail adapter into a free receiver slot, without any load.', tap: 'railVoltage' },
];
export const listeningCautions = [
  'The wheels are clear of the ground all the same, and nothing is in the way of the steering: it follows the wheel of the radio.',
  packCaution,
  polarityCaution,
  manualCaution,
];
const upV = 3.5;
const upWithinS = 30;
/** A receiver has found its transmitter by then (from memory). */
const linkS = 2;

/** Asks for power; true when the rail is up and the link has had time to stand. */
export async function powerTheReceiver(bench: Bench): Promise<boolean> {
  await bench.stream(listeningPlan);
  await bench.ask(
    'Turn the transmitter on first. Then plug the pack straight into the car, not through the rig, and switch the controller on.',
  );
  const up = await bench.waitFor((samples) => (samples.latest('railVoltage')?.value ?? 0) > upV, upWithinS);
  if (up) await bench.wait(linkS);
  return up;
}
export const unpowered =
  'The receiver rail did not come up within 30 s. Check the pack plug, the switch and the rail adapter, then run again.';
export async function unpowerTheReceiver(bench: Bench): Promise<void> {
  await bench.capture('none');
  await bench.ask('Take the pack out of the car again; only then turn the transmitter off.');
}
