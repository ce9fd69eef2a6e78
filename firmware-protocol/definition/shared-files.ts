// SPDX-License-Identifier: MIT
// The files that are written from the wire tables, as they should be now. generate.ts writes them; a test
// compares them. It does not know how any of them is used.
import { existsSync, readFileSync } from 'node:fs';
import { codesPart, constantsPart, examplesPart, messagesPart, withPart } from './document-emitter.ts';
import { headerOf } from './header-emitter.ts';
import { typescriptOf } from './typescript-emitter.ts';
import { readWireDefinition } from './wire-definition.ts';
import type { WireDefinition } from './wire-definition.ts';

export const room = (path: string): URL => new URL(`../${path}`, import.meta.url);
/** The text of a file of this room, empty when it is not there. */
export const textOf = (path: string): string =>
  existsSync(room(path)) ? readFileSync(room(path), 'utf8') : '';

function protocolDocument(definition: WireDefinition): string {
  const parts = [
    ['constants', constantsPart(definition)],
    ['messages', messagesPart(definition)],
    ['codes', codesPart(definition)],
    ['examples', examplesPart(textOf('vectors/messages.txt'))],
  ] as const;
  return parts.reduce((text, [part, content]) => withPart(text, part, content), textOf('PROTOCOL.md'));
}

/** Path in this room and wanted text of each file. */
export function sharedFiles(): Map<string, string> {
  const definition = readWireDefinition(textOf('messages.tsv'), textOf('codes.tsv'), textOf('constants.tsv'));
  return new Map([
    ['ts/generated-messages.ts', typescriptOf(definition)],
    ['firmware/logic/generated_messages.h', headerOf(definition)],
    ['PROTOCOL.md', protocolDocument(definition)],
  ]);
}
