// SPDX-License-Identifier: MIT
// Gain and offset as an estimate with its covariance, and two independent estimates made one: the mean weighted with
// the inverse covariances (JCGM 102:2011, and any text on least squares). It knows no tap and no meter.

export interface LineEstimate {
  readonly gain: number;
  readonly offset: number;
  /** Variances and covariance. */
  readonly gainVar: number;
  readonly offsetVar: number;
  readonly covar: number;
}
interface Information {
  readonly gg: number;
  readonly go: number;
  readonly oo: number;
}
export function together(a: LineEstimate, b: LineEstimate): LineEstimate {
  const [ia, ib] = [informationOf(a), informationOf(b)];
  const [gg, go, oo] = [ia.gg + ib.gg, ia.go + ib.go, ia.oo + ib.oo];
  const determinant = gg * oo - go ** 2;
  const [gainVar, offsetVar, covar] = [oo / determinant, gg / determinant, -go / determinant];
  const forGain = pull(ia, a).gain + pull(ib, b).gain;
  const forOffset = pull(ia, a).offset + pull(ib, b).offset;
  return {
    gain: gainVar * forGain + covar * forOffset,
    offset: covar * forGain + offsetVar * forOffset,
    gainVar,
    offsetVar,
    covar,
  };
}
function informationOf({ gainVar, offsetVar, covar }: LineEstimate): Information {
  const determinant = gainVar * offsetVar - covar ** 2;
  return { gg: offsetVar / determinant, oo: gainVar / determinant, go: -covar / determinant };
}
const pull = ({ gg, go, oo }: Information, { gain, offset }: LineEstimate) => ({
  gain: gg * gain + go * offset,
  offset: go * gain + oo * offset,
});
