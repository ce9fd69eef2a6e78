// SPDX-License-Identifier: MIT
// `npm run gearing`: what each pinion of a car gives, or which teeth come nearest to a wanted ratio, roll-out or speed.
import { choicesFor } from '#core/gearing/gear-choice';
import { gearSheet, type PullFigures } from '#core/gearing/gearing-sheet';
import { readCar } from './car-file.ts';
import { exitCode } from './exit-code.ts';
import {
  badGearing,
  driveOf,
  figuresOf,
  gearingArguments,
  pinionsOf,
  targetOf,
} from './gearing-arguments.ts';
import { table } from './run-table.ts';
import { runCommand } from './terminal.ts';

const words = process.argv.slice(2);
const round = (value: number, digits: number): string => value.toFixed(digits);

function main(): number {
  const values = gearingArguments(words);
  if (values.car === undefined) throw badGearing('Which car? Give --car FILE.');
  const car = readCar(values.car);
  const drive = driveOf(car);
  const figures = figuresOf(car, drive, values);
  const pinions = pinionsOf(values.pinions, drive);
  const sheet = gearSheet(drive, pinions, figures);
  const target = targetOf(values, drive, sheet[0].motorRpm.value);
  const choices = target === null ? [] : choicesFor(target, drive, { pinions, spurs: [drive.spurTeeth] });
  const text = values.json
    ? JSON.stringify({ figures, sheet, target, choices }, null, 2)
    : textOf(figures, sheet, choices);
  process.stdout.write(`${text}\n`);
  return exitCode.pass;
}
function textOf(
  figures: PullFigures,
  sheet: ReturnType<typeof gearSheet>,
  choices: ReturnType<typeof choicesFor>,
): string {
  const given = Object.entries(figures).map(([name, { value, halfWidth, origin }]) => [
    name,
    `${Number(value.toPrecision(4))} +- ${Number(halfWidth.toPrecision(2))}`,
    origin,
  ]);
  const rows = sheet.map(({ pinionTeeth, ratio, rollOutM, motorRpm, carMPerS }) => [
    String(pinionTeeth),
    round(ratio, 2),
    `${round(rollOutM * 1e3, 1)} mm`,
    `${round(motorRpm.value, 0)} +- ${round(motorRpm.halfWidth, 0)} rpm`,
    `${round(carMPerS.value * 3.6, 1)} +- ${round(carMPerS.halfWidth * 3.6, 1)} km/h`,
  ]);
  const near = choices.map((choice) => [
    `${choice.pinionTeeth}/${choice.spurTeeth}`,
    round(choice.ratio, 2),
    `${round(choice.miss * 100, 1)} %`,
  ]);
  return [
    ...table([['figure', 'value', 'from'], ...given]),
    '',
    ...table([['pinion', 'ratio', 'roll-out', 'motor', 'car'], ...rows]),
    ...(near.length > 0 ? ['', ...table([['pinion/spur', 'ratio', 'beside the target'], ...near])] : []),
  ].join('\n');
}

await runCommand(main, words.includes('--json'));
