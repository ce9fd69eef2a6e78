// SPDX-License-Identifier: MIT
// The page's entry: the only place that picks the worker, the store, the clock and the ways to a rig.
import { mount } from 'svelte';
import { logbookStore } from './adapters/logbook-store.ts';
import { serialDoor } from './adapters/serial-door.ts';
import { Bench, type BenchPort } from './state/bench.svelte.ts';
import { Calibration } from './state/calibration.svelte.ts';
import { Logbook } from './state/logbook.svelte.ts';
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
import App from './ui/App.svelte';
import './ui/tokens.css';
import './ui/base.css';

function benchPort(): BenchPort {
  const worker = new Worker(new URL('./worker/bench-worker.ts', import.meta.url), { type: 'module' });
  return {
    post: (message, transfer = []) => worker.postMessage(message, transfer),
    listen: (receive) => worker.addEventListener('message', (event) => receive(event.data)),
  };
}
const now = () => Date.now();
const dark = matchMedia('(prefers-color-scheme: dark)');
const speed = Number(new URLSearchParams(location.search).get('speed') ?? 1);

function makePage(): Page {
  const bench = new Bench(benchPort(), now);
  const logbook = new Logbook(logbookStore());
  const shelf = new Shelf(localStorage);
  const makeVirtual = async () => new (await import('./worker/virtual-rig.ts')).VirtualRigWorker();
  const ways = new RigWays(bench, localStorage, makeVirtual, serialDoor(), speed, (car) => shelf.adopt(car));
  const person = (act: string) => ways.person(act);
  const calibration = new Calibration({ bench, shelf, ways, memory: localStorage, now });
  const meter = () => (calibration.meterKnown ? calibration.meter : undefined);
  const plans = new Plans({ bench, shelf, memory: localStorage, now });
  const ended = (run: EndedRun) => plans.ended(run);
  const newId = () => crypto.randomUUID();
  const run = new Run({ bench, logbook, shelf, now, newId, person, meter, ended });
  const reader = new Reader(bench, logbook);
  const repairs = new Repairs(localStorage);
  const theme = new Theme(document.documentElement, localStorage, dark);
  return {
    bench,
    ways,
    run,
    plans,
    calibration,
    logbook,
    reader,
    shelf,
    repairs,
    places: new Places(location),
    theme,
    units: new UnitsChoice(localStorage),
  };
}

const page = makePage();
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
