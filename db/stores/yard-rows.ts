import type { FigureOf } from '../../shared/figure.ts';
import { partsInUse } from '../../shared/mould-part.ts';
import { isFetched } from '../../shared/supplier.ts';
import type { YardFile } from '../../shared/yard-file.ts';
import { yards } from '../tables/yard.ts';
import { offcutRowsOf } from './offcut-store.ts';
import { orderRows, type SaidOtherwise } from './order-rows.ts';
import { filled, inside, listed, placedById } from './row-lists.ts';
import type { StoreRows, WantedRows } from './store-rows.ts';
import { rowOfDays } from './supplier-store.ts';
import { weatherHours, weatherRows } from './temperature-store.ts';

const yardRow = (held: StoreRows, { yard, keep, weather }: YardFile) => {
  const { now: _now, ...facts } = filled(yard, 'rackSpaces', 'handoverDays', 'promiseOdds');
  const fixedHours = held.yards[0]?.fixedHours ?? Number(yards.fixedHours.default);
  return [{ ...facts, ...weatherHours(weather), id: 1, keep: keep ?? null, fixedHours }];
};

const said = <R extends { id: number; position: number }>({ id: _id, position: _position, ...row }: R) => row;

const workRows = (held: StoreRows, { work, closed, extra, temperatures, weather }: YardFile) => ({
  workWindows: listed(
    work.map((window) => filled(window, 'until')),
    held.workWindows,
    said,
    {},
  ),
  closedDays: listed(
    closed.map((date) => ({ date })),
    held.closedDays,
    said,
    {},
  ),
  extraWindows: listed(extra, held.extraWindows, said, {}),
  temperatureSteps: listed(temperatures, held.temperatureSteps, said, {}),
  weatherDays: listed(weatherRows(weather?.days ?? []), held.weatherDays, said, {}),
});

/** What a file says of the days of suppliers; all else that is known of them stays. */
const supplierRows = (
  { suppliers: held }: StoreRows,
  { suppliers = [], materials }: YardFile,
): StoreRows['suppliers'] => {
  const said = new Map(suppliers.map((one) => [one.name, one]));
  const known = held.map(({ name, facts }) => {
    const days = said.get(name);
    if (!days) return { name, facts };
    const { opens: _opens, delivers: _delivers, fetched, ...rest } = facts;
    const { name: _name, fetched: saidFetched = false, ...own } = days;
    // What nobody said stays unsaid, where it comes to the same.
    const isSame = isFetched({ name, ...(fetched === undefined ? {} : { fetched }) }, materials) === saidFetched;
    const either = isSame ? fetched : saidFetched;
    return { name, facts: { ...rest, ...own, ...(either === undefined ? {} : { fetched: either }) } };
  });
  const isKnown = new Set(held.map(({ name }) => name));
  return [...known, ...suppliers.filter(({ name }) => !isKnown.has(name)).map(rowOfDays)];
};

const materialRows = (held: StoreRows, file: YardFile) => {
  const { materials, incoming } = file;
  const before = new Map(held.materials.map((row) => [row.id, row]));
  const arrived = held.incomings.filter(
    (row) => row.arrivedOn !== null && materials.some(({ id }) => id === row.material),
  );
  const coming = listed(
    incoming,
    held.incomings.filter(({ arrivedOn }) => arrivedOn === null),
    ({ material, quantity, on }) => ({ material, quantity, on }),
    { firstOn: null, boughtOn: null, price: null, arrivedOn: null, useBy: null },
  );
  const rows = materials.map(({ offcuts: _offcuts, lots: _lots, ...one }) => ({
    ...filled(
      one,
      'leadDays',
      'unitPrice',
      'supplier',
      'shelfLifeDays',
      'stickMm',
      'opensBy',
      'openedDays',
      'sheetWidthMm',
      'sheetLengthMm',
      'meshMm',
      'rests',
      'inSheets',
    ),
    openedNote: before.get(one.id)?.openedNote ?? null,
    // An amount that is another one was counted.
    shortBy: before.get(one.id)?.onHand === one.onHand ? (before.get(one.id)?.shortBy ?? 0) : 0,
  }));
  return {
    materials: placedById(rows, held.materials),
    offcuts: offcutRowsOf(materials),
    stockEntries: held.stockEntries,
    incomings: [...arrived, ...coming],
    suppliers: supplierRows(held, file),
    materialBuyings: held.materialBuyings.filter((row) => materials.some(({ id }) => id === row.material)),
  };
};

/** How mixes are kept wet: as the file says, and for as many hours as before, without minutes, where it says nothing. */
const wetCureRows = (held: StoreRows, mixes: YardFile['mixes']) => {
  const before = new Map(held.mixWetCures.map((cure) => [cure.mix, cure.hours]));
  return mixes.flatMap(({ id, wetCure }) => {
    const hours = wetCure?.hours ?? before.get(id);
    return hours === undefined ? [] : [{ mix: id, hours, minutes: wetCure?.minutes ?? 0 }];
  });
};

