// SPDX-License-Identifier: MIT
// The page's entry: the only place that picks the worker, the store, the clock and the ways to a rig.
import { mount } from 'svelte';
import { benchStore } from './adapters/bench-store.ts';
import { logbookStore } from './adapters/logbook-store.ts';
import { offlineDoor } from './adapters/offline-door.ts';
import { serialDoor } from './adapters/serial-door.ts';
import { smallMemory } from './adapters/small-memory.ts';
import { tones } from './adapters/tones.ts';
import { Bench } from './state/bench.svelte.ts';
import { Calibration } from './state/calibration.svelte.ts';
import { Cues } from './state/cues.svelte.ts';
import { HiddenFaults } from './state/hidden-faults.svelte.ts';
import { openMemory, type KeptMemory } from './state/kept-memory.svelte.ts';
import { Logbook } from './state/logbook.svelte.ts';
import { PageVersion } from './state/page-version.svelte.ts';
import { pageContext, type Page } from './state/page.ts';
import { Plans } from './state/plans.svelte.ts';
import { Places } from './state/places.svelte.ts';
import { Recovery } from './state/recovery.ts';
import { Reader } from './state/reader.svelte.ts';
import { Repairs } from './state/repairs.svelte.ts';
import { RigWays } from './state/rig-ways.svelte.ts';
import { Run, type EndedRun } from './state/run.svelte.ts';
import { Shelf } from './state/shelf.svelte.ts';
import { Theme } from './state/theme.svelte.ts';
import { UnitsChoice } from './state/units-choice.svelte.ts';
import { BenchWorkerPort } from './worker/bench-port.ts';
import App from './ui/App.svelte';
import './ui/tokens.css';
import './ui/base.css';

const now = () => Date.now();
const chance = () => crypto.getRandomValues(new Uint32Array(1))[0] / 2 ** 32;
const dark = matchMedia('(prefers-color-scheme: dark)');
const speed = Number(new URLSearchParams(location.search).get('speed') ?? 1);

const small = smallMemory();

function makePage(memory: KeptMemory): Page {
  const bench = new Bench(new BenchWorkerPort(), now);
  const shelf = new Shelf(memory, now);
  const parts = () => shelf.known;
  const logbook = new Logbook(logbookStore(), parts);
  const repairs = new Repairs(memory, parts);
  shelf.attend(() => {
    repairs.identify();
    void logbook.identify();
  });
  const makeVirtual = async () => new (await import('./worker/virtual-rig.ts')).VirtualRigWorker();
  const ways = new RigWays(bench, small, makeVirtual, serialDoor(), speed, (car) => shelf.adopt(car));
  const person = (act: string) => ways.person(act);
  const calibration = new Calibration({ bench, shelf, ways, memory: small, now });
  const meter = () => (calibration.meterKnown ? calibration.meter : undefined);
  const plans = new Plans({ bench, shelf, memory, now });
  const cues = new Cues(tones(), small);
  bench.attend(cues);
  const ended = (run: EndedRun) => {
    plans.ended(run);
    cues.ended(run.end);
  };
  const newId = () => crypto.randomUUID();
  const run = new Run({ bench, logbook, shelf, now, newId, person, meter, ended });
  const reader = new Reader(bench, logbook);
  const theme = new Theme(document.documentElement, small, dark);
  return {
    bench,
    ways,
    run,
    plans,
    calibration,
    memory,
    logbook,
    reader,
    shelf,
    repairs,
    places: new Places(location),
    theme,
    units: new UnitsChoice(small),
    cues,
    hidden: new HiddenFaults((faults) => ways.setFaults(faults), chance),
    version: new PageVersion(offlineDoor(), () => run.running || bench.energised),
  };
}

/** No await outside of it: that would keep the build from putting the entry's own modules into one file. */
async function begin(): Promise<void> {
  const page = makePage(await openMemory(benchStore(), small));
  dark.addEventListener('change', () => page.theme.apply());
  document.addEventListener('visibilitychange', () =>
    page.bench.tell({ kind: 'hidden', hidden: document.hidden }),
  );
  addEventListener('pagehide', () => page.bench.stop());
  setInterval(() => page.bench.tick(), 100);
  mount(App, { target: document.getElementById('page')!, context: pageContext(page) });
  const recovery = new Recovery(page.bench, page.logbook);
  void page.logbook.load().then(() => recovery.begin());
  void page.ways.reconnect();
}
void begin();
