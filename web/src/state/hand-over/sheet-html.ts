// SPDX-License-Identifier: MIT
// The hand-over sheet as one file that needs nothing else: black on white, one page of A4 or Letter, readable
// offline. Everything that people typed is escaped.
import type { VerdictWord } from '#core/verdicts/limit';
import { verdictTitle } from '../verdict-words.ts';
import type { SetUpRow, SheetContent, SheetRow } from './sheet-content.ts';
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

/** `face`: the page's own type as a rule of its own, so that the file looks everywhere as it does here; empty without. */
export function sheetHtml(
  content: SheetContent,
  chart: SheetChartView | null,
  paper: Paper,
  face = '',
): string {
  const { car, occasion, sentence, madeAt, rig, rows } = content;
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><title>${escaped(car)}: hand-over sheet</title>
<meta name="viewport" content="width=device-width,initial-scale=1"><style>${face}${styleOf(paper)}</style></head><body${rows.length > roomyRows[paper] ? ' class="dense"' : ''}>${hatch}
<header><div><h1>${escaped(car)}</h1><p>${escaped(occasion)}</p></div><div class="r"><b>Bench Marshal</b><p>Hand-over sheet, ${escaped(dateWords(madeAt))}</p><p>${escaped(rig ? `Rig ${rig}` : 'No rig yet')}</p></div></header>
<div class="sum"><h2>${escaped(sentence)}</h2><p>${countWords(content)}</p></div>
${tableHtml(rows)}${uncheckedHtml(content)}
<div class="two"><section><h3>Set up like this</h3><table>${content.setUp.map(setUpHtml).join('')}</table></section><div>${chartHtml(chart)}<section class="notes"><h3>Notes for whoever drives it</h3>${notesHtml(content.notes)}</section></div></div>
<section class="care"><h3>Take care</h3><p>${care}</p></section>
<footer><div class="sig"><div>Prepared by, time</div><div>Taken over by, time</div><div>Back at, condition</div></div><p>${meaning}</p></footer></body></html>`;
}
/** More are set closer, so that all there can be fit one page. */
const roomyRows: Readonly<Record<Paper, number>> = { A4: 16, letter: 9 };
const order: readonly VerdictWord[] = ['pass', 'undecided', 'not measured', 'fail'];
const countWords = ({ counts }: SheetContent): string =>
  order
    .filter((verdict) => counts[verdict] > 0)
    .map((verdict) => `<span class="v">${sheetGlyph(verdict)} ${counts[verdict]} ${verdict}</span>`)
    .join(' ');
const tableHtml = (rows: readonly SheetRow[]): string =>
  rows.length === 0
    ? ''
    : `<table><thead><tr><th>Checked</th><th>Verdict</th><th class="r">Value</th><th colspan="2">Limit and its kind</th><th>Against its limit</th></tr></thead>${rowsHtml(rows)}</table>`;
/** Said wherever something was checked, lest the sheet pass for the whole car. */
const uncheckedHtml = ({ unchecked, rows }: SheetContent): string =>
  unchecked.length === 0 || rows.length === 0
    ? ''
    : `<p class="not">${sheetGlyph('not measured')} <b>Not checked:</b> ${escaped(unchecked.join(', ').toLowerCase())}.</p>`;
const setUpHtml = ({ what, value, since }: SetUpRow): string =>
  `<tr><td>${escaped(what)}</td><td class="r"><b>${escaped(value)}</b></td><td class="nowrap">${since ? `set ${escaped(dayWords(since))}` : ''}</td></tr>`;

/** A group of rows a part. */
function rowsHtml(rows: readonly SheetRow[]): string {
  const parts = [...new Set(rows.map(({ part }) => part))];
  return parts
    .map((part) => {
      const own = rows.filter((row) => row.part === part).map(rowHtml);
      return `<tbody><tr><th colspan="6" scope="rowgroup">${escaped(part)}</th></tr>${own.join('')}</tbody>`;
    })
    .join('');
}
const rowHtml = (row: SheetRow): string =>
  `<tr><td>${escaped(row.checked)}</td><td class="v">${sheetGlyph(row.verdict)} <b>${verdictTitle(row.verdict)}</b></td><td class="r"><b>${escaped(row.value)}</b></td><td class="nowrap">${escaped(row.limit)}</td><td class="nowrap small">${escaped(row.kind)}</td><td>${miniPicture(row)}</td></tr>`;
const chartHtml = (chart: SheetChartView | null): string =>
  chart
    ? `<section><h3>${escaped(chart.title)}</h3>${chart.svg}<p><small>${escaped(chart.words)}</small></p></section>`
    : '';
const notesHtml = (notes: readonly string[]): string =>
  (notes.length > 0 ? notes : ['Nothing to note.']).map((note) => `<p>${escaped(note)}</p>`).join('');
const dayWords = (iso: string): string => new Date(iso).toLocaleDateString('en-GB', { dateStyle: 'medium' });
const dateWords = (iso: string): string =>
  new Date(iso).toLocaleString('en-GB', { dateStyle: 'long', timeStyle: 'short' });

const styleOf = (paper: Paper): string => `
@page{size:${paper} portrait;margin:${paper === 'A4' ? 10 : 8}mm 12mm}
*{box-sizing:border-box}
body{margin:0 auto;max-width:186mm;font:10pt/1.3 'Atkinson Hyperlegible Next','Atkinson Hyperlegible',system-ui,sans-serif;font-feature-settings:'tnum';color:#000;background:#fff}
@media screen{body{padding:11mm 6mm}}
h1{font-size:24pt;line-height:1.05;margin:0}h2{font-size:14pt;margin:0}h3{font-size:11pt;margin:0 0 1mm}p{margin:0 0 1mm}small{font-size:8.5pt}
header{display:flex;justify-content:space-between;gap:8mm;border-bottom:1.2mm solid #000;padding-bottom:1.5mm}
header p{margin:0}.r{text-align:right}.sum{display:flex;justify-content:space-between;align-items:baseline;gap:1mm 6mm;margin:2.5mm 0 1.5mm;flex-wrap:wrap}.sum p{margin:0}
.v{white-space:nowrap}.v svg{vertical-align:-2px}.sum .v+.v{margin-left:3mm}
table{width:100%;border-collapse:collapse;font-size:9.2pt;line-height:1.2}th{text-align:left;font-size:8.8pt;border-bottom:.4mm solid #000;padding:0 2mm .8mm 0}
th.r{text-align:right;padding-right:4mm}td{padding:.6mm 2mm .6mm 0;border-bottom:.2mm solid #999;vertical-align:middle}td.r{white-space:nowrap;padding-right:4mm}
td:last-child,th:last-child{padding-right:0}td svg{display:block}.v svg{display:inline}.nowrap{white-space:nowrap}.small{font-size:8.2pt}tbody th{padding:1.2mm 0 .3mm;border-bottom:.2mm solid #999;font-size:9.2pt}
tr,section{break-inside:avoid}.not{margin:1.5mm 0 0;font-size:9.2pt}.not svg{vertical-align:-3px}
.two{display:grid;grid-template-columns:1.25fr 1fr;gap:8mm;margin-top:2.5mm}.two tr:last-child td{border:0}
.two p,.care p{font-size:9.2pt}.care{margin-top:2.5mm}section+.notes{margin-top:2mm}.sig{display:grid;grid-template-columns:repeat(3,1fr);gap:8mm;margin:10mm 0 1.5mm}.sig div{border-top:.3mm solid #000;padding-top:.8mm}
footer{break-inside:avoid}footer p{font-size:8.2pt}svg{max-width:100%}text{font-family:inherit}
.dense td{padding-top:.3mm;padding-bottom:.3mm}.dense td svg{height:13px}.dense tbody th{padding-top:.6mm;font-size:8.6pt}.dense table{font-size:8.6pt;line-height:1.15}.dense .two,.dense .care{margin-top:1.5mm}.dense .two p,.dense .care p{font-size:8.6pt}.dense .sig{margin-top:7mm}.dense h1{font-size:18pt}.dense .two svg{max-height:27mm}.dense header{padding-bottom:1mm}
@media screen and (max-width:600px){.two{grid-template-columns:1fr}header,.sum{display:block}.r{text-align:left}table{font-size:8pt}.nowrap,td.r{white-space:normal}}
`;
