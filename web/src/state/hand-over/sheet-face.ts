// SPDX-License-Identifier: MIT
// The page's own type inside of the sheet, so that the saved file needs nothing else.
import url from '@fontsource-variable/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-wght-normal.woff2?url';

/** A rule for its style, some 46 kB. Rejects where the file can't be fetched. */
export async function sheetFace(): Promise<string> {
  const answer = await fetch(url);
  if (!answer.ok) throw new Error(`The type of the sheet could not be fetched: ${answer.status}.`);
  const bytes = new Uint8Array(await answer.arrayBuffer());
  const text = btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''));
  return `@font-face{font-family:'Atkinson Hyperlegible Next';font-weight:200 800;src:url(data:font/woff2;base64,${text}) format('woff2')}`;
}
