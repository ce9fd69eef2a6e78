// SPDX-License-Identifier: MIT
// Four projects, by what they need: unit (nothing), sim (the compiled firmware in the emulator),
// browser (Chromium and a built page), port (a pseudo-terminal; Web Serial in private namespaces).
import { availableParallelism } from 'node:os';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';

const slow = { testTimeout: 300_000, hookTimeout: 240_000 };
/** One after the other: they share a browser, a terminal, or the wall clock; a computer held up gets a second try. */
const alone = { ...slow, fileParallelism: false, retry: 1 };
/** Modules are read once for all files of a worker: half of the time would go into reading them again. Not so for sim,
 *  which took more than twice as long that way. */
const shared = { isolate: false };
const project = (name: string, include: string[], more = {}) => ({
  plugins: [svelte()],
  test: { name, include, environment: 'node', ...more },
});
/** Two files at a time even on two cores, where the default is one: they know no wall clock, or processor time only. */
const maxWorkers = Math.max(2, availableParallelism() - 1);
export default defineConfig({
  test: {
    maxWorkers,
    projects: [
      project(
        'unit',
        [
          'web/src/**/*.test.ts',
          'firmware-protocol/ts/**/*.test.ts',
          'bench-sim/**/*.test.ts',
          'tests/architecture/**/*.test.ts',
          'tests/outside/**/*.test.ts',
        ],
        { testTimeout: 60_000, ...shared },
      ),
      project('sim', ['tests/sim/**/*.test.ts'], slow),
      project('browser', ['tests/browser/**/*.test.ts'], alone),
      project('port', ['tests/port/**/*.test.ts'], alone),
    ],
  },
});
