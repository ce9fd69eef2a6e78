// SPDX-License-Identifier: MIT
// A can warmed for some minutes and left to cool, solved by the plant's own nodes in steps of 1 ms; and the exact cooling
// of one body, T = T0 e^(-t/RC), where the winding is next to nothing.
import { describe, expect, it } from 'vitest';
import { Thermistor, TwoBodyHeat } from '#sim/physics/heat';
import { seededNoise } from './seeded-noise-fixture.ts';
import { twoBodyFit, type KnownBody } from './two-body-fit.ts';

const known: KnownBody = { windingJPerK: 25, windingToCanKPerW: 1.2, lagS: 12, shownShare: 0.92 };
const onS = 300;
const heating = { canW: (t: number) => (t < onS ? 10 : 0), windingW: (t: number) => (t < onS ? 0.4 : 0) };

function course(canJPerK: number, toAirKPerW: number, body: KnownBody, untilS: number) {
  const { windingJPerK: innerJPerK, windingToCanKPerW: betweenKPerW } = body;
  const can = new TwoBodyHeat({ innerJPerK, betweenKPerW, outerJPerK: canJPerK, toAirKPerW }, 24);
  const seen = new Thermistor(body.lagS, body.shownShare, 24);
  const shown: number[] = [];
  for (let ms = 0; ms < untilS * 1000; ms++) {
    const t = ms / 1000;
    if (ms % 5000 === 0) shown.push(seen.celsius - 24);
    can.step(heating.windingW(t) * 1e-3, heating.canW(t) * 1e-3, 24, 1e-3);
    seen.step(can.outerC, 24, 1e-3);
  }
  return shown.map((y, k) => ({ x: 5 * k, y, u: 0.03 }));
}
const kept = (points: ReturnType<typeof course>) =>
  points.filter(({ x }) => x > 60 && (x < onS || x > onS + 60));

describe('twoBodyFit', () => {
  const points = course(65, 7, known, 540);
  it('gives capacity and resistance of the plant back from five minutes on and four off', () => {
    const fit = twoBodyFit(kept(points), heating, known)!;
    expect(fit.capacityJPerK / 90).toBeCloseTo(1, 2);
    expect(fit.toAirKPerW / 7).toBeCloseTo(1, 2);
  });
  it('tells a standard deviation that is the spread of repeats', () => {
    const noise = seededNoise(6);
    const noisy = () => kept(points).map((point) => ({ ...point, y: point.y + 0.1 * noise(), u: 0.1 }));
    const fits = Array.from({ length: 12 }, () => twoBodyFit(noisy(), heating, known)!);
    const spread = Math.sqrt(fits.reduce((sum, { toAirKPerW }) => sum + (toAirKPerW - 7) ** 2, 0) / 12);
    expect(fits[0].uToAir / spread).toBeGreaterThan(0.5);
    expect(fits[0].uToAir / spread).toBeLessThan(2);
  });
  it('agrees with the exact warming of one body where the winding is next to nothing', () => {
    const alone = { windingJPerK: 0.5, windingToCanKPerW: 20, lagS: 2, shownShare: 1 };
    const one = Array.from({ length: 60 }, (_, k) => {
      const x = 8 + 8 * k;
      // A lag of 2 s against 600 s holds the exact 1 - e^(-t/tau) back by its own length.
      return { x, y: 70 * (1 - Math.exp(-(x - 2) / 600)), u: 0.01 };
    });
    const fit = twoBodyFit(one, { canW: () => 10, windingW: () => 0 }, alone)!;
    expect(fit.toAirKPerW / 7).toBeCloseTo(1, 2);
    expect((fit.toAirKPerW * fit.capacityJPerK) / 600).toBeCloseTo(1, 2);
  });
  it('is null where nothing warmed', () =>
    expect(twoBodyFit(kept(points), { canW: () => 0, windingW: () => 0 }, known)).toBeNull());
});
