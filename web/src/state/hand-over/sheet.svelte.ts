// SPDX-License-Identifier: MIT
// The hand-over sheet being made: what the person adds, the paper, the chart once its record is read.
import type { Logbook } from '../logbook.svelte.ts';
import type { Shelf } from '../shelf.svelte.ts';
import { chartedRow } from './charted-row.ts';
import { recordChart } from './record-chart.ts';
import { sheetContent } from './sheet-content.ts';
import { sheetFace } from './sheet-face.ts';
import { sheetHtml, type Paper, type SheetChartView } from './sheet-html.ts';

export const papers: readonly (readonly [Paper, string])[] = [
  ['A4', 'A4'],
  ['letter', 'Letter'],
];

export class HandOver {
  occasion = $state('for Quarry Lantern 90');
  notes = $state('');
  paper = $state<Paper>('A4');
  #chart = $state.raw<SheetChartView | null>(null);
  #face = $state.raw('');
  readonly #madeAt: string;

  constructor(
    private readonly shelf: Shelf,
    private readonly logbook: Logbook,
    nowMs: number,
  ) {
    this.#madeAt = new Date(nowMs).toISOString();
  }
  get content() {
    const { car } = this.shelf;
    const { occasion, notes } = this;
    return sheetContent({ car, runs: this.logbook.runs, occasion, notes, madeAt: this.#madeAt });
  }
  get html(): string {
    return sheetHtml(this.content, this.#chart, this.paper, this.#face);
  }
  get fileName(): string {
    return `${this.shelf.car.name.replace(/[^\p{L}\p{N}]+/gu, '-')}-${this.#madeAt.slice(0, 10)}.html`;
  }
  /** Without it the sheet is set in what the computer has. */
  async loadFace(): Promise<void> {
    this.#face = await sheetFace().catch(() => '');
  }
  /** Of the row that is worth it most; a record that can't be read leaves the sheet without a chart. */
  async drawChart(): Promise<void> {
    const row = chartedRow(this.content.rows);
    const text = row && (await this.logbook.record(row.runId));
    if (!row || typeof text !== 'string') return;
    try {
      this.#chart = recordChart(text, row.resultId);
    } catch {
      this.#chart = null;
    }
  }
}
