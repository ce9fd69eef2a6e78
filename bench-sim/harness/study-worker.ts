// SPDX-License-Identifier: MIT
// A process of its own that runs the cells of a study that it is sent, one after the other.
import { findCheck } from './check-catalog.ts';
import { runCell, type Cell } from './study-run.ts';

process.on('message', (cell: Cell) => {
  runCell(findCheck(cell.check), cell).then(
    (outcome) => process.send?.({ outcome }),
    (error: unknown) => process.send?.({ failed: error instanceof Error ? error.stack : String(error) }),
  );
});
