import { describe, expect, test } from 'vitest';
import { pageModelFaults } from './support/page-model-rules.ts';
import { filesUnder } from './support/source-files.ts';

const FOLDERS = ['src/usecases', 'views'];

describe('page models are types that are written down', () => {
  test.each(FOLDERS)('in %s, of which many files were read', (folder) => {
    const files = filesUnder(folder);
    expect(files.length).toBeGreaterThan(100);
    expect(files.flatMap(pageModelFaults)).toEqual([]);
  });
});

describe('a model that is not is found', () => {
  test.each([
    'export type Planted = ReturnType<typeof showPlanted>;',
    'type Planted = NonNullable<Awaited<ReturnType<typeof showPlanted>>>;',
    "type Line = ReturnType<typeof plantedOf>['lines'][number];",
    'const shown = (model: ReturnType<typeof plantedOf>): string => model.name;',
    'export const showPlanted = async () => ({ name: "planted" });',
    'export const showPlanted = function () { return { name: "planted" }; };',
    'export async function showPlanted() { return { name: "planted" }; }',
  ])('%s', (text) => {
    expect(pageModelFaults({ path: 'src/usecases/planted.ts', text })).toHaveLength(1);
  });

  test.each([
    'export const showPlanted = async (): Promise<Planted> => ({ name: "planted" });',
    'export const showPlanted: Show = () => ({ name: "planted" });',
    'export const showers = () => 1;',
    'const showPlanted = () => 1;',
    '// ReturnType<typeof showPlanted> is what this was.',
  ])('and what is passes: %s', (text) => {
    expect(pageModelFaults({ path: 'src/usecases/planted.ts', text })).toEqual([]);
  });
});
