import { readFileSync } from 'node:fs';
import type { MeshKind } from '../../src/engine/cut/mesh/block.ts';
import type { MeshEffort } from '../../src/engine/cut/mesh/effort.ts';
import { fewestSheets } from '../../src/engine/cut/mesh/fewest-sheets.ts';
import { fillSheet } from '../../src/engine/cut/mesh/fill-sheet.ts';
import { ms, type Row } from './table.ts';

interface Published {
  oneSheet: { name: string; sheet: [number, number]; pieces: [number, number, number, number][]; worth: number }[];
  fewestSheets: { name: string; sheet: [number, number]; pieces: [number, number, number][]; sheets: number }[];
}

const published = (): Published =>
  JSON.parse(readFileSync(new URL('../contract/guillotine.json', import.meta.url), 'utf8'));

const kindOf = ([across, along, wanted]: readonly number[]): MeshKind => ({
  ways: [{ size: { across: across!, along: along! }, isTurned: false }],
  wanted: wanted!,
});

const once = <T>(work: () => T): { found: T; spent: number } => {
  const start = performance.now();
  const found = work();
  return { found, spent: performance.now() - start };
};

const oneSheetRow = ({ name, sheet: [across, along], pieces, worth }: Published['oneSheet'][number]): Row => {
  const kinds = pieces.map(kindOf);
  const worths = pieces.map((x) => x[3]);
  const { found, spent } = once(() => fillSheet(kinds, worths, { across, along }, 5_000_000));
  const proven = found.most === found.worth ? 'proven' : `at most ${found.most}`;
  return { what: `one sheet, ${name}`, figure: `${found.worth}, ${proven}, ${ms(spent)}`, aim: `published ${worth}` };
};

const sheetsRow = (effort: MeshEffort, { name, sheet, pieces, sheets }: Published['fewestSheets'][number]): Row => {
  const [across, along] = sheet;
  const { found, spent } = once(() => fewestSheets(pieces.map(kindOf), { across, along }, effort));
  const area = pieces.reduce((sum, [width, length, count]) => sum + width * length * count, 0);
  const waste = (100 * (1 - area / (found.blocks.length * across * along))).toFixed(1);
  const bound = found.atLeast === found.blocks.length ? 'proven' : `at least ${found.atLeast}`;
  return {
    what: `fewest sheets, ${name}`,
    figure: `${found.blocks.length}, ${bound}, ${waste} % waste, ${ms(spent)}`,
    aim: `published ${sheets}`,
  };
};

/** Guillotine cutting against published optima: the dearest sheet, and the fewest sheets. */
export const meshRows = (effort: MeshEffort): Row[] => {
  const { oneSheet, fewestSheets: cutting } = published();
  return [...oneSheet.map(oneSheetRow), ...cutting.map((x) => sheetsRow(effort, x))];
};
