// SPDX-License-Identifier: MIT
// The serial port: byte times, no byte lost by writes to UCSR0B, overrun, wrong rate, no deadlock.
import { describe, expect, it } from 'vitest';
import { fixtureChip, runMs } from '../../tests/support/fixture-chip.ts';

describe('serial port', () => {
  it('echoes 2000 bytes back to back although UCSR0B is rewritten all the time', () => {
    const seen = fixtureChip('serial-echo');
    runMs(seen.chip, 1);
    const bytes = Uint8Array.from({ length: 2000 }, (_, i) => (i * 7) & 0xff);
    seen.chip.usart.receive(bytes);
    runMs(seen.chip, 60);
    expect(seen.sent).toEqual([...bytes]);
    expect(seen.chip.usart.overruns).toBe(0);
  });

  it('takes ten bit times a byte: 20 us at 500 kbaud', () => {
    const seen = fixtureChip('serial-deaf');
    runMs(seen.chip, 3);
    const gaps = seen.sentAt.slice(1).map((at, i) => at - seen.sentAt[i]);
    expect(gaps.length).toBe(7);
    for (const gap of gaps) expect(gap).toBe(320);
  });

  it('reports the end of transmission only when the last bit has left', () => {
    const seen = fixtureChip('serial-deaf');
    runMs(seen.chip, 3);
    const done = seen.edgesOf('d', 2)[0].cycle;
    expect(done - seen.sentAt.at(-1)!).toBeGreaterThanOrEqual(0);
    expect(done - seen.sentAt.at(-1)!).toBeLessThan(16);
  });

  it('holds two bytes and one in the shift register; a further one sets overrun and replaces the last', () => {
    const send = (count: number) => {
      const seen = fixtureChip('serial-deaf');
      seen.chip.run(1300);
      seen.chip.usart.receive(Uint8Array.from({ length: count }, (_, i) => 0x31 + i));
      runMs(seen.chip, 3);
      return seen.sent;
    };
    const RXC = 0x80;
    const DOR = 0x08;
    expect(send(3)).toEqual([RXC, 0x31, RXC, 0x32, RXC, 0x33, 0, 0x33]);
    const four = send(4);
    expect(four.slice(0, 2)).toEqual([RXC | DOR, 0x31]);
    expect(four.slice(4, 6)).toEqual([RXC, 0x34]);
  });

  it('shows frame errors when the far end runs at another rate', () => {
    const seen = fixtureChip('serial-deaf');
    seen.chip.run(1300);
    seen.chip.usart.hostBitCycles = 64;
    seen.chip.usart.receive(Uint8Array.of(0x55));
    runMs(seen.chip, 3);
    expect(seen.sent[0] & 0x10).toBe(0x10);
    expect(seen.sent[1]).not.toBe(0x55);
  });
});
