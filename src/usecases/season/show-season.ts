import { changesThatMoved } from '../../../db/stores/change-store.ts';
import { pricesOfOrders } from '../../../db/stores/money-store.ts';
import { handedOverBetween, type StoredOrder } from '../../../db/stores/order-store.ts';
import { stockBetween } from '../../../db/stores/stock-lines.ts';
import { firstRecordAt, workRecordsBetween } from '../../../db/stores/work-record-store.ts';
import { type DayNumber, dateOfDay, dayNumber, minuteOf } from '../../../shared/time.ts';
import type { WorkRecord } from '../../../shared/work-record.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { measuredTimes } from '../../engine/begin/measured-times.ts';
import { isRetired } from '../../engine/book/mould-state.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { goodsPerPiece } from '../../engine/season/goods-per-piece.ts';
import { type Made, type MadeOf, piecesMade, type ScrapReason } from '../../engine/season/pieces-made.ts';
import { type PromisesKept, promisesKept } from '../../engine/season/promises-kept.ts';
import { type WeekBeside, weeksBeside } from '../../engine/season/weeks-beside.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import { keptForDay } from '../core/kept-for-day.ts';
import type { PageHead } from '../core/page-parts.ts';
import { yieldThread } from '../core/yield-thread.ts';
import { type ContentsLine, contentsOf, type Offer, offersOf } from '../orders/order-contents.ts';
import { currentPlan } from '../plan/make-plan.ts';
import { measuresOf, shownAmount } from '../typed/measures.ts';
import { type MeasuredFacts, namedIn } from '../yard/show-measured.ts';
import { type HeldUp, heldUpOf } from './held-up.ts';

/** Pieces of one casting or mould, by its name. */
export interface MadeFacts extends MadeOf {
  name: string;
}

/** A material beside its recipe, a piece of what it goes into, in the unit that is shown. */
interface GoodsFacts {
  name: string;
  unit: string;
  pieces: number;
  recipe: number;
  taken: number;
  counted: number;
  /** In all. */
  spoiled: number;
}

/** What was sold: orders that went out, and what they were asked for; parts of one order count as one. */
interface SoldFacts extends PromisesKept {
  orders: number;
  lines: readonly ContentsLine[];
  /** In the yard's money; of so many orders nothing was asked. */
  asked: number;
  notAsked: number;
  currency: string;
}

/** A year of the yard, as far as it was recorded. */
export interface SeasonModel extends PageHead {
  year: number;
  /** Years that there is something of, beside this one. */
  others: readonly number[];
  isOver: boolean;
  made: Made;
  castings: readonly MadeFacts[];
  reasons: readonly ScrapReason[];
  thrownAway: number;
  weeks: readonly WeekBeside[];
  sold: SoldFacts;
  times: readonly Pick<MeasuredFacts, 'what' | 'name' | 'count' | 'figure' | 'minutes'>[];
  goods: readonly GoodsFacts[];
  heldUp: readonly HeldUp[];
  /** The one that gave most good pieces first; those of today that gave none come last. */
  moulds: readonly MadeFacts[];
}

interface Year {
  year: number;
  from: DayNumber;
  to: DayNumber;
}

const yearOf = (year: number): Year => ({
  year,
  from: dayNumber(`${year}-01-01`),
  to: dayNumber(`${year}-12-31`),
});

/** Weeks of the year before lie so far back at the most. */
const BACK = 52 * 7 + 7;

/** Instants are compared as they are written: a day more on either side is read, and left out by the yard's own clock. */
const around = (from: DayNumber, to: DayNumber) => ({ from: dateOfDay(from - 1), until: dateOfDay(to + 2) });

const read = ({ database }: UseCaseContext, { from, to }: Year) =>
  database.read(async (tx) => {
    const orders = await handedOverBetween(tx, { from: dateOfDay(from), until: dateOfDay(to + 1) });
    return {
      records: await workRecordsBetween(tx, around(from - BACK, to)),
      orders,
      prices: await pricesOfOrders(
        tx,
        orders.map(({ id }) => id),
      ),
      book: await stockBetween(tx, around(from, to)),
      changes: await changesThatMoved(tx, around(from, to)),
      measures: await measuresOf(tx),
    };
  });

const soldOf = (
  orders: readonly StoredOrder[],
  prices: ReadonlyMap<string, number>,
  { offers, currency }: { offers: readonly Offer[]; currency: string },
): SoldFacts => {
  const lines = new Map<string, ContentsLine>();
  for (const line of orders.flatMap((order) => contentsOf(order.lines, offers)))
    lines.set(line.what, { ...line, quantity: line.quantity + (lines.get(line.what)?.quantity ?? 0) });
  const whole = orders.filter(({ partOf }) => partOf === null);
  const dated = whole.flatMap(({ handedOverOn, promisedOn, firstPromisedOn }) =>
    handedOverOn === null ? [] : [{ handedOverOn, promisedOn, firstPromisedOn }],
  );
  return {
    ...promisesKept(dated),
    orders: whole.length,
    lines: [...lines.values()].sort((a, b) => b.quantity - a.quantity),
    asked: whole.reduce((sum, { id }) => sum + (prices.get(id) ?? 0), 0),
    notAsked: whole.filter(({ id }) => !prices.has(id)).length,
    currency,
  };
};

