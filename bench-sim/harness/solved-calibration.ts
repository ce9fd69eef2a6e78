// SPDX-License-Identifier: MIT
// The calibration that `npm run calibrate` would give the rig of a seed, with the usual meter and thermistors in ice,
// without the processor: the same readings of taps and meter, the same lines, the same adoption. The limited feed's
// resistor is left out, as no check over seeds asks for it. same-calibration.ts holds it against the emulated one.
import { adoption, withLine } from '#core/calibration/adoption';
import { CalibrationRefused } from '#core/calibration/calibration-refused';
import {
  lineCalibration,
  pointOf,
  zeroPoint,
  type CalibrationLine,
  type CalibrationPoint,
  type LineLabel,
} from '#core/calibration/line-calibration';
import { usualMeter } from '#core/calibration/meter';
import { storeBytes, storeOf } from '#core/calibration/store-form';
import { iceCalibration } from '#core/calibration/thermistor-calibration';
import { tapOf, type Stretch } from '#core/measurements/tap-reading';
import type { RigDescription } from '#core/samples/rig-description';
import { circuits, type Circuit } from '#session/calibration/current-points';
import { tapMean } from '#session/calibration/tap-mean';
import { voltageTaps } from '#session/calibration/voltage-points';
import { drawCar, drawParameters } from '#sim/physics/population';
import { PlantStream } from '#sim/replay/plant-stream';
import { seededRandom } from '#sim/seeded-random';
import { VirtualMeter } from '#sim/virtual-meter';
import { MeteredPlant } from '#sim/wiring/metered-plant';
import type { Plant } from '#sim/wiring/plant';
import { drawRigErrors } from '#sim/wiring/rig-errors';

const currents = ['packCurrentNarrow', 'packCurrentWide', 'railVoltage', 'railCurrent'] as const;
/** The load bank's steps that the guided calibration takes, each for about so long. */
const masks = [1, 2, 4, 6] as const;
const loadS = 1.2;
const label: LineLabel = { date: '2026-01-01', origin: 'meter' };

/** The rig with what was adopted, rounded as its memory keeps it. */
export function solvedCalibration(
  plain: RigDescription,
  seed: number,
  car: Plant = drawCar(seed, {}).plant,
): RigDescription {
  const bare = { ...plain, store: null };
  let rig: RigDescription = bare;
  for (const draw of new SolvedPoints(bare, seed, car).lines()) {
    const line = unlessRefused(draw);
    if (line && adoption(rig, tapOf(rig, line.tap), line).adopted) rig = withLine(rig, line);
  }
  return rig.store ? { ...rig, store: storeOf(storeBytes(rig.store, rig.descriptor), rig.descriptor) } : rig;
}
type Draw = () => CalibrationLine;
/** A tap whose points can't be right stays as declared. */
function unlessRefused(draw: Draw): CalibrationLine | null {
  try {
    return draw();
  } catch (error) {
    if (error instanceof CalibrationRefused) return null;
    throw error;
  }
}
class SolvedPoints {
  private readonly plant: MeteredPlant;
  private readonly meter: VirtualMeter;
  private readonly stream: PlantStream;
  private readonly neutralS: number;

  constructor(
    private readonly rig: RigDescription,
    seed: number,
    plant: Plant,
  ) {
    const random = seededRandom(seed, 'rig');
    this.plant = new MeteredPlant(plant);
    this.meter = new VirtualMeter(this.plant, usualMeter, drawParameters(seed).line.limiterOhm, seed);
    const errors = drawRigErrors(random.stream('rig'));
    this.stream = new PlantStream(this.plant, rig, errors, random.stream('calibration noise'));
    this.neutralS = drawParameters(seed).controller.neutralS;
  }
  /** In the order of the guided calibration. */
  lines(): Draw[] {
    return [...this.voltages(), ...this.thermistors(), ...this.currents()];
  }
  private voltages(): Draw[] {
    this.stream.scan(['packVoltage', 'controllerVoltage', 'railVoltage', 'packCurrentWide']);
    const stretches = ['one cell', 'the whole pack'].map((source) => {
      this.meter.act(`Put the leads on ${source}.`);
      this.stream.run(0.6);
      return { stretch: this.stream.run(1.2), meter: this.meter.read('source') };
    });
    return voltageTaps.map((id) =>
      this.line(
        id,
        stretches.map(({ stretch, meter }) => this.point(id, stretch, meter)),
      ),
    );
  }
  private thermistors(): Draw[] {
    this.meter.act('Hold them in ice.');
    this.stream.run(0.2);
    const stretch = this.stream.run(1.5);
    const taps = this.rig.descriptor.taps.filter(({ quantity }) => quantity === 'temperature');
    return taps.map((tap) => {
      const { shown, u } = this.mean(tap.id, stretch);
      return () => iceCalibration({ tap, shownC: shown, u }, { ...label, origin: 'ice' });
    });
  }
  private currents(): Draw[] {
    this.meter.act('Back on the car. Switch the controller on.');
    this.stream.scan(currents);
    this.stream.run(0.2);
    const zero = this.stream.run(1.5);
    this.powerUp();
    const steps = masks.map((mask) => this.step(mask));
    return circuits.flatMap(({ place, taps }) => taps.map((id) => this.currentLine(id, zero, place, steps)));
  }
  private currentLine(id: string, zero: Stretch, place: Circuit['place'], steps: readonly Step[]) {
    const { shown, u } = this.mean(id, zero);
    const points = steps.map((step) => this.point(id, step.stretch, step.read[place] ?? Number.NaN));
    return this.line(id, [zeroPoint(shown, u), ...points]);
  }
  private powerUp(): void {
    const { inputs } = this.plant;
    inputs.steeringPulseS = 1500e-6;
    inputs.throttlePulseS = this.neutralS;
    inputs.feed = 'limited';
    this.stream.run(0.5);
    inputs.feed = 'full';
    this.stream.run(4);
  }
  /** The meter stands in both circuits in turn; one stretch serves for both, as the car does the same in either. */
  private step(mask: number): Step {
    this.meter.act('Clear the greatest reading.');
    this.plant.inputs.loadMask = mask;
    this.stream.run(0.15);
    const stretch = this.stream.run(loadS - 0.15);
    const read = {
      packCurrent: this.meter.read('packCurrent'),
      railCurrent: this.meter.read('railCurrent'),
    };
    this.plant.inputs.loadMask = 0;
    this.stream.run(0.4);
    return { stretch, read };
  }
  private mean = (id: string, stretch: Stretch) =>
    tapMean({ rig: this.rig, samples: this.stream.samples }, id, stretch);
  private point(id: string, stretch: Stretch, meter: number): CalibrationPoint {
    const { shown, u } = this.mean(id, stretch);
    return pointOf(tapOf(this.rig, id), usualMeter, { shown, shownU: u, meter });
  }
  private line =
    (id: string, points: readonly CalibrationPoint[]): Draw =>
    () =>
      lineCalibration(this.rig.descriptor, tapOf(this.rig, id), points, label);
}
interface Step {
  readonly stretch: Stretch;
  readonly read: Readonly<Partial<Record<Circuit['place'], number>>>;
}
