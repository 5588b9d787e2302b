import type { StoredFinished } from '../../../db/stores/finished-store.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { goodsOfLines, linesLeft } from '../../engine/book/goods.ts';
import type { FromFinished } from '../../engine/book/work-done.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { done, type Outcome, refuse } from '../core/context.ts';
import { customersByOrder } from '../core/customers-by-order.ts';

/** A piece that may go into an order, by its mark. */
export interface PieceToPack {
  /** By which the form names it. */
  id: number;
  casting: string;
  piece: string;
  mould: string;
  filledAt: string;
  /** By the plan it goes into it. */
  taken: boolean;
  /** Another customer it was set aside for; null: nobody else. */
  asideFor: string | null;
}

/** Finished pieces at their places, as the store has them. */
type Stood = readonly StoredFinished[];

const wantedBy = (yard: YardFile, id: string): ReadonlyMap<string, number> => {
  const order = yard.orders.find((one) => one.id === id);
  return order ? goodsOfLines(linesLeft(order), yard).pieces : new Map();
};

const isFit = ({ readyAt }: StoredFinished, yard: YardFile): boolean =>
  readyAt === null || minuteOf(readyAt) <= minuteOf(yard.yard.now);

/**
 * The pieces an order may be packed of just now, each with a known mark, those by the plan first; none where the plan has
 * others for it as well, or not all of them stand there yet.
 */
export const piecesToPack = (stood: Stood, yard: YardFile, plan: PlanFile, id: string): PieceToPack[] => {
  const wanted = wantedBy(yard, id);
  const given = plan.orders.find((order) => order.id === id)?.fromFinished ?? [];
  const takenAt = new Set(given.map(({ finished }) => finished));
  const { instantText } = calendarOf(yard.yard.timeZone);
  const customers = customersByOrder(yard);
  const pieces = stood.flatMap((row, place): PieceToPack[] => {
    const { mould, filledAt, casting, count } = row;
    if (mould === null || filledAt === null || count !== 1 || !wanted.get(casting) || !isFit(row, yard)) return [];
    const piece = yard.castings.find((one) => one.id === casting)?.name ?? casting;
    const mark = { mould, filledAt: instantText(minuteOf(filledAt)) };
    const asideFor = row.order === null || row.order === id ? null : (customers.get(row.order) ?? `order ${row.order}`);
    return [{ id: row.id, casting, piece, ...mark, taken: takenAt.has(place), asideFor }];
  });
  const isCovered = [...wanted].every(
    ([casting, count]) => pieces.filter((one) => one.taken && one.casting === casting).length === count,
  );
  return isCovered ? pieces.sort((a, b) => Number(b.taken) - Number(a.taken)) : [];
};

/** The pieces that were taken, by the numbers a form names them with; refused where they are not what the order is of. */
export const piecesTicked = (
  stood: Stood,
  yard: YardFile,
  id: string,
  ids: readonly number[],
): Outcome<readonly FromFinished[]> => {
  const places = ids.map((one) => stood.findIndex((row) => row.id === one && isFit(row, yard)));
  if (places.includes(-1))
    return refuse('pieces', 'One of these pieces is not there for it any more. Look again; nothing was changed.');
  for (const [casting, count] of wantedBy(yard, id)) {
    const ticked = places.filter((place) => stood[place]!.casting === casting).length;
    const name = yard.castings.find((one) => one.id === casting)?.name ?? casting;
    if (ticked !== count) return refuse('pieces', `It takes ${count} of ${name}, and ${ticked} are ticked.`);
  }
  return done(places.map((finished) => ({ finished, count: 1 })));
};
