// SPDX-License-Identifier: MIT
// How fast rig time may run: as fast as the machine can, or tied to a wall clock that is passed in. It knows
// milliseconds, not rigs.

export interface Pace {
  /** Resolves when rig time may run on to `rigMs`; always lets other work of the program in first. */
  before(rigMs: number): Promise<void>;
}
export interface WallClock {
  now(): number;
  sleep(ms: number): Promise<void>;
}
/** A lag longer than this is given up: the virtual rig slows down instead of catching up. */
export const LONGEST_LAG_MS = 20;

/** Lets every promise that is ready run, then one turn of the event loop. */
export function turn(): Promise<void> {
  if (typeof setImmediate === 'function') return new Promise((done) => setImmediate(done));
  return new Promise((done) => {
    const channel = new MessageChannel();
    channel.port1.onmessage = () => {
      channel.port1.close();
      done();
    };
    channel.port2.postMessage(0);
  });
}

export const asFastAsPossible: Pace = { before: turn };

/** `speed` 1 is real time. */
export function pacedBy(wall: WallClock, speed: number): Pace {
  let originMs = Number.NaN;
  return {
    async before(rigMs) {
      const now = wall.now();
      if (Number.isNaN(originMs)) originMs = now - rigMs / speed;
      const lag = now - (originMs + rigMs / speed);
      if (lag > LONGEST_LAG_MS) originMs += lag - LONGEST_LAG_MS;
      await (lag < 0 ? wall.sleep(-lag) : turn());
    },
  };
}

/** As `pace`, but rig time never runs beyond `limitMs()`; `news` resolves when that may have moved. */
export function notAhead(pace: Pace, limitMs: () => number, news: () => Promise<void>): Pace {
  return {
    async before(rigMs) {
      await pace.before(rigMs);
      while (rigMs > limitMs()) await news();
    },
  };
}

export const realClock: WallClock = {
  now: () => performance.now(),
  sleep: (ms) => new Promise((done) => setTimeout(done, ms)),
};
