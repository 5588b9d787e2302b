import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { MeshKind } from '../../src/engine/cut/mesh/block.ts';
import { fewestSheets } from '../../src/engine/cut/mesh/fewest-sheets.ts';
import { fillSheet } from '../../src/engine/cut/mesh/fill-sheet.ts';

/** Guillotine cutting, published (tests/contract/SOURCES.md): sizes as they lie, none turned. */
interface Published {
  oneSheet: { name: string; sheet: [number, number]; pieces: [number, number, number, number][]; worth: number }[];
  fewestSheets: { name: string; sheet: [number, number]; pieces: [number, number, number][]; sheets: number }[];
}

const { oneSheet, fewestSheets: cutting }: Published = JSON.parse(
  readFileSync(new URL('../contract/guillotine.json', import.meta.url), 'utf8'),
);

const kindOf = ([across, along, wanted]: readonly number[]): MeshKind => ({
  ways: [{ size: { across: across!, along: along! }, isTurned: false }],
  wanted: wanted!,
});
const sizeOf = ([across, along]: [number, number]) => ({ across, along });

describe('published guillotine cutting', () => {
  it.each(oneSheet)('one sheet of $name is worth $worth, and proven so', ({ sheet, pieces, worth }) => {
    const filled = fillSheet(
      pieces.map(kindOf),
      pieces.map((x) => x[3]),
      sizeOf(sheet),
      2_000_000,
    );
    expect(filled).toMatchObject({ worth, most: worth });
  });

  /** The quick ones of the set; `npm run bench -- mesh` has all. */
  const QUICK = ['A01', 'A02', 'A03', 'A04', 'A06', 'A07', 'A08', 'A12', 'A22', 'A42'];
  it.each(cutting.filter((x) => QUICK.includes(x.name)))('$name takes $sheets sheets', ({ sheet, pieces, sheets }) => {
    const found = fewestSheets(pieces.map(kindOf), sizeOf(sheet));
    expect({ sheets: found.blocks.length, atLeast: found.atLeast }).toEqual({ sheets, atLeast: sheets });
  });
});
