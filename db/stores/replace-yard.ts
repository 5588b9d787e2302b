import type { YardFile } from '../../shared/yard-file.ts';
import { castingCuts, castingMaterials, castings } from '../tables/casting.ts';
import { castingSizes } from '../tables/casting-size.ts';
import { customers } from '../tables/customer.ts';
import { keptCastings, keptKits } from '../tables/kept-ready.ts';
import { kitCuts, kitParts, kitPieces, kits } from '../tables/kit.ts';
import { kitSizes } from '../tables/kit-size.ts';
import { incomings, materials } from '../tables/material.ts';
import { mixes, mixMaterials } from '../tables/mix.ts';
import { mixWaters } from '../tables/mix-water.ts';
import { mixWetCures } from '../tables/mix-wet-cure.ts';
import { kitPrices, orderMoney, orderPayments, yardCosts } from '../tables/money.ts';
import { finishedPieces, mouldMakes, moulds, piecesInMould } from '../tables/mould.ts';
import { offcuts } from '../tables/offcut.ts';
import { orderLines, orders } from '../tables/order.ts';
import { piecesToMend } from '../tables/piece-to-mend.ts';
import { stockEntries } from '../tables/stock-entry.ts';
import { materialBuyings, suppliers } from '../tables/supplier.ts';
import { temperatureSteps, weatherDays } from '../tables/temperature.ts';
import { closedDays, extraWindows, workWindows } from '../tables/work.ts';
import { workRecords } from '../tables/work-record.ts';
import { yards } from '../tables/yard.ts';
import type { Tx } from '../transaction.ts';
import { dropAllFigures } from './figure-store.ts';
import { setDemo } from './habits-store.ts';
import { offcutRowsOf } from './offcut-store.ts';
import { insertAll } from './rows.ts';
import { lotsWanted } from './stock-rows.ts';
import { settleStock } from './store-rows.ts';
import { rowOfDays } from './supplier-store.ts';
import { weatherHours, weatherRows } from './temperature-store.ts';
import { fixedHours, isEmpty } from './yard-store.ts';

/** What refers comes before what it refers to. */
const REFERRING_FIRST = [
  ...[
    workRecords,
    piecesToMend,
    finishedPieces,
    piecesInMould,
    orderPayments,
    orderMoney,
    orderLines,
    orders,
    customers,
    kitSizes,
    keptKits,
    kitPrices,
    kitPieces,
    kitParts,
    kitCuts,
    kits,
  ],
  ...[
    mouldMakes,
    moulds,
    castingSizes,
    keptCastings,
    castingMaterials,
    castingCuts,
    castings,
    mixWaters,
    mixWetCures,
    mixMaterials,
    mixes,
  ],
  ...[
    incomings,
    stockEntries,
    offcuts,
    materialBuyings,
    suppliers,
    materials,
    temperatureSteps,
    weatherDays,
    extraWindows,
    closedDays,
    workWindows,
    yardCosts,
    yards,
  ],
];

const inOrder = <T extends object>(entries: readonly T[]) => entries.map((entry, position) => ({ ...entry, position }));

/** The entries of a list inside each owner, each with its owner and its place. */
const inside = <O, E extends object>(owners: readonly O[], list: (owner: O) => readonly E[]) =>
  owners.flatMap((owner) => inOrder(list(owner)).map((entry) => ({ owner, entry })));

const insertWork = async (
  tx: Tx,
  { yard, keep, work, closed, extra, temperatures, weather }: YardFile,
  fixed: number | null,
) => {
  await tx.insert(yards).values({
    ...yard,
    ...weatherHours(weather),
    id: 1,
    keep: keep ?? null,
    ...(fixed === null ? {} : { fixedHours: fixed }),
  });
  await insertAll(tx, workWindows, inOrder(work));
  await insertAll(tx, closedDays, inOrder(closed.map((date) => ({ date }))));
  await insertAll(tx, extraWindows, inOrder(extra));
  await insertAll(tx, temperatureSteps, inOrder(temperatures));
  await insertAll(tx, weatherDays, inOrder(weatherRows(weather?.days ?? [])));
};