const mixRows = (held: StoreRows, { mixes }: YardFile) => ({
  mixes: placedById(
    mixes.map(({ perBag: _perBag, wetCure: _wet, ...mix }) => filled(mix, 'minCelsius', 'maxCelsius')),
    held.mixes,
  ),
  mixMaterials: inside(mixes, 'mix', ({ perBag }) => perBag),
  mixWaters: held.mixWaters.filter((water) => mixes.some(({ id }) => id === water.mix)),
  mixWetCures: wetCureRows(held, mixes),
});

const castingRows = (held: StoreRows, { castings }: YardFile) => ({
  castings: placedById(
    castings.map(({ perPiece: _perPiece, cuts: _cuts, ...casting }) => filled(casting, 'sheets')),
    held.castings,
  ),
  castingMaterials: inside(castings, 'casting', ({ perPiece }) => perPiece),
  castingCuts: inside(castings, 'casting', ({ cuts }) => cuts),
  castingSizes: held.castingSizes.filter((size) => castings.some(({ id }) => id === size.casting)),
  keptCastings: held.keptCastings.filter((kept) => castings.some(({ id }) => id === kept.casting)),
  workRecords: held.workRecords,
  piecesToMend: held.piecesToMend.filter((piece) => castings.some(({ id }) => id === piece.casting)),
});

const mouldRows = (held: StoreRows, { moulds }: YardFile) => {
  const before = new Map(held.moulds.map((row) => [row.id, row]));
  const rows = moulds.map(({ makes: _makes, ...mould }) => {
    const was = before.get(mould.id);
    const out = mould.condition === 'damaged' || mould.condition === 'retired';
    return {
      ...filled(mould, 'repairedOn', 'oilEveryTurns', 'dryFrom'),
      note: was?.note ?? null,
      damageNote: (out && was?.damageNote) || null,
      emptiedAt: was?.emptiedAt ?? null,
      serviceEveryTurns: was?.serviceEveryTurns ?? null,
      cost: was?.cost ?? null,
      costTurns: was?.costTurns ?? null,
      parts: (out ? was?.parts : was?.parts && partsInUse(was.parts)) ?? null,
    };
  });
  return { moulds: placedById(rows, held.moulds), mouldMakes: inside(moulds, 'mould', ({ makes }) => makes) };
};

const kitRows = (held: StoreRows, { kits }: YardFile) => ({
  kits: placedById(
    kits.map(({ pieces: _pieces, parts: _parts, cuts: _cuts, ...kit }) => kit),
    held.kits,
  ),
  kitPieces: inside(kits, 'kit', ({ pieces }) => pieces),
  kitParts: inside(kits, 'kit', ({ parts }) => parts),
  kitCuts: inside(kits, 'kit', ({ cuts }) => cuts),
  kitSizes: held.kitSizes.filter((size) => kits.some(({ id }) => id === size.kit)),
  keptKits: held.keptKits.filter((kept) => kits.some(({ id }) => id === kept.kit)),
  kitPrices: held.kitPrices.filter((price) => kits.some(({ id }) => id === price.kit)),
});

const TABLE_OF = { mix: 'mixes', casting: 'castings', mould: 'moulds', material: 'materials', kit: 'kits' } as const;

const rowOf = (rows: Pick<StoreRows, 'yards' | (typeof TABLE_OF)[keyof typeof TABLE_OF]>, { kind, id }: FigureOf) => {
  const row = kind === 'yard' ? rows.yards[0] : rows[TABLE_OF[kind]].find((one) => one.id === id);
  return row as Record<string, unknown> | undefined;
};

/** Figures stay with what they belong to; a guess that the file puts another figure for is none any more. */
const figureRows = (held: StoreRows, wanted: Parameters<typeof rowOf>[0]) => ({
  guesses: held.guesses.filter((guess) => {
    const [was, is] = [rowOf(held, guess), rowOf(wanted, guess)];
    return is !== undefined && was?.[guess.figure] === is[guess.figure];
  }),
  typedFigures: held.typedFigures.filter((typed) => rowOf(wanted, typed) !== undefined),
});

/**
 * The rows of a yard as a yard file has it. What only the store knows (phones, notes, sizes, water, guesses, what was typed,
 * past orders, what arrived, habits, money) stays with the ids that stay.
 */
export const yardRows = (held: StoreRows, file: YardFile, how: SaidOtherwise = { oneDate: false }): WantedRows => {
  const named = {
    ...{ yards: yardRow(held, file), ...materialRows(held, file), ...mixRows(held, file) },
    ...{ ...castingRows(held, file), ...mouldRows(held, file), ...kitRows(held, file) },
  };
  const asked = orderRows(held, file, how);
  const isThere = new Set(asked.orders.map(({ id }) => id));
  return {
    ...workRows(held, file),
    ...named,
    ...asked,
    yardCosts: held.yardCosts,
    orderMoney: held.orderMoney.filter(({ order }) => isThere.has(order)),
    orderPayments: held.orderPayments.filter(({ order }) => isThere.has(order)),
    yardUnits: held.yardUnits,
    yardHabits: held.yardHabits.map((habits) => ({ ...habits, demo: false })),
    ...figureRows(held, named as never),
  };
};
