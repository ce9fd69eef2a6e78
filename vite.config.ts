// SPDX-License-Identifier: MIT
// How the page is built: one entry, workers as modules, everything it needs from its own address.
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { resolve } from 'node:path';
import { defineConfig } from 'vite';
import { precache } from './web/src/offline/precache.ts';

const top = import.meta.dirname;

export default defineConfig({
  root: resolve(top, 'web'),
  base: './',
  plugins: [svelte({ configFile: false }), precache()],
  worker: { format: 'es' },
  build: { outDir: resolve(top, 'web/dist'), emptyOutDir: true, target: 'es2022', assetsInlineLimit: 0 },
  server: { fs: { allow: [top] } },
});
