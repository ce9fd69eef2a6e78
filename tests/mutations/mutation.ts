// SPDX-License-Identifier: MIT
// A deliberate fault: one piece of text in one file replaced, which the unit tests beside it must notice.

export interface Mutation {
  /** What the fault would do. */
  readonly words: string;
  readonly file: string;
  readonly find: string;
  readonly put: string;
  /** Folder or file of the tests that must fail. */
  readonly tests: string;
}
export const core = 'web/src/core';
export const within = (folder: string, file: string, tests = folder) => ({
  file: `${folder}/${file}`,
  tests,
});
