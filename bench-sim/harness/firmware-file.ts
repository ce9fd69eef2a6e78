// SPDX-License-Identifier: MIT
// Where the committed firmware lies. It reads it; the emulator judges it.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

export const firmwarePath = join(import.meta.dirname, '../../firmware-protocol/firmware/bench-marshal.hex');
export const firmwareHex = (): string => readFileSync(firmwarePath, 'utf8');