const mouldFacts = (moulds: readonly MadeOf[], yard: YardFile): MadeFacts[] => {
  const known = new Set(moulds.map(({ id }) => id));
  const idle = yard.moulds.filter((mould) => !known.has(mould.id) && !isRetired(mould));
  return [
    ...moulds.map((one) => ({ ...one, name: one.id })),
    ...idle.map(({ id }) => ({ id, name: id, out: 0, good: 0, mend: 0, scrap: 0 })),
  ];
};

const timesOf = (records: readonly WorkRecord[], yard: YardFile): SeasonModel['times'] =>
  measuredTimes(records, yard).map(({ what, id, count, figure, minutes }) => ({
    ...{ what, count, figure, minutes },
    name: namedIn(yard, what).find((one) => one.id === id)?.name ?? id,
  }));

interface OnRecord {
  records: readonly WorkRecord[];
  orders: readonly StoredOrder[];
}

const isAnything = ({ records, orders }: OnRecord, year: number): boolean =>
  orders.length > 0 || records.some(({ at }) => at.startsWith(`${year}-`));

/** Of the year that is asked for, or of the one to show, all that was recorded; the other is not read. */
const recordedYear = async (
  context: UseCaseContext,
  { asked, thisYear, first }: { asked: number | null; thisYear: number; first: number },
) => {
  const isAsked = asked !== null && asked >= first && asked <= thisYear;
  const shown = yearOf(isAsked ? asked : thisYear);
  const found = await read(context, shown);
  if (isAsked || first === thisYear || isAnything(found, thisYear)) return { shown, read: found };
  // Nothing of this year is on record yet.
  const before = yearOf(thisYear - 1);
  return { shown: before, read: await read(context, before) };
};

const kept = keptForDay<SeasonModel>();

/** What was made, sold and kept in a year, beside the year before; kept until anything is stored, or the day is over. */
export const showSeason = async (context: UseCaseContext, asked: number | null): Promise<SeasonModel> => {
  const { plan, yard } = await currentPlan(context);
  const day = today(yard.yard.timeZone, context.now);
  return kept({ plan, yard, day, which: String(asked) }, () => seasonOf(context, yard, { asked, day }));
};

const seasonOf = async (
  context: UseCaseContext,
  yard: YardFile,
  { asked, day }: { asked: number | null; day: string },
): Promise<SeasonModel> => {
  const { dayOf } = calendarOf(yard.yard.timeZone);
  const thisYear = Number(day.slice(0, 4));
  const firstAt = await context.database.read(firstRecordAt);
  const first = Math.min(thisYear, Number((firstAt ?? day).slice(0, 4)));
  const { shown, read: found } = await recordedYear(context, { asked, thisYear, first });
  const { records, orders, prices, book, changes, measures } = found;
  await yieldThread();
  const isIn = ({ at }: { at: string }): boolean => {
    const on = dayOf(minuteOf(at));
    return on >= shown.from && on <= shown.to;
  };
  const own = records.filter(isIn);
  const { all, castings, moulds, reasons, thrownAway } = piecesMade(own);
  const out = records.flatMap((one) => (one.kind === 'stripped' ? [dayOf(minuteOf(one.at))] : []));
  const { system, weekStart, currency } = measures;
  await yieldThread();
  const perPiece = goodsPerPiece(own, book.filter(isIn), yard).map(
    ({ material, pieces, recipe, taken, counted, spoiled }): GoodsFacts => {
      const each = (quantity: number) => shownAmount({ unit: material.unit, quantity }, system).quantity;
      const { unit } = shownAmount({ unit: material.unit, quantity: 1 }, system);
      return {
        ...{ name: material.name, unit, pieces, spoiled: each(spoiled) },
        ...{ recipe: each(recipe / pieces), taken: each(taken / pieces), counted: each(counted / pieces) },
      };
    },
  );
  await yieldThread();
  const times = timesOf(own, yard);
  await yieldThread();
  return {
    ...{ yardName: yard.yard.name, today: day, year: shown.year, isOver: shown.year < thisYear },
    others: Array.from({ length: thisYear - first + 1 }, (_, n) => first + n).filter((year) => year !== shown.year),
    ...{ made: all, reasons, thrownAway },
    castings: castings.map((one) => ({
      ...{ ...one, name: yard.castings.find(({ id }) => id === one.id)?.name ?? one.id },
    })),
    weeks: weeksBeside(out, { from: shown.from, to: Math.min(shown.to, dayNumber(day)), weekStart }),
    sold: soldOf(orders, prices, { offers: offersOf(yard, system), currency }),
    times,
    goods: perPiece,
    heldUp: heldUpOf(changes.filter(isIn)),
    moulds: mouldFacts(moulds, yard),
  };
};
