// SPDX-License-Identifier: MIT
// Puts in place what a command needs and says what and why: npm packages, Debian packages.
// Plain Node, no dependency: it runs before anything is installed. Quick when nothing is missing.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { delimiter, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createHash } from 'node:crypto';

export const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
/** Told on standard error: standard output may belong to a document. */
const say = (words) => process.stderr.write(`${words}\n`);
const oldestNode = [20, 19];
/** Set-up that can't be had ends with this: to the command line it is bad input, never a verdict. */
const notSetUp = 2;

/** Runs a command in the checkout with its output shown; ends this process when it fails. */
export function must(command, args, { advice, ...options } = {}) {
  const shown = { cwd: root, stdio: ['inherit', process.stderr, 'inherit'] };
  const run = spawnSync(command, args, { ...shown, ...options });
  if (run.status === 0) return;
  say(`Failed: ${command} ${args.join(' ')}${run.error ? ` (${run.error.message})` : ''}`);
  if (advice) say(advice);
  process.exit(notSetUp);
}

const digest = (file) => createHash('sha256').update(readFileSync(file)).digest('hex');
const packagesFolder = join(root, 'node_modules');
const stampFile = join(packagesFolder, '.lock-digest');

function requireNode() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  if (major > oldestNode[0] || (major === oldestNode[0] && minor >= oldestNode[1])) return;
  say(`Node ${oldestNode.join('.')} or newer is needed; this is ${process.version}. Install a newer Node.`);
  process.exit(notSetUp);
}
/** Why the packages are not as package-lock.json wants them; null when they are. */
function whatIsMissing(wanted) {
  if (!existsSync(packagesFolder)) return 'there are none yet';
  if (!existsSync(stampFile)) return 'nothing tells which ones are there';
  return readFileSync(stampFile, 'utf8') === wanted ? null : 'package-lock.json has changed';
}
/** Installs the npm packages of package-lock.json unless they are there already. */
export function providePackages() {
  requireNode();
  const wanted = digest(join(root, 'package-lock.json'));
  const why = whatIsMissing(wanted);
  if (why === null) return;
  say(`Installing the npm packages that package-lock.json names into node_modules: ${why}.`);
  must('npm', ['ci', '--no-audit', '--no-fund', '--loglevel=error'], {
    advice:
      'The npm packages are missing. Look at the lines above, see that npm reaches its registry, run again.',
  });
  writeFileSync(stampFile, wanted);
}

const onPath = (program) =>
  process.env.PATH.split(delimiter).some((folder) => existsSync(join(folder, program)));
const isRoot = () => process.getuid?.() === 0;

function aptInstall(packages) {
  const quiet = {
    stdio: ['ignore', 'ignore', 'inherit'],
    advice: `Install them by hand: apt-get install ${packages.join(' ')}`,
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
