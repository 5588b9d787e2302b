import type { Archive } from '../../../shared/archive.ts';
import type { WorkRecord } from '../../../shared/work-record.ts';
import { needs } from '../../contract/audit-plan.mjs';
import { dayOnPage } from '../season/clock.ts';
import { cutsAddUp, type SticksThere } from './cuts-add-up.ts';
import { type SheetSize, type SheetsThere, sheetsAddUp } from './sheets-add-up.ts';
import { bagsKey, offcutKey, restKey, type StockLog } from './stock-log.ts';

/** A form that was answered as done: what it said, and the yard as it was saved to a file before and after it. */
export interface Acknowledged {
  action: string;
  fields: Readonly<Record<string, string>>;
  before: Archive;
  after: Archive;
  today: string;
  now: string;
}

/** Goods on their way as the page of Buying showed them, by their number. */
export type OnTheWay = ReadonlyMap<string, { material: string; quantity: number }>;

type Material = Archive['materials'][number];
type Casting = Archive['castings'][number];
type Cut = { material: string; lengthMm: number; count: number };

const materialOf = ({ before }: Acknowledged, id: string): Material => before.materials.find((one) => one.id === id)!;

/** A day as it was typed or as a page filled it in. */
const dayTyped = (text: string, today: string): string =>
  /^\d{4}-\d\d-\d\d$/.test(text) ? text : dayOnPage(text, today)!;

/** The bags of what came: what the form says, or as long as it keeps where the form has no field for it. */
const bagsCame = (material: Material, { fields, today }: Acknowledged) => {
  if (material.stickMm !== undefined || material.inSheets) return {};
  if (fields.useBy !== undefined) return fields.useBy === '' ? {} : { useBy: dayTyped(fields.useBy, today) };
  if (material.shelfLifeDays === undefined) return {};
  return { useBy: new Date(Date.parse(today) + material.shelfLifeDays * 86_400_000).toISOString().slice(0, 10) };
};

const arrived = (log: StockLog, act: Acknowledged, onTheWay: OnTheWay): void => {
  const goods = onTheWay.get(act.fields.goods!)!;
  const came = act.fields.came === undefined ? goods.quantity : Number(act.fields.came);
  log.add(bagsKey(goods.material, bagsCame(materialOf(act, goods.material), act)), came);
};

/** `offcuts` absent: nobody looked at them; empty: there are none. */
const counted = (log: StockLog, id: string, amount: string, offcuts: string | undefined): void => {
  if (amount !== '') log.count(id, Number(amount));
  if (offcuts === undefined) return;
  for (const key of [...log.amounts.keys()]) if (key.startsWith(`${id} | offcut`)) log.amounts.delete(key);
  for (const part of offcuts.split(', ')) {
    const [width, length] = [...part.matchAll(/([\d.]+) mm/g)].map(([, mm]) => Number(mm));
    const count = Number(/^(\d+) of/.exec(part)?.[1] ?? 1);
    if (width === undefined) continue;
    log.add(length === undefined ? offcutKey(id, width) : restKey(id, width, length), count);
  }
};

const walked = (log: StockLog, { fields }: Acknowledged): void => {
  for (const [key, id] of Object.entries(fields)) {
    const row = /^(stock\d+)Id$/.exec(key)?.[1];
    if (row) counted(log, id, fields[row] ?? '', fields[`${row}Offcuts`] || undefined);
  }
};

const spoiled = (log: StockLog, { fields }: Acknowledged): void => {
  const { material = '', useBy, openedAt } = fields;
  log.amounts.delete(bagsKey(material, { useBy: useBy || undefined, openedAt: openedAt || undefined }));
};

type Batch = Extract<WorkRecord, { kind: 'poured' | 'thrown away' }>;

const batchBegun = (record: Batch): string => {
  if (record.kind === 'poured' && record.mixedFrom) return record.mixedFrom;
  // What went off before it was poured was mixed by the time at which that was said.
  const instants = [...record.pours.map(({ filledAt }) => filledAt), record.at];
  return instants.sort((a, b) => Date.parse(a) - Date.parse(b))[0]!;
};

/** What a batch takes by its recipe, and the pieces that things are cut for. */
const mixed = (log: StockLog, record: Batch, act: Acknowledged): Casting[] => {
  const { mixes, castings, materials } = act.before;
  const at = batchBegun(record);
  const take = (id: string, quantity: number) => log.use(materialOf(act, id), quantity, at);
  for (const { material, quantity } of mixes.find(({ id }) => id === record.mix)!.perBag)
    take(material, quantity * record.bags);
  if (record.kind === 'thrown away' && act.fields.moulds === 'set up') return [];
  const pieces = record.pours.map(({ casting }) => castings.find(({ id }) => id === casting)!);
  for (const { perPiece } of pieces) for (const { material, quantity } of perPiece) take(material, quantity);
  if (record.kind === 'poured')
    for (const { id, buying } of materials) {
      const used = (buying?.perBatch ?? 0) + (buying?.perTurn ?? 0) * record.pours.length;
      if (used > 0) log.lose(id, used);
    }
  return pieces;
};

type Order = Archive['orders'][number];

/** Whether all that an order is made of has left the stock. */
const hasTaken = (order: Order | undefined): boolean =>
  order !== undefined &&
  (order.status === 'handed over' || order.packedAt !== undefined || order.packedMinutes !== undefined);

