import { type PackSpell, type PlanFile, type PlanPour, spellsOf } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { apply } from '../../../src/engine/book/apply.ts';
import { goodsOfBatch, goodsOfOrder, linesLeft, type Taken } from '../../../src/engine/book/goods.ts';
import { sticksFor } from '../../../src/engine/book/sticks-cut.ts';
import { takeFromStock } from '../../../src/engine/book/stock-taken.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import { needs } from '../../contract/audit-plan.mjs';

/** A yard to be worked on in place. */
export type WorkedYard = YardFile;

interface Task {
  at: string;
  /** Earlier tasks of one minute come first: a strip before the set-up that follows it. */
  rank: number;
  act(): void;
}

export interface DayDone {
  /** Orders that are packed, or complete without packing. */
  completed: string[];
}

const mouldOf = (yard: WorkedYard, id: string): YardFile['moulds'][number] => yard.moulds.find((one) => one.id === id)!;

/** What a batch or an order is made of leaves the stock, cut from the sticks that the plan names for it. */
const take = (yard: WorkedYard, taken: Taken, plan: PlanFile, takenFor: string): void => {
  yard.materials = apply(
    yard,
    takeFromStock(yard, taken, sticksFor(plan.sticks, takenFor), { at: yard.yard.now }),
  ).materials;
};

const mix = (yard: WorkedYard, plan: PlanFile, { id, mix: mixId, bags }: PlanFile['batches'][number]): void => {
  const castings = plan.pours.filter(({ batch }) => batch === id).map(({ casting }) => casting);
  take(yard, goodsOfBatch(yard.mixes.find((one) => one.id === mixId)!, bags, castings, yard), plan, id);
};

const pour = (yard: WorkedYard, { mould: id, casting, fillEnd, order }: PlanPour): void => {
  const mould = mouldOf(yard, id);
  Object.assign(mould, { condition: 'ready', prepped: false, setFor: casting });
  Reflect.deleteProperty(mould, 'dryFrom');
  mould.turnsSinceOil += 1;
  yard.inMould.push({ mould: id, casting, filledAt: fillEnd, ...(order === undefined ? {} : { order }) });
};

/** Coated: it dries from then on. */
const coat = (yard: WorkedYard, { mould: id, end }: PlanFile['coats'][number]): void => {
  const mould = mouldOf(yard, id);
  const dryFrom = calendarOf(yard.yard.timeZone).instantText(minuteOf(end) + mould.oilDryMinutes);
  Object.assign(mould, { condition: 'ready', prepped: false, turnsSinceOil: 0, dryFrom });
};

/** Set up for a later day: in its own session the set-up goes with the pour. */
const prepare = (yard: WorkedYard, { mould: id, casting }: PlanPour): void => {
  const mould = mouldOf(yard, id);
  Object.assign(mould, { condition: 'ready', prepped: true, setFor: casting });
};

const strip = (yard: WorkedYard, id: string, readyAt: string, order: string | undefined, isReject: boolean): void => {
  const piece = yard.inMould.find(({ mould }) => mould === id);
  if (!piece) return;
  yard.inMould.splice(yard.inMould.indexOf(piece), 1);
  const mould = mouldOf(yard, id);
  Object.assign(mould, { condition: mould.condition === 'damaged' ? 'damaged' : 'dirty', prepped: false });
  if (!isReject)
    yard.finished.push({ casting: piece.casting, count: 1, readyAt, ...(order === undefined ? {} : { order }) });
};

/** Finished pieces of a casting that an order may have, those set aside for it first. */
const lotsFor = (yard: WorkedYard, id: string, casting: string): YardFile['finished'] =>
  [id, undefined].flatMap((order) => yard.finished.filter((lot) => lot.casting === casting && lot.order === order));

const takePieces = (lots: YardFile['finished'], count: number): void => {
  let left = count;
  for (const lot of lots) {
    const taken = Math.min(left, lot.count);
    lot.count -= taken;
    left -= taken;
  }
};

