// SPDX-License-Identifier: MIT
// `npm start`: installs the npm packages if they are missing, builds the page if it is older than its sources,
// serves it on this computer only and prints the address. Ctrl-C ends it.
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { must, newest, providePackages, root } from '../../tests/setup/provide.mjs';

const sources = ['web', 'firmware-protocol', 'bench-sim', 'package-lock.json', 'vite.config.ts'];
/** What lies among the sources and never reaches the page. */
const besidePage = /^(dist|serve|harness|host-tests)$|\.(test\.ts|md)$/;
const built = join(root, 'web', 'dist', 'index.html');

function files(paths) {
  return paths.flatMap((path) => {
    if (!existsSync(path)) return [];
    if (!statSync(path).isDirectory()) return [path];
    return files(
      readdirSync(path)
        .filter((name) => !besidePage.test(name))
        .map((name) => join(path, name)),
    );
  });
}
const stale = () =>
  !existsSync(built) ||
  statSync(built).mtimeMs <
    newest(
      sources.map((name) => join(root, name)),
      files,
    );

providePackages();
if (stale()) {
  process.stdout.write('Building the page (first run, or a source changed).\n');
  must(join(root, 'node_modules', '.bin', 'vite'), ['build', '--logLevel=error']);
}
const { preview } = await import('vite');
const port = Number(process.env.PORT ?? 4173);
const server = await preview({
  root: join(root, 'web'),
  configFile: join(root, 'vite.config.ts'),
  preview: { port, host: 'localhost' },
});
process.stdout.write(`Bench Marshal is at ${server.resolvedUrls.local[0]} (Ctrl-C ends it)\n`);
