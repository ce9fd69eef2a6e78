// SPDX-License-Identifier: MIT
// NIST StRD Norris (certified to 15 digits); GUM H.3; Pearson's data of 1901 with the weights of York 1966, whose
// result (slope -0.480533, intercept 5.47991) is quoted from memory.
import { describe, expect, it } from 'vitest';
import { norris } from './norris-fixture.ts';
import { yorkFit } from './york-fit.ts';

const plain = (x: number, y: number) => ({ x, y, ux: 0, uy: 1 });

describe('yorkFit', () => {
  it('gives the certified line of NIST StRD Norris', () => {
    const fit = yorkFit(norris.points.map(([y, x]) => plain(x, y)));
    const sd = Math.sqrt(fit!.chi2 / fit!.dof);
    expect(fit!.slope / norris.slope).toBeCloseTo(1, 10);
    expect(fit!.intercept / norris.intercept).toBeCloseTo(1, 8);
    expect(sd / norris.residualSd).toBeCloseTo(1, 9);
    expect((fit!.uSlope * sd) / norris.slopeSd).toBeCloseTo(1, 8);
    expect((fit!.uIntercept * sd) / norris.interceptSd).toBeCloseTo(1, 8);
  });
  it('gives the printed line of GUM H.3: -0.1712 +- 0.0029 and 0.00218 +- 0.00067', () => {
    const t = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511];
    const b = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16];
    const fit = yorkFit(t.map((at, k) => plain(at - 20, b[k])))!;
    const s = Math.sqrt(fit.chi2 / fit.dof);
    expect(fit.intercept).toBeCloseTo(-0.1712037901, 9);
    expect(fit.slope).toBeCloseTo(0.0021826977, 9);
    expect(s).toBeCloseTo(0.00349756, 7);
    expect(fit.uIntercept * s).toBeCloseTo(0.0028775978, 8);
    expect(fit.uSlope * s).toBeCloseTo(0.0006679388, 8);
    expect((fit.covariance * s * s) / (fit.uSlope * s * fit.uIntercept * s)).toBeCloseTo(-0.9304296, 6);
  });
  it("gives York's line through Pearson's data (from memory)", () => {
    const x = [0, 0.9, 1.8, 2.6, 3.3, 4.4, 5.2, 6.1, 6.5, 7.4];
    const wx = [1000, 1000, 500, 800, 200, 80, 60, 20, 1.8, 1];
    const y = [5.9, 5.4, 4.4, 4.6, 3.5, 3.7, 2.8, 2.8, 2.4, 1.5];
    const wy = [1, 1.8, 4, 8, 20, 20, 70, 70, 100, 500];
    const fit = yorkFit(x.map((at, k) => ({ x: at, y: y[k], ux: wx[k] ** -0.5, uy: wy[k] ** -0.5 })))!;
    expect(fit.slope).toBeCloseTo(-0.480533, 6);
    expect(fit.intercept).toBeCloseTo(5.47991, 5);
  });
  it('gives none for two points and none for a single x', () => {
    expect(yorkFit([plain(0, 0), plain(1, 1)])).toBeNull();
    expect(yorkFit([plain(1, 0), plain(1, 1), plain(1, 2)])).toBeNull();
  });
});
