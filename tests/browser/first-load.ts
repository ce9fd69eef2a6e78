// SPDX-License-Identifier: MIT
// What files weigh that a page fetched, each gzipped as a server would send it.
import { gzipSync } from 'node:zlib';
import type { Response } from 'playwright-core';

export interface FetchedFile {
  readonly file: string;
  readonly gzippedBytes: number;
}
/** Largest first. */
export async function weigh(fetched: readonly Response[]): Promise<readonly FetchedFile[]> {
  const files = await Promise.all(fetched.map(weighOne));
  return files.toSorted((a, b) => b.gzippedBytes - a.gzippedBytes);
}
async function weighOne(response: Response): Promise<FetchedFile> {
  const body = await response.body();
  return { file: new URL(response.url()).pathname, gzippedBytes: gzipSync(body, { level: 9 }).length };
}
