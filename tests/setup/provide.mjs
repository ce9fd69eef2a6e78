// SPDX-License-Identifier: MIT
// Puts in place what a command needs and says what and why: npm packages, Debian packages.
// Plain Node, no dependency: it runs before anything is installed. Quick when nothing is missing.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { delimiter, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createHash } from 'node:crypto';

export const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const say = (words) => process.stdout.write(`${words}\n`);

/** Runs a command in the checkout with its output shown; ends this process with its exit code when it fails. */
export function must(command, args, options = {}) {
  const run = spawnSync(command, args, { cwd: root, stdio: 'inherit', ...options });
  if (run.status !== 0) {
    say(`Failed: ${command} ${args.join(' ')}`);
    process.exit(run.status ?? 1);
  }
}

const digest = (file) => createHash('sha256').update(readFileSync(file)).digest('hex');
const stampFile = join(root, 'node_modules', '.lock-digest');

/** Installs the npm packages of package-lock.json unless they are there already. */
export function providePackages() {
  const wanted = digest(join(root, 'package-lock.json'));
  if (existsSync(stampFile) && readFileSync(stampFile, 'utf8') === wanted) return;
  say('Installing the npm packages named in package-lock.json (first run, or the lock changed).');
  must('npm', ['ci', '--no-audit', '--no-fund', '--loglevel=error']);
  writeFileSync(stampFile, wanted);
}

const onPath = (program) =>
  process.env.PATH.split(delimiter).some((folder) => existsSync(join(folder, program)));
const isRoot = () => process.getuid?.() === 0;

function aptInstall(packages) {
  const quiet = {
    stdio: ['ignore', 'ignore', 'inherit'],
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  };
  must('apt-get', ['update', '-qq'], quiet);
  must('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...packages], quiet);
}

/**
 * Installs the Debian packages whose probe is missing; without root it names them and the command, and goes on.
 * @param wanted list of {probe: program or absolute file, package, why}
 * @returns the packages that are still missing
 */
export function provideSystem(wanted) {
  const missing = wanted.filter(({ probe }) => !(probe.startsWith('/') ? existsSync(probe) : onPath(probe)));
  if (missing.length === 0) return [];
  const names = [...new Set(missing.map((entry) => entry.package))];
  for (const { package: name, why } of missing) say(`Missing: ${name} (${why}).`);
  if (!isRoot() || !onPath('apt-get')) {
    say(`To install them: sudo apt-get install ${names.join(' ')}`);
    return names;
  }
  say(`Installing ${names.join(', ')} from Debian.`);
  aptInstall(names);
  return [];
}

/** Newest modification time below some files and folders, milliseconds. */
export function newest(paths, list) {
  return Math.max(...list(paths).map((file) => statSync(file).mtimeMs), 0);
}
