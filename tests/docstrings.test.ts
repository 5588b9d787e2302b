import { readFileSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { describe, expect, test } from 'vitest';
import { readYardFile } from '../shared/yard-file.ts';
import { docstringFaults, examplesIn, exportsOf, type WorkedExample, workedOut } from './support/docstrings.ts';
import { filesUnder } from './support/source-files.ts';

const project = fileURLToPath(new URL('../', import.meta.url));

const FOLDERS = ['shared', 'db/stores', 'src/engine'];

describe('what is exported', () => {
  test.each(FOLDERS)('by %s was seen: a check that sees nothing passes everything', (folder) => {
    expect(filesUnder(folder).flatMap(exportsOf).length).toBeGreaterThan(50);
  });

  test.each(FOLDERS)('by %s says what it is', (folder) => {
    expect(filesUnder(folder).flatMap(docstringFaults)).toEqual([]);
  });

  test.each([
    'export const planted = 1;',
    '// Of no use to an editor.\nexport const planted = 1;',
    '/** */\nexport const planted = 1;',
    '/** Planted. */\nexport const planted = 1;',
    '/** Says what comes next. */\nconst other = 1;\nexport function planted() {}',
    'export interface Planted { id: string }',
    'export type Planted = string;',
    'export class Planted {}',
    'export default class {}',
  ])('and without a docstring is found: %s', (text) => {
    expect(docstringFaults({ path: 'shared/planted.ts', text })).toHaveLength(1);
  });

  test('and with one is not, nor is what another file exports', () => {
    const text = `/** How many there are. */\nexport const one = 1;\nexport type { Two } from './two.ts';`;
    expect(docstringFaults({ path: 'shared/planted.ts', text })).toEqual([]);
  });
});

interface Example extends WorkedExample {
  path: string;
}

const examples: Example[] = FOLDERS.flatMap(filesUnder).flatMap((file) =>
  exportsOf(file).flatMap(({ doc }) => examplesIn(doc ?? '').map((example) => ({ path: file.path, ...example }))),
);

/** Everything that the folders export, by name: an example may use what other files have. */
const allExports = async (): Promise<Record<string, unknown>> => {
  const paths = ['shared', 'src/engine'].flatMap(filesUnder).map(({ path }) => pathToFileURL(project + path).href);
  return Object.assign({}, ...(await Promise.all(paths.map((path) => import(/* @vite-ignore */ path)))));
};

/** An answer is right to the last digit that is written of it. */
const expectAnswer = (got: unknown, answer: string, known: Record<string, unknown>): void => {
  const written = workedOut(answer, known);
  if (typeof written !== 'number' || !Number.isFinite(written)) expect(got).toEqual(written);
  else expect(got).toBeCloseTo(written, answer.split('.')[1]?.length ?? 6);
};

/** In the examples `yard` is the example yard of the contract. */
const exampleYard = () => {
  const read = readYardFile(JSON.parse(readFileSync(`${project}tests/contract/example.yard.json`, 'utf8')));
  if (!read.ok) throw new Error('The example yard cannot be read.');
  return read.yard;
};

/** What was typed and read: the answer of an example is its value. */
const reads = (got: unknown): got is { ok: true; value: unknown } =>
  typeof got === 'object' && got !== null && 'ok' in got && 'value' in got;

const all = { ...(await allExports()), yard: exampleYard() };

describe('a worked example of a docstring', () => {
  test('was seen, and many of them', () => {
    expect(examples.length).toBeGreaterThan(100);
  });

  test.each(examples)('$path: $call is $answer', async ({ path, call, answer }) => {
    const known = { ...all, ...(await import(/* @vite-ignore */ pathToFileURL(project + path).href)) };
    const got = workedOut(call, known);
    expectAnswer(reads(got) ? got.value : got, answer, known);
  });

  test('that is wrong is found', () => {
    const [example] = examplesIn('Half of it. Example: `half(3)` is 1.55.');
    const half = workedOut(example!.call, { half: (x: number) => x / 2 });
    expect(() => expectAnswer(half, example!.answer, {})).toThrow();
    expect(() => expectAnswer(half, '1.50', {})).not.toThrow();
    expect(() => workedOut('third(3)', {})).toThrow(ReferenceError);
  });
});
