// SPDX-License-Identifier: MIT
// What the emulated chip says when a program does something that the model does not cover. It is a limit of
// the model or a bug of the program, never a part fault of the car.

export class MachineFault extends Error {
  override readonly name = 'MachineFault';
}
