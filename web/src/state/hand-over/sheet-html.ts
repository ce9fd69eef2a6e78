// SPDX-License-Identifier: MIT
// The hand-over sheet as one file that needs nothing else: black on white, one page of A4 or Letter, readable
// offline. Everything that people typed is escaped.
import type { VerdictWord } from '#core/verdicts/limit';
import { verdictTitle } from '../verdict-words.ts';
import type { SheetContent, SheetRow } from './sheet-content.ts';
import { hatch, miniPicture, sheetGlyph } from './sheet-marks.ts';

export type Paper = 'A4' | 'letter';
export interface SheetChartView {
  readonly title: string;
  readonly svg: string;
  readonly words: string;
}
const escapes: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
export const escaped = (text: string): string => text.replace(/[&<>"]/g, (sign) => escapes[sign]);

const care =
  "Charge and store the pack attended, on a surface that can't burn. Controllers of this kind commonly have no protection against a reversed pack: check polarity, then check again (common practice, no source). Motor, controller and load resistors are hot after a run. Makers' manuals, the event's rules and local codes come first; mains work belongs to licensed people.";
const meaning =
  'Values with their 95 % interval. Undecided: closer to the limit than the uncertainty allows. Not measured is never a pass. Limits are ratings, baselines or common practice as named.';

export function sheetHtml(content: SheetContent, chart: SheetChartView | null, paper: Paper): string {
  const { car, occasion, sentence, madeAt, rig } = content;
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><title>${escaped(car)}: hand-over sheet</title>
<meta name="viewport" content="width=device-width,initial-scale=1"><style>${styleOf(paper)}</style></head><body>${hatch}
<header><div><h1>${escaped(car)}</h1><p>${escaped(occasion)}</p></div><div class="r"><b>Bench Marshal</b><p>Hand-over sheet, ${escaped(dateWords(madeAt))}</p><p>${escaped(rig ? `Rig ${rig}` : 'No rig yet')}</p></div></header>
<div class="sum"><h2>${escaped(sentence)}</h2><p>${countWords(content)}</p></div>
<table><thead><tr><th>Part</th><th>Checked</th><th>Verdict</th><th class="r">Value</th><th>Limit</th><th>Value against limit</th></tr></thead><tbody>${rowsHtml(content.rows)}</tbody></table>
<div class="two"><section><h3>Set up like this</h3><dl>${content.setUp.map(([what, value]) => `<dt>${escaped(what)}</dt><dd>${escaped(value)}</dd>`).join('')}</dl></section>${chartHtml(chart)}</div>
<div class="two"><section><h3>Notes for whoever drives it</h3>${notesHtml(content.notes)}</section><section><h3>Take care</h3><p>${care}</p></section></div>
<footer><div class="sig"><div>Prepared by, time</div><div>Taken over by, time</div><div>Back at, condition</div></div><p>${meaning}</p></footer></body></html>`;
}
const order: readonly VerdictWord[] = ['pass', 'undecided', 'not measured', 'fail'];
const countWords = ({ counts }: SheetContent): string =>
  order
    .map((verdict) => `<span class="v">${sheetGlyph(verdict)} ${counts[verdict]} ${verdict}</span>`)
    .join(' ');

function rowsHtml(rows: readonly SheetRow[]): string {
  return rows
    .map((row, index) => {
      const part = rows[index - 1]?.part === row.part ? '' : `<b>${escaped(row.part)}</b>`;
      const kind = row.kind ? `<small>${escaped(row.kind)}</small>` : '';
      return `<tr><td>${part}</td><td>${escaped(row.checked)}</td><td class="v">${sheetGlyph(row.verdict)} <b>${verdictTitle(row.verdict)}</b></td><td class="r"><b>${escaped(row.value)}</b></td><td>${escaped(row.limit)} ${kind}</td><td>${miniPicture(row)}</td></tr>`;
    })
    .join('');
}
const chartHtml = (chart: SheetChartView | null): string =>
  chart
    ? `<section><h3>${escaped(chart.title)}</h3>${chart.svg}<p><small>${escaped(chart.words)}</small></p></section>`
    : '<section></section>';
const notesHtml = (notes: readonly string[]): string =>
  (notes.length > 0 ? notes : ['Nothing to note.']).map((note) => `<p>${escaped(note)}</p>`).join('');
const dateWords = (iso: string): string =>
  new Date(iso).toLocaleString('en-GB', { dateStyle: 'long', timeStyle: 'short' });

const styleOf = (paper: Paper): string => `
@page{size:${paper} portrait;margin:11mm 12mm}
*{box-sizing:border-box}
body{margin:0 auto;max-width:186mm;font:10.5pt/1.35 'Atkinson Hyperlegible Next','Atkinson Hyperlegible',system-ui,sans-serif;color:#000;background:#fff}
@media screen{body{padding:11mm 6mm}}
h1{font-size:24pt;line-height:1.05;margin:0}h2{font-size:14pt;margin:0}h3{font-size:11pt;margin:0 0 1mm}p{margin:0 0 1mm}small{font-size:8.5pt}
header{display:flex;justify-content:space-between;gap:8mm;border-bottom:1.2mm solid #000;padding-bottom:2mm}
.r{text-align:right}.sum{display:flex;justify-content:space-between;align-items:baseline;gap:6mm;margin:3mm 0 2mm;flex-wrap:wrap}
.v{white-space:nowrap}.v svg{vertical-align:-2px}.sum .v{margin-left:3mm}
table{width:100%;border-collapse:collapse;font-size:9.2pt}th{text-align:left;font-size:8.8pt;border-bottom:.4mm solid #000;padding:0 2mm 1mm 0}
th.r{text-align:right}td{padding:.7mm 2mm .7mm 0;border-bottom:.2mm solid #999;vertical-align:middle}td.r{white-space:nowrap;padding-right:4mm}
tr{break-inside:avoid}.two{display:grid;grid-template-columns:1fr 1fr;gap:8mm;margin-top:3mm}
dl{display:grid;grid-template-columns:auto 1fr;margin:0}dt,dd{margin:0;padding:.6mm 0;border-top:.2mm solid #999}dd{text-align:right;font-weight:700}
.two p{font-size:9.4pt}.sig{display:grid;grid-template-columns:repeat(3,1fr);gap:8mm;margin:11mm 0 2mm}.sig div{border-top:.3mm solid #000;padding-top:1mm}
footer p{font-size:8.5pt}svg{max-width:100%}text{font-family:inherit}
@media (max-width:600px){.two{grid-template-columns:1fr}header,.sum{display:block}.r{text-align:left}table{font-size:8pt}}
`;
