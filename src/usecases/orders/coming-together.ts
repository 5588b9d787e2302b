import type { PlanFile } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import type { Counted } from '../core/page-parts.ts';

/** How far the pieces of one casting are that an order needs. */
export interface PieceProgress {
  name: string;
  /** Fit to go out, by plan. */
  inYard: number;
  /** Out of the mould, and not fit to go out yet. */
  curing: number;
  inMoulds: number;
  toPour: number;
}

/** How an order comes together by the plan. */
export interface ComingTogether {
  progress: readonly PieceProgress[];
  /** Moulds with pieces in them that are for it. */
  inMoulds: readonly string[];
  /** What is poured for it, day by day. */
  poured: readonly { date: string; pieces: readonly Counted[] }[];
}

type Part = keyof Omit<PieceProgress, 'name'>;

/** In the order of the yard's castings, those with a piece alone. */
const progressOf = (id: string, plan: PlanFile, { castings, finished, inMould, yard }: YardFile): PieceProgress[] => {
  const parts = new Map<string, Record<Part, number>>();
  const count = (casting: string, part: Part, more: number) => {
    const counts = parts.get(casting) ?? { inYard: 0, curing: 0, inMoulds: 0, toPour: 0 };
    parts.set(casting, { ...counts, [part]: counts[part] + more });
  };
  for (const taken of plan.orders.find((order) => order.id === id)?.fromFinished ?? []) {
    const { casting, readyAt } = finished[taken.finished]!;
    const isFit = readyAt === undefined || minuteOf(readyAt) <= minuteOf(yard.now);
    count(casting, isFit ? 'inYard' : 'curing', taken.count);
  }
  const mouldsOfIt = new Set(plan.strips.filter(({ order }) => order === id).map(({ mould }) => mould));
  for (const { mould, casting } of inMould) if (mouldsOfIt.has(mould)) count(casting, 'inMoulds', 1);
  for (const { order, casting } of plan.pours) if (order === id) count(casting, 'toPour', 1);
  return castings.flatMap((casting) => {
    const counts = parts.get(casting.id);
    return counts ? [{ name: casting.name, ...counts }] : [];
  });
};

const pouredFor = (id: string, plan: PlanFile, yard: YardFile): ComingTogether['poured'] => {
  const calendar = calendarOf(yard.yard.timeZone);
  const names = new Map(yard.castings.map((casting) => [casting.id, casting.name]));
  const poured = new Map<string, Map<string, number>>();
  for (const pour of plan.pours.filter(({ order }) => order === id)) {
    const day = calendar.instantText(minuteOf(pour.fillStart)).slice(0, 10);
    const pieces = poured.get(day) ?? poured.set(day, new Map()).get(day)!;
    const name = names.get(pour.casting) ?? pour.casting;
    pieces.set(name, (pieces.get(name) ?? 0) + 1);
  }
  return [...poured]
    .sort(([a], [b]) => a.localeCompare(b))
    .map(([date, pieces]) => ({ date, pieces: [...pieces].map(([name, count]) => ({ name, count })) }));
};

/** Pieces in the yard, curing, in moulds and to pour for an order, and the days on which it is poured for. */
export const comingTogether = (id: string, plan: PlanFile, yard: YardFile): ComingTogether => ({
  progress: progressOf(id, plan, yard),
  inMoulds: plan.strips.filter(({ order }) => order === id).map(({ mould }) => mould),
  poured: pouredFor(id, plan, yard),
});
