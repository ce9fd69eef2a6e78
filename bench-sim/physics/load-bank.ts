// SPDX-License-Identifier: MIT
// The load bank behind the rig's rail shunt, together with whatever else is plugged there: conductance by
// mask, and the currents and voltages about the shunt. It knows no regulator.

export class LoadBank {
  /** Conductance at the receiver for each of the eight masks, shunt included. */
  readonly conductanceS: readonly number[];
  private readonly shuntOhm: number;

  constructor(bankOhm: readonly [number, number, number], shuntOhm: number) {
    this.shuntOhm = shuntOhm;
    this.conductanceS = Array.from({ length: 8 }, (_, mask) => {
      const bareS = bankOhm.reduce((sum, ohm, bit) => sum + (mask & (1 << bit) ? 1 / ohm : 0), 0);
      return bareS / (1 + shuntOhm * bareS);
    });
  }
  /** Current through the shunt: bank and servo share it, so that the servo's draw lowers the bank's. */
  shuntA(mask: number, receiverV: number, servoA: number): number {
    return this.conductanceS[mask] * receiverV + this.seenA(mask, servoA);
  }
  /** The servo's draw as the receiver sees it, less what it takes from the bank. */
  seenA(mask: number, servoA: number): number {
    return servoA * (1 - this.shuntOhm * this.conductanceS[mask]);
  }
  plugV(receiverV: number, shuntA: number): number {
    return receiverV - this.shuntOhm * shuntA;
  }
}
