// SPDX-License-Identifier: MIT
// Four projects, by what they need: unit (nothing), sim (the compiled firmware in the emulator),
// browser (Chromium and a built page), port (a pseudo-terminal; Web Serial in private namespaces).
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';

const slow = { testTimeout: 300_000, hookTimeout: 240_000 };
/** One after the other: they share a browser, a terminal, or the wall clock; a computer held up gets a second try. */
const alone = { ...slow, fileParallelism: false, retry: 1 };
const project = (name: string, include: string[], more = {}) => ({
  plugins: [svelte()],
  test: { name, include, environment: 'node', ...more },
});
export default defineConfig({
  test: {
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
        { testTimeout: 60_000 },
      ),
      project('sim', ['tests/sim/**/*.test.ts'], slow),
      project('browser', ['tests/browser/**/*.test.ts'], alone),
      project('port', ['tests/port/**/*.test.ts'], alone),
    ],
  },
});
