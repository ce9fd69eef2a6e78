// SPDX-License-Identifier: MIT
// The cards that screens show: a check as the bench tells it, a rig as it describes itself.
export type { CheckCard, RigCard, RigPhase } from '../worker/messages.ts';
