// SPDX-License-Identifier: MIT
// Every check the bench knows, in the order they are offered.
import type { Check } from './check.ts';
import { motorNoLoad } from './motor-no-load/check.ts';
import { railSag } from './rail-sag/check.ts';
import { servoStall } from './servo-stall/check.ts';

export const checks: readonly Check[] = [railSag, servoStall, motorNoLoad] as readonly Check[];
export const checkById = (id: string): Check | undefined => checks.find((check) => check.id === id);
