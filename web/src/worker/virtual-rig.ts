// SPDX-License-Identifier: MIT
import type { VirtualRig } from '../state/rig-ways.svelte.ts';
export function startVirtualRig(): VirtualRig {
  throw new Error('none');
}