const insertMaterials = async (tx: Tx, file: YardFile) => {
  await insertAll(tx, materials, inOrder(file.materials));
  await insertAll(tx, offcuts, offcutRowsOf(file.materials));
  await settleStock(tx, file.yard.now, { lots: lotsWanted(file.materials) });
  await insertAll(tx, incomings, inOrder(file.incoming));
  await insertAll(tx, suppliers, (file.suppliers ?? []).map(rowOfDays));
  await insertAll(tx, mixes, inOrder(file.mixes));
  await insertAll(
    tx,
    mixWetCures,
    file.mixes.flatMap(({ id, wetCure }) => (wetCure ? [{ mix: id, ...wetCure }] : [])),
  );
  const perBag = inside(file.mixes, (mix) => mix.perBag);
  await insertAll(
    tx,
    mixMaterials,
    perBag.map(({ owner, entry }) => ({ ...entry, mix: owner.id })),
  );
};

const insertCastings = async (tx: Tx, file: YardFile) => {
  await insertAll(tx, castings, inOrder(file.castings));
  const perPiece = inside(file.castings, (casting) => casting.perPiece);
  await insertAll(
    tx,
    castingMaterials,
    perPiece.map(({ owner, entry }) => ({ ...entry, casting: owner.id })),
  );
  const cuts = inside(file.castings, (casting) => casting.cuts);
  await insertAll(
    tx,
    castingCuts,
    cuts.map(({ owner, entry }) => ({ ...entry, casting: owner.id })),
  );
  await insertAll(tx, moulds, inOrder(file.moulds));
  const makes = inside(file.moulds, (mould) => mould.makes);
  await insertAll(
    tx,
    mouldMakes,
    makes.map(({ owner, entry }) => ({ ...entry, mould: owner.id })),
  );
};

const insertKits = async (tx: Tx, file: YardFile) => {
  await insertAll(tx, kits, inOrder(file.kits));
  const ofKit = <E extends object>({ owner, entry }: { owner: { id: string }; entry: E }) => ({
    ...entry,
    kit: owner.id,
  });
  await insertAll(tx, kitPieces, inside(file.kits, (kit) => kit.pieces).map(ofKit));
  await insertAll(tx, kitParts, inside(file.kits, (kit) => kit.parts).map(ofKit));
  await insertAll(tx, kitCuts, inside(file.kits, (kit) => kit.cuts).map(ofKit));
};

const insertOrders = async (tx: Tx, file: YardFile) => {
  const names = [...new Set(file.orders.flatMap(({ customer }) => (customer === undefined ? [] : [customer])))];
  await insertAll(
    tx,
    customers,
    names.map((name, index) => ({ id: index + 1, name })),
  );
  const rows = inOrder(file.orders).map(
    ({ id, customer, due, wanted, notBefore, weight, packedMinutes, position }) => ({
      id,
      position,
      customerId: customer === undefined ? null : names.indexOf(customer) + 1,
      promisedOn: due ?? null,
      firstPromisedOn: due ?? null,
      wantedOn: wanted ?? null,
      notBefore: notBefore ?? null,
      status: 'open' as const,
      weight,
      packedMinutes: packedMinutes ?? null,
    }),
  );
  await insertAll(tx, orders, rows);
  const lines = inside(file.orders, (order) => order.lines);
  await insertAll(
    tx,
    orderLines,
    lines.map(({ owner, entry }) => ({ ...entry, order: owner.id })),
  );
};

/**
 * Puts a yard file in place of everything the yard holds. What only the store knows of it (notes, phones, guesses) is gone
 * then; the yard's habits stay, and so does how far ahead its sessions are fixed.
 */
export const replaceYard = async (tx: Tx, file: YardFile): Promise<void> => {
  const fixed = (await isEmpty(tx)) ? null : await fixedHours(tx);
  for (const table of REFERRING_FIRST) await tx.delete(table);
  await dropAllFigures(tx);
  await setDemo(tx, false);
  await insertWork(tx, file, fixed);
  await insertMaterials(tx, file);
  await insertCastings(tx, file);
  await insertKits(tx, file);
  await insertOrders(tx, file);
  await insertAll(tx, finishedPieces, inOrder(file.finished));
  await insertAll(tx, piecesInMould, inOrder(file.inMould));
};
