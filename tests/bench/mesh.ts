import { readFileSync } from 'node:fs';
import type { MeshKind } from '../../src/engine/cut/mesh/block.ts';
import { cutSheets } from '../../src/engine/cut/mesh/cut-sheets.ts';
import type { MeshEffort } from '../../src/engine/cut/mesh/effort.ts';
import { fewestSheets } from '../../src/engine/cut/mesh/fewest-sheets.ts';
import { fillSheet } from '../../src/engine/cut/mesh/fill-sheet.ts';
import { sheetStockOf } from '../../src/engine/cut/mesh/sheet-stock.ts';
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

/** As a plan cuts them that counts sheets: in rows, all at once, with nothing known of what comes. */
const inRowsRow = ({ name, sheet, pieces, sheets }: Published['fewestSheets'][number]): Row => {
  const cuts = pieces.map(([widthMm, lengthMm, count]) => ({
    ...{ material: 'sheet', widthMm, lengthMm },
    ...{ count, mayTurn: false },
  }));
  const material = {
    ...{ id: 'sheet', name: 'Sheet', unit: 'sheet', onHand: 0, pack: 1, minimum: 0, kerfMm: 0 },
    ...{ inSheets: true, sheetWidthMm: sheet[0], sheetLengthMm: sheet[1] },
  };
  const { found, spent } = once(() => {
    const stock = sheetStockOf(material, [{ sheets: cuts }])!;
    const wanted = cuts.map((cut) => ({ piece: stock.pieceOf(cut), count: cut.count }));
    return cutSheets(stock, [{ at: 0, for: name, pieces: wanted }])!;
  });
  const opened = found.filter(({ rest }) => rest === undefined).length;
  return { what: `in rows, ${name}`, figure: `${opened}, ${ms(spent)}`, aim: `published ${sheets}` };
};

/** Guillotine cutting against published optima: the dearest sheet, the fewest sheets, and as a plan cuts them in rows. */
export const meshRows = (effort: MeshEffort): Row[] => {
  const { oneSheet, fewestSheets: cutting } = published();
  return [...oneSheet.map(oneSheetRow), ...cutting.map((x) => sheetsRow(effort, x)), ...cutting.map(inRowsRow)];
};
