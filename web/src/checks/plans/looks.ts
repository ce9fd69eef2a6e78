// SPDX-License-Identifier: MIT
// What a person looks at, as sentences that are true when all is well. Common practice, no source.
import type { LookItem } from './plan.ts';

type Look = Omit<LookItem, 'chance' | 'cost' | 'after'>;
const look = (id: string, part: Look['part'], seconds: number, words: string): Look => ({
  kind: 'look',
  id,
  part,
  seconds,
  words,
});
export const looks = {
  packSkin: look('pack-skin', 'pack', 10, 'The pack is flat and dry: not swollen, not dented, no bare wire.'),
  polarity: look(
    'polarity-marks',
    'leads',
    15,
    'Plus of the pack meets plus of the controller, followed by finger along the whole lead, twice.',
  ),
  joints: look(
    'solder-joints',
    'leads',
    20,
    'Every joint is bright and full, no strand stands out, nothing bridges to its neighbour.',
  ),
  capacitor: look(
    'capacitor-side',
    'controller',
    10,
    'The capacitor sits the right way round: its stripe is at minus.',
  ),
  throttleTaught: look(
    'throttle-taught',
    'controller',
    20,
    "The controller was taught full throttle, neutral and full brake of this very radio, as its maker's manual says, wheels clear.",
  ),
  phases: look(
    'phase-leads',
    'motor',
    10,
    'The three phase leads are marked, of the right length and can touch neither can nor chassis.',
  ),
  sensorPlug: look(
    'sensor-plug',
    'motor',
    5,
    'The sensor cable is pushed home at both ends, no wire is pinched.',
  ),
  motorScrews: look(
    'motor-screws',
    'motor',
    10,
    'Motor screws and end bell are tight; the rotor turns freely by hand.',
  ),
  wheelsClear: look(
    'wheels-clear',
    'drive',
    5,
    'The car stands on a block, the wheels turn freely and touch nothing.',
  ),
  mesh: look(
    'mesh-by-hand',
    'drive',
    20,
    'Pinion and spur have a little play at every place of one whole turn of the spur.',
  ),
  chassis: look('chassis', 'drive', 15, 'Arms, hubs and wheels are straight and turn without scraping.'),
  wires: look('wires', 'leads', 10, 'No wire is torn, pinched or rubbed bare; every plug is home.'),
  servoMount: look(
    'servo-mount',
    'servo',
    10,
    'The servo sits tight, its horn screw is in, the linkage is straight.',
  ),
  antenna: look(
    'receiver-wire',
    'radio',
    5,
    'The wire of the receiver is whole and stands clear of carbon and metal.',
  ),
  hot: look(
    'by-finger',
    'motor',
    10,
    'Motor, controller and pack can be held by hand: nothing is hotter than after the last round.',
  ),
} as const;
