import type { StoreRows } from '../../../db/stores/store-rows.ts';
import { material } from '../../../shared/material.ts';
import { quoted } from '../../../shared/said-back.ts';
import type { MaterialBuying } from '../../../shared/supplier.ts';
import { LONGEST_NAME, LONGEST_UNIT } from '../../../shared/text-limits.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import type { Cell } from '../../engine/csv/write-csv.ts';
import { shownUnit, tooFine } from '../../engine/units/material-unit.ts';
import { type Reading, unread } from '../../engine/units/reading.ts';
import { newId } from '../core/new-id.ts';
import { amountOf, inRowUnit, priceOf, type RowUnit, rowUnitOf } from './csv-amounts.ts';
import { buyingCells, buyingOf, buyingRows } from './csv-buying.ts';
import type { TableGround, TableRows } from './csv-ground.ts';
import { fitsIn, type RowReader, textNow } from './csv-row.ts';

type MaterialRow = StoreRows['materials'][number];

const plain = (text: string): string => text.trim().toLowerCase();

const systemOf = ({ yardUnits }: StoreRows): UnitSystem => yardUnits[0]?.system ?? 'metric';

const currencyOf = ({ yardHabits }: StoreRows): string => yardHabits[0]?.currency ?? 'EUR';

/** The materials by their ids and by their names, and how one more is put among them. */
interface Known {
  byId: ReadonlyMap<string, MaterialRow>;
  byName: ReadonlyMap<string, readonly string[]>;
  put(row: MaterialRow): void;
}

const knownOf = (rows: readonly MaterialRow[]): Known => {
  const byId = new Map<string, MaterialRow>();
  const byName = new Map<string, string[]>();
  const put = (row: MaterialRow) => {
    if (!byId.has(row.id)) byName.set(plain(row.name), [...(byName.get(plain(row.name)) ?? []), row.id]);
    byId.set(row.id, row);
  };
  for (const row of rows) put(row);
  return { byId, byName, put };
};

const materialOf = (row: RowReader, { byId, byName }: Known): MaterialRow | 'new' | null => {
  const name = row.text('material');
  if (name === '') {
    row.wrong('material', 'say what it is called');
    return null;
  }
  const named = byName.get(plain(name)) ?? [];
  const found = byId.get(name) ?? (named.length === 1 ? byId.get(named[0] ?? '') : undefined);
  if (found) return found;
  if (named.length === 0) return 'new';
  row.wrong('material', `${quoted(name)} could be several. Write ${named.join(' or ')}`);
  return null;
};

const blank = (id: string, name: string, unit: string, position: number): MaterialRow => ({
  ...{ id, name, unit, position, onHand: 0, pack: 1, leadDays: null, minimum: 0, unitPrice: null, supplier: null },
  ...{ shelfLifeDays: null, opensBy: null, openedDays: null, stickMm: null, kerfMm: 0, openedNote: null, shortBy: 0 },
  ...{ sheetWidthMm: null, sheetLengthMm: null, meshMm: null, rests: null, inSheets: null },
});

/** Of what is sold in lengths whole ones are counted: a share of one counts for nothing. What is there already stays. */
const wholeOnes = (row: RowReader, { stickMm, onHand }: MaterialRow, read: number): number => {
  if (stickMm !== null && read !== onHand && !Number.isInteger(read))
    row.wrong('in the yard', 'count whole ones. What is left of an opened one is counted on Buying');
  return read;
};

/** What is there already may be counted as finely as it is. */
const countedOf = (text: string, amount: Reading<number>, unit: string, now: number): Reading<number> => {
  const fine = amount.ok && amount.value !== now ? tooFine(text, unit) : null;
  return fine === null ? amount : unread(fine);
};

/** Figures of a yard file by the columns that they stand in. */
const COLUMN_OF = {
  ...{ onHand: 'in the yard', pack: 'pack', leadDays: 'lead days', minimum: 'always keep', unitPrice: 'price' },
} as const;

const FIGURES = material.pick({ onHand: true, pack: true, leadDays: true, minimum: true, unitPrice: true });

/** Says at its cell what a yard file may not hold. */
const fitsFile = (row: RowReader, now: MaterialRow): MaterialRow => {
  const { onHand, pack, minimum, leadDays, unitPrice } = now;
  const read = FIGURES.safeParse({
    ...{ onHand, pack, minimum, leadDays: leadDays ?? undefined, unitPrice: unitPrice ?? undefined },
  });
  for (const { path, message } of read.error?.issues ?? [])
    row.wrong(COLUMN_OF[path[0] as keyof typeof COLUMN_OF], message);
  return now;
};

