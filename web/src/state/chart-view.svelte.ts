// SPDX-License-Identifier: MIT
// What a person has chosen to see of a run's charts: which part of the time axis, held or going on, what is brushed.
// It draws nothing and keeps no samples; the source says how far the record has come.
import { brushBetween, brushPanned, brushWidened, edgeMoved, firstBrush, type Edge } from './chart-brush.ts';
import type { ChartAct } from './chart-keys.ts';
import {
  followed,
  holds,
  inside,
  panned,
  pinched,
  secondAt,
  shareOf,
  spanOf,
  zoomed,
  type ChartRange,
} from './chart-window.ts';

export interface ViewSource {
  /** Time of the first value, where that is not 0. */
  readonly earliestS?: number;
  /** Rig time of the newest value. */
  readonly latestS: number;
  readonly running: boolean;
  /** Seconds the run is expected to take: what the whole picture shows at least while it runs. */
  readonly spanS: number;
}

export class ChartView {
  #window = $state.raw<ChartRange | null>(null);
  #following = $state(false);
  #heldS = $state<number | null>(null);
  #brush = $state.raw<ChartRange | null>(null);

  constructor(private readonly source: () => ViewSource) {}

  /** The newest value drawn. */
  get nowS(): number {
    return this.#heldS ?? this.source().latestS;
  }
  get held(): boolean {
    return this.#heldS !== null;
  }
  get recorded(): ChartRange {
    return { fromS: this.source().earliestS ?? 0, toS: this.nowS };
  }
  /** As far as the picture goes. */
  get bounds(): ChartRange {
    const { running, spanS, earliestS: fromS = 0 } = this.source();
    const toS = running ? Math.max(spanS, this.nowS * 1.02) : this.nowS;
    return { fromS, toS: Math.max(toS, fromS + 1) };
  }
  get whole(): boolean {
    return this.#window === null;
  }
  get range(): ChartRange {
    if (!this.#window) return this.bounds;
    return this.#following ? followed(this.#window, this.nowS) : this.#window;
  }
  get brush(): ChartRange | null {
    return this.#brush;
  }
  showAll(): void {
    this.#window = null;
  }
  /** Follows the newest value from here on if it is in sight. */
  show(range: ChartRange): void {
    const kept = inside(range, this.bounds);
    this.#window = spanOf(kept) >= spanOf(this.bounds) ? null : kept;
    this.#following = this.source().running && holds(kept, this.nowS);
  }
  pan(windows: number): void {
    this.show(panned(this.range, windows * spanOf(this.range), this.bounds));
  }
  zoom(factor: number, share = this.#about): void {
    this.show(zoomed(this.range, factor, share, this.bounds));
  }
  pinch(range: ChartRange, before: readonly [number, number], now: readonly [number, number]): void {
    this.show(pinched(range, before, now, this.bounds));
  }
  /** Looking closer goes to what is brushed, else to what is newest, else to the middle. */
  get #about(): number {
    const { range } = this;
    const middleS = this.#brush && (this.#brush.fromS + this.#brush.toS) / 2;
    if (middleS !== null && holds(range, middleS)) return shareOf(range, middleS);
    return this.source().running && holds(range, this.nowS) ? shareOf(range, this.nowS) : 0.5;
  }
  hold(): void {
    if (this.source().running) this.#heldS ??= this.source().latestS;
  }
  /** Goes on where live is, as close as the person looked. */
  goOn(): void {
    if (this.#heldS === null) return;
    this.#heldS = null;
    if (!this.#window) return;
    if (!holds(this.#window, this.nowS)) this.#endAt(this.nowS);
    this.#following = true;
  }
  toggleHold(): void {
    if (this.held) this.goOn();
    else this.hold();
  }
  startBrush(): void {
    this.#brush = firstBrush(this.range, this.recorded);
  }
  clearBrush(): void {
    this.#brush = null;
  }
  toggleBrush(): void {
    if (this.#brush) this.clearBrush();
    else this.startBrush();
  }
  brushFromTo(aS: number, bS: number): void {
    this.#brush = brushBetween(aS, bS, this.recorded);
  }
  moveEdge(edge: Edge, atS: number): void {
    if (this.#brush) this.#brush = edgeMoved(this.#brush, edge, atS, this.recorded);
  }
  /** By a key: the picture comes along when the edge is out of sight. */
  stepEdge(edge: Edge, step: number | 'start' | 'end'): void {
    if (!this.#brush) return;
    const { range } = this;
    const atS = edge === 'from' ? this.#brush.fromS : this.#brush.toS;
    const toS = step === 'start' ? range.fromS : step === 'end' ? range.toS : atS + step * spanOf(range);
    this.moveEdge(edge, toS);
    this.#reveal(edge === 'from' ? this.#brush.fromS : this.#brush.toS);
  }
  act(act: ChartAct): void {
    if (act.kind === 'pan') this.pan(act.windows);
    else if (act.kind === 'zoom') this.zoom(act.factor);
    else if (act.kind === 'brushPan') this.#moveBrush(act.windows, brushPanned);
    else if (act.kind === 'brushWiden') this.#moveBrush(act.windows, brushWidened);
    else if (act.kind === 'start') this.#endAt(this.bounds.fromS);
    else if (act.kind === 'end') this.#endAt(this.nowS);
    else if (act.kind === 'all') this.showAll();
    else if (act.kind === 'measure') this.toggleBrush();
    else if (act.kind === 'hold') this.toggleHold();
    else this.clearBrush();
  }
  /** As close as now, up to that second, or from the run's beginning on. */
  #endAt(atS: number): void {
    const toS = Math.max(atS, this.bounds.fromS + spanOf(this.range));
    this.show({ fromS: toS - spanOf(this.range), toS });
  }
  #moveBrush(windows: number, how: typeof brushPanned): void {
    if (this.#brush) this.#brush = how(this.#brush, windows * spanOf(this.range), this.recorded);
  }
  #reveal(atS: number): void {
    const { range } = this;
    if (!holds(range, atS)) this.show(panned(range, atS - secondAt(range, 0.5), this.bounds));
  }
}
