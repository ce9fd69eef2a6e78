// SPDX-License-Identifier: MIT
// What is written from the wire tables is in step with them, and tables that contradict themselves are refused.
import { describe, expect, it } from 'vitest';
import { withPart } from '../definition/document-emitter.ts';
import { sharedFiles, textOf } from '../definition/shared-files.ts';
import { readWireDefinition } from '../definition/wire-definition.ts';

it.each([...sharedFiles()])('%s is in step (else run: npx tsx firmware-protocol/generate.ts)', (path, wanted) => {
  expect(textOf(path) === wanted).toBe(true);
});

const head = 'code\tmessage\tfield\ttype\tunit\tmeaning\n';
const codes = 'group\tcode\tname\twords\n';
const read = (messages: string, codeRows = ''): unknown =>
  readWireDefinition(head + messages, codes + codeRows, 'name\tvalue\n');

describe('tables that contradict themselves', () => {
  it.each([
    ['an unknown type', '0x01\thello\tid\tu9', '', 'hello.id has the unknown type "u9"'],
    ['a code twice', '0x01\ta\tid\tu8\n0x01\tb\tid\tu8', '', '1 occurs twice'],
    ['a field twice', '0x01\ta\tid\tu8\n-\ta\tid\tu8', '', 'id occurs twice'],
    ['an early rest', '0x01\ta\tall\tu8[]\n-\ta\tid\tu8', '', 'a.all runs to the end but is not last'],
    ['a stray field', '-\ta\tid\tu8', '', '"a.id" continues no message'],
    ['a short row', '0x01\ta\tid', '', 'fewer than 4 columns'],
    ['a broken code', '0x01\ta\tid\tu8', 'trip\tx\tnone\tNo trip.', '"x" is not a whole number'],
    ['a name twice', '0x01\ta\tid\tu8', 'trip\t0\tx\tX.\ntrip\t1\tx\tY.', 'trip: x occurs twice'],
  ])('%s', (_what, messages, codeRows, words) => {
    expect(() => read(messages, codeRows)).toThrow(words);
  });
  it('a document without its markers', () => {
    expect(() => withPart('# text', 'codes', 'x')).toThrow('are missing');
  });
});
