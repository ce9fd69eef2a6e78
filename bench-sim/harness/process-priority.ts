// SPDX-License-Identifier: MIT
// Real time on a busy computer: beats must leave every 20 ms, and a virtual rig must keep its pace. Where the
// system allows it, this process goes before others; where not, it runs as it is.
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { constants, setPriority } from 'node:os';

/** On Linux priority belongs to a thread: the ones that read the port and collect garbage count as well. */
const threadFolder = '/proc/self/task';
/** Linux weighs whole sessions against each other first (sched(7), autogroup). */
const groupFile = '/proc/self/autogroup';
const ownProcess = 0;

export function goBeforeOthers(): void {
  const threads = existsSync(threadFolder) ? readdirSync(threadFolder).map(Number) : [ownProcess];
  try {
    for (const thread of threads) setPriority(thread, constants.priority.PRIORITY_HIGH);
    if (leadsItsSession() && existsSync(groupFile))
      writeFileSync(groupFile, String(constants.priority.PRIORITY_HIGH));
  } catch {
    // Only some users may: a computer that is too busy then shows in the rig's own word that the host fell silent.
  }
}
/** Nobody else's programs may be moved along: only a session of this process's own is. */
function leadsItsSession(): boolean {
  if (!existsSync('/proc/self/stat')) return false;
  const [, , , session] = readFileSync('/proc/self/stat', 'utf8')
    .replace(/^.*\) /, '')
    .split(' ');
  return Number(session) === process.pid;
}