/** Takes the pieces of an order out of the yard, and what it is packed with; nothing where a piece is missing. */
const takeGoods = (yard: WorkedYard, plan: PlanFile, order: YardFile['orders'][number]): boolean => {
  const { id } = order;
  const wanted = [...needs(yard, order).pieces].map(([casting, count]) => ({
    lots: lotsFor(yard, id, casting),
    count,
  }));
  if (wanted.some(({ lots, count }) => lots.reduce((sum, lot) => sum + lot.count, 0) < count)) return false;
  for (const { lots, count } of wanted) takePieces(lots, count);
  take(yard, goodsOfOrder(linesLeft(order), yard), plan, id);
  yard.finished = yard.finished.filter(({ count }) => count > 0);
  for (const lot of yard.finished) if (lot.order === id) delete lot.order;
  return true;
};

/** A spell of packing that is not the last: all that the order is made of leaves the yard with the first. */
const packSome = (yard: WorkedYard, plan: PlanFile, id: string, { packStart, packEnd }: PackSpell): void => {
  const order = yard.orders.find((one) => one.id === id);
  if (!order || !takeGoods(yard, plan, order)) return;
  order.packedMinutes = (order.packedMinutes ?? 0) + minuteOf(packEnd) - minuteOf(packStart);
};

const complete = (yard: WorkedYard, plan: PlanFile, id: string): boolean => {
  const order = yard.orders.find((one) => one.id === id);
  if (!order || !takeGoods(yard, plan, order)) return false;
  yard.orders = yard.orders.filter((one) => one !== order);
  return true;
};

/**
 * Does what a plan has for a stretch of time, to the moulds, pieces, orders and materials of a yard.
 * Tells which orders were completed. An order whose pieces are not there (one was scrapped) is left open.
 */
export const doByPlan = (
  yard: WorkedYard,
  plan: PlanFile,
  [from, to]: readonly [string, string],
  isReject: (mould: string) => boolean,
): DayDone => {
  const done: DayDone = { completed: [] };
  const ends = (at: string): boolean => Date.parse(at) > Date.parse(from) && Date.parse(at) <= Date.parse(to);
  const strips = [...plan.strips, ...plan.pours].map(
    ({ mould, order, stripEnd, pieceReadyAt }): Task => ({
      ...{ at: stripEnd, rank: 0 },
      act: () => strip(yard, mould, pieceReadyAt, order, isReject(mould)),
    }),
  );
  const coats = plan.coats.map((one): Task => ({ at: one.end, rank: 1, act: () => coat(yard, one) }));
  const preps = plan.pours
    .filter(({ fillEnd, prepStart, prepEnd }) => !ends(fillEnd) && prepStart !== prepEnd)
    .map((one): Task => ({ at: one.prepEnd, rank: 2, act: () => prepare(yard, one) }));
  const batches = plan.batches.map((one): Task => ({ at: one.start, rank: 0, act: () => mix(yard, plan, one) }));
  const pours = plan.pours.map((one): Task => ({ at: one.fillEnd, rank: 3, act: () => pour(yard, one) }));
  const orders = plan.orders.map(
    ({ id, completesAt }): Task => ({
      ...{ at: completesAt, rank: 4 },
      act: () => complete(yard, plan, id) && done.completed.push(id),
    }),
  );
  const spells = plan.orders.flatMap((order) =>
    spellsOf(order)
      .slice(0, -1)
      .map((spell): Task => ({ at: spell.packEnd, rank: 4, act: () => packSome(yard, plan, order.id, spell) })),
  );
  for (const { act } of [...strips, ...coats, ...preps, ...batches, ...pours, ...spells, ...orders]
    .filter(({ at }) => ends(at))
    .sort((a, b) => Date.parse(a.at) - Date.parse(b.at) || a.rank - b.rank))
    act();
  return done;
};
