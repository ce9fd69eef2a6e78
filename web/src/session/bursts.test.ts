// SPDX-License-Identifier: MIT
// Bursts, gaps and the rests that the rig enforces, as a run meets them.
import { describe, expect, it } from 'vitest';
import { eventCode, reasonCode } from '#protocol/codes';
import { testRig } from '#core/samples/scan-block-fixture';
import { run } from './run-fixture.ts';
import { connected, plan } from './session-fixture.ts';

describe('bursts and gaps', () => {
  it('keeps a lost scan block as a gap', async () => {
    const all = await connected();
    let gaps = 0;
    await run(all, async (bench) => {
      await bench.powerUp(plan);
      all.rig.skipBlocks(2);
      await bench.wait(0.2);
      gaps = bench.samples.gaps.length;
    });
    expect(gaps).toBe(1);
  });
  it('puts a burst together, a lost block as NaN, the action where the rig said', async () => {
    const all = await connected();
    all.rig.script = (message) => {
      if (message.type !== 'burst') return undefined;
      const block = (first: number) => ({
        type: 'burstBlock' as const,
        first,
        tick: 1000 + first * 208,
        channel: 2,
        outputs: 0,
        samples: new Uint16Array(48).fill(600),
      });
      return [
        { type: 'ack', id: message.id, command: 5 },
        block(0),
        all.rig.event(eventCode.action, 20),
        block(96),
      ];
    };
    const finished = await run(all, async (bench) => {
      await bench.powerUp(plan);
      return bench.burst({
        tap: 'railVoltage',
        samples: 144,
        action: { kind: 'load', mask: 7, ms: 50 },
        atSample: 20,
      });
    });
    const { codes, actionSample } = finished.record.evidence as {
      codes: (number | null)[];
      actionSample: number;
    };
    expect(actionSample).toBe(20);
    expect(codes.filter((code) => code === 600)).toHaveLength(96);
    expect(codes.slice(48, 96).every((code) => code === null)).toBe(true);
  });
  it('refuses a burst on a tap the rig lacks, in words', async () => {
    const finished = await run(await connected(), async (bench) => {
      await bench.powerUp(plan);
      return bench.burst({ tap: 'midCell9', samples: 10, action: { kind: 'none' }, atSample: 0 });
    });
    expect(finished.record.ending.words).toMatch(/no tap "midCell9"/);
  });
  it('waits for a hot load bank as long as the rig says', async () => {
    const all = await connected();
    let refusals = 2;
    all.rig.script = (message) =>
      message.type === 'load' && refusals-- > 0
        ? [{ type: 'nak', id: message.id, command: 10, reason: reasonCode.loadHot, detail: 3000 }]
        : undefined;
    let tookS = 0;
    await run(all, async (bench) => {
      await bench.powerUp(plan);
      const startS = bench.now();
      await bench.load(7, 0.2);
      tookS = bench.now() - startS;
    });
    expect(all.rig.sentOf('load')).toHaveLength(3);
    expect(tookS).toBeGreaterThan(6);
  });
  it('uses the thermistors the rig describes', () => {
    expect(testRig().descriptor.taps.find(({ id }) => id === 'thermistorMotor')?.mux).toBe(0);
  });
});
