import type { StoreRows } from '../../../db/stores/store-rows.ts';
import { buyingFaults, type MaterialBuying } from '../../../shared/supplier.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import { moneyOfCell, numberOfCell } from '../../engine/csv/cells.ts';
import type { Dialect } from '../../engine/csv/dialect.ts';
import type { Cell } from '../../engine/csv/write-csv.ts';
import { MASS, readMass } from '../../engine/units/mass.ts';
import { type Reading, read, unread } from '../../engine/units/reading.ts';
import { asIs, inRowUnit, type RowUnit } from './csv-amounts.ts';
import type { RowReader } from './csv-row.ts';

type Breaks = MaterialBuying['breaks'];

/** What amounts and prices of a row are written and read by. */
export interface BuyingWriting {
  unit: RowUnit;
  dialect: Dialect;
  currency: string;
}

const massUnit = (system: UnitSystem): RowUnit => ({ perUnit: 1 / MASS.bare[system].size, system });
const priceUnit = ({ perUnit, system }: RowUnit): RowUnit => ({ perUnit: 1 / perUnit, system });

const breaksText = (breaks: Breaks, { unit, dialect }: Pick<BuyingWriting, 'unit' | 'dialect'>): string => {
  const text = (value: number, of: RowUnit) => String(inRowUnit(value, of)).replace('.', dialect.decimal);
  return breaks
    .map(({ from, unitPrice }) => `from ${text(from, unit)} at ${text(unitPrice, priceUnit(unit))}`)
    .join('; ');
};

const BREAK = /^(?:from\s+)?(\S+)\s+at\s+(.+)$/i;

const breaksOf = (text: string, was: Breaks, writing: BuyingWriting): Reading<Breaks> => {
  const { unit, dialect, currency } = writing;
  if (text === breaksText(was, writing)) return read(was);
  const breaks: Breaks = [];
  for (const part of text.split(';').map((one) => one.trim())) {
    const [, amount, money] = BREAK.exec(part) ?? [];
    if (amount === undefined || money === undefined)
      return unread(
        `Write how many and the price of one: from 10 at 8${dialect.decimal}90; from 40 at 8${dialect.decimal}20`,
      );
    const [from, price] = [numberOfCell(amount, dialect), moneyOfCell(money, dialect, currency)];
    if (!from.ok) return from;
    if (!price.ok) return price;
    if (from.value === 0) return unread('A price break begins above 0');
    breaks.push({ from: asIs(from.value, null, unit), unitPrice: asIs(price.value, null, priceUnit(unit)) });
  }
  return read(breaks.sort((a, b) => a.from - b.from));
};

const weightOf = (
  text: string,
  was: number | undefined,
  { unit, dialect }: BuyingWriting,
): Reading<number | undefined> => {
  const bare = numberOfCell(text, dialect);
  const kg = bare.ok ? read(asIs(bare.value, was ?? null, massUnit(unit.system))) : readMass(text, unit.system);
  return kg.ok && kg.value === 0 ? unread('A weight is above 0, or left empty') : kg;
};

const COLUMNS: Partial<Record<keyof MaterialBuying, string>> = { kgPerUnit: 'weight', breaks: 'price breaks' };

/** What a row says of buying a material; what it has no column for stays. The weight is that of one of the row's unit. */
export const buyingOf = (row: RowReader, was: MaterialBuying, writing: BuyingWriting): MaterialBuying => {
  const { kgPerUnit: _kg, ...rest } = was;
  const { perUnit } = writing.unit;
  const ofRowUnit = was.kgPerUnit === undefined ? undefined : was.kgPerUnit / perUnit;
  const typed = row.read('weight', undefined, (text) => weightOf(text, ofRowUnit, writing));
  const kgPerUnit = !row.has('weight') || typed === ofRowUnit ? was.kgPerUnit : typed && typed * perUnit;
  const facts = {
    ...rest,
    ...(kgPerUnit === undefined ? {} : { kgPerUnit }),
    breaks: row.has('price breaks')
      ? row.read('price breaks', [], (text) => breaksOf(text, was.breaks, writing))
      : was.breaks,
  };
  // What it has no column for, and what it leaves as it is, was said elsewhere.
  for (const { field, message } of buyingFaults(facts)) {
    const column = COLUMNS[field];
    if (column !== undefined && facts[field] !== was[field]) row.wrong(column, message);
  }
  return facts;
};

/** The weight of one of the row's unit, in the yard's units, and the price breaks, as they are read again. */
export const buyingCells = (
  buying: MaterialBuying | undefined,
  writing: Pick<BuyingWriting, 'unit' | 'dialect'>,
): Cell[] => {
  const { unit } = writing;
  const kg = buying?.kgPerUnit;
  return [
    kg === undefined ? null : inRowUnit(kg / unit.perUnit, massUnit(unit.system)),
    buying && buying.breaks.length > 0 ? breaksText(buying.breaks, writing) : null,
  ];
};

/** The rows of all that is said of buying, with those of some materials as they are now. */
export const buyingRows = (
  held: StoreRows['materialBuyings'],
  now: ReadonlyMap<string, MaterialBuying>,
): StoreRows['materialBuyings'] => {
  const all = new Map(held.map(({ material, facts }) => [material, facts]));
  for (const [material, facts] of now) all.set(material, facts);
  const says = ({ breaks, ...facts }: MaterialBuying) => breaks.length > 0 || Object.keys(facts).length > 0;
  return [...all].flatMap(([material, facts]) => (says(facts) ? [{ material, facts }] : []));
};