const contents = ({ before }: Acknowledged, { lines }: Order) => needs(before, { id: 'it', weight: 1, lines });

const takenFor = (log: StockLog, order: Order, act: Acknowledged): Cut[] => {
  const { parts, cuts } = contents(act, order);
  for (const [id, quantity] of parts) log.use(materialOf(act, id), quantity, order.packedAt ?? act.now);
  return cuts;
};

const givenBack = (log: StockLog, order: Order, act: Acknowledged): void => {
  const { parts, cuts } = contents(act, order);
  for (const [id, quantity] of parts) log.add(bagsKey(id, {}), quantity);
  for (const { material, lengthMm, count } of cuts) if (count > 0) log.add(offcutKey(material, lengthMm), count);
};

/** Orders that were packed or went out take what they are made of; those that came apart again give it back. */
const orders = (log: StockLog, act: Acknowledged): Cut[] =>
  act.after.orders.flatMap((order) => {
    const before = act.before.orders.find(({ id }) => id === order.id);
    if (hasTaken(order) === hasTaken(before)) return [];
    if (hasTaken(order)) return takenFor(log, order, act);
    givenBack(log, order, act);
    return [];
  });

const there = ({ onHand, offcuts = [] }: Material): SticksThere => ({
  whole: onHand,
  offcuts: new Map(offcuts.map(({ lengthMm, count }) => [lengthMm, count])),
});

const usableMm = ({ castings, kits }: Archive, id: string): number =>
  Math.min(
    ...[...castings, ...kits].flatMap(({ cuts }) =>
      cuts.filter(({ material, count }) => material === id && count > 0).map(({ lengthMm }) => lengthMm),
    ),
  );

/** Which stick a piece is cut from is the program's to choose; that all of it adds up is checked here. What does not, in words. */
const cutSticks = (log: StockLog, cuts: readonly Cut[], act: Acknowledged): string[] =>
  act.before.materials.flatMap((material) => {
    const pieces = new Map<number, number>();
    for (const { material: id, lengthMm, count } of cuts)
      if (id === material.id && count > 0) pieces.set(lengthMm, (pieces.get(lengthMm) ?? 0) + count);
    const { id, stickMm, kerfMm } = material;
    if (stickMm === undefined || pieces.size === 0) return [];
    const [before, after] = [there(material), there(act.after.materials.find((one) => one.id === id)!)];
    const figures = { stickMm, kerfMm, usableMm: usableMm(act.before, id) };
    log.add(bagsKey(id, {}), after.whole - before.whole);
    for (const length of new Set([...before.offcuts.keys(), ...after.offcuts.keys()]))
      log.add(offcutKey(id, length), (after.offcuts.get(length) ?? 0) - (before.offcuts.get(length) ?? 0));
    if (cutsAddUp(before, after, pieces, figures)) return [];
    return [`${id}: ${JSON.stringify([...pieces])} cannot be cut so that ${before.whole} become ${after.whole}`];
  });

const sheetsOf = ({ onHand, rests = [] }: Material): SheetsThere => ({
  whole: onHand,
  rests: rests.flatMap(({ count, ...size }) => Array.from({ length: count }, () => size)),
});

/** The same of pieces of sheets. */
const cutSheets = (log: StockLog, castings: readonly Casting[], act: Acknowledged): string[] =>
  act.before.materials.flatMap((material) => {
    const { id, inSheets, sheetWidthMm: widthMm = 0, sheetLengthMm: lengthMm = 0, meshMm = 1 } = material;
    const pieces = castings.flatMap(({ sheets = [] }) =>
      sheets.flatMap((cut): SheetSize[] => (cut.material === id ? Array.from({ length: cut.count }, () => cut) : [])),
    );
    if (!inSheets || pieces.length === 0) return [];
    const [before, after] = [sheetsOf(material), sheetsOf(act.after.materials.find((one) => one.id === id)!)];
    log.add(bagsKey(id, {}), after.whole - before.whole);
    for (const rest of before.rests) log.add(restKey(id, rest.widthMm, rest.lengthMm), -1);
    for (const rest of after.rests) log.add(restKey(id, rest.widthMm, rest.lengthMm), 1);
    if (sheetsAddUp(before, after, pieces, { widthMm, lengthMm, meshMm })) return [];
    return [
      `${id}: ${pieces.length} pieces cannot be cut so that ${JSON.stringify(before)} become ${JSON.stringify(after)}`,
    ];
  });

/**
 * Writes down what an acknowledged act did to the stock: what came, was counted or spoiled by what the form says, what was used
 * by the recipes of the work that is on record since. What is cut to more or less than there was is told, in words.
 */
export const writeDown = (log: StockLog, act: Acknowledged, onTheWay: OnTheWay): string[] => {
  const { action, fields } = act;
  if (action.endsWith('/arrived')) arrived(log, act, onTheWay);
  if (action === '/buying/spoiled') spoiled(log, act);
  if (action === '/buying/counted') counted(log, fields.material!, fields.counted!, fields.offcuts);
  if (action === '/count') walked(log, act);
  const since = (act.after.workDone ?? []).slice(act.before.workDone?.length ?? 0);
  const batches = since.filter((record) => record.kind === 'poured' || record.kind === 'thrown away');
  const castings = batches.flatMap((record) => mixed(log, record, act));
  const cuts = castings.flatMap((casting) => casting.cuts);
  return [...cutSticks(log, [...cuts, ...orders(log, act)], act), ...cutSheets(log, castings, act)];
};