const changed = (row: RowReader, was: MaterialRow, unit: RowUnit, { held, dialect }: TableGround): MaterialRow => {
  const amount = (column: string, none: number, now: number) =>
    row.read(column, none, (text) =>
      countedOf(text, amountOf(text, { stored: was.unit, now }, unit, dialect), was.unit, now),
    );
  const kept = <T>(column: string, now: T, next: () => T): T => (row.has(column) ? next() : now);
  const pack = kept('pack', was.pack, () => amount('pack', 1, was.pack));
  return fitsFile(row, {
    ...was,
    onHand: kept('in the yard', was.onHand, () => {
      if (row.text('in the yard') === '') row.wrong('in the yard', 'how much is there? Write 0 or a number above it');
      return wholeOnes(row, was, amount('in the yard', 0, was.onHand));
    }),
    pack,
    leadDays: kept('lead days', was.leadDays, () => row.whole('lead days', null)),
    minimum: kept('always keep', was.minimum, () => amount('always keep', 0, was.minimum)),
    unitPrice: kept('price', was.unitPrice, () =>
      priceOf(row.money('price', null, currencyOf(held)), was.unitPrice, unit),
    ),
    supplier: textNow(row, 'supplier', was.supplier, LONGEST_NAME),
  });
};

const NO_BUYING: MaterialBuying = { breaks: [] };

/** What is said of buying each material. */
const buyingsOf = ({ materialBuyings }: StoreRows): ReadonlyMap<string, MaterialBuying> =>
  new Map(materialBuyings.map(({ material, facts }) => [material, facts]));

const startOf = (row: RowReader, { byId }: Known, place: number): MaterialRow => {
  const [name, unit] = [row.text('material'), row.text('unit')];
  if (unit === '') row.wrong('unit', 'say what its amounts count, as in bag or kg');
  fitsIn(row, 'material', LONGEST_NAME);
  fitsIn(row, 'unit', LONGEST_UNIT);
  if (!row.has('in the yard')) row.wrong('in the yard', 'how much is there? A new material needs this column');
  return blank(newId(name, byId, 'material'), name, unit, place);
};

export const stockRowsOf: TableRows = (rows, ground) => {
  const { held } = ground;
  const known = knownOf(held.materials);
  const seen = new Set<string>();
  const before = buyingsOf(held);
  const buyings = new Map<string, MaterialBuying>();
  let place = Math.max(-1, ...held.materials.map(({ position }) => position));
  for (const row of rows) {
    const found = materialOf(row, known);
    if (found === null) continue;
    if (found === 'new') place += 1;
    const was = found === 'new' ? startOf(row, known, place) : found;
    if (seen.has(was.id)) row.wrong('material', `${was.name} is there twice`);
    seen.add(was.id);
    const unit = rowUnitOf(row, was, systemOf(held));
    known.put(changed(row, was, unit, ground));
    const writing = { unit, dialect: ground.dialect, currency: currencyOf(held) };
    buyings.set(was.id, buyingOf(row, before.get(was.id) ?? NO_BUYING, writing));
  }
  return { materials: [...known.byId.values()], materialBuyings: buyingRows(held.materialBuyings, buyings) };
};

/** The stock, a row each, in the unit that the yard shows; of two materials of one name, each by its id. */
export const stockCells = ({ held, dialect }: Pick<TableGround, 'held' | 'dialect'>): Cell[][] => {
  const { byId, byName } = knownOf(held.materials);
  const nameOf = ({ id, name }: MaterialRow) => {
    const other = byId.get(name);
    const clear = byName.get(plain(name))?.length === 1 && (!other || other.id === id) && name.trim() !== '';
    return clear ? name : id;
  };
  const system = systemOf(held);
  const buyings = buyingsOf(held);
  return held.materials.map((one) => {
    const { word, perUnit } = shownUnit(one.unit, system);
    const amount = (stored: number) => inRowUnit(stored, { perUnit, system });
    const price = one.unitPrice === null ? null : inRowUnit(one.unitPrice, { perUnit: 1 / perUnit, system });
    return [
      ...[nameOf(one), word],
      ...[amount(one.onHand), amount(one.pack), one.leadDays, amount(one.minimum), price],
      one.supplier,
      ...buyingCells(buyings.get(one.id), { unit: { perUnit, system }, dialect }),
    ];
  });
};
