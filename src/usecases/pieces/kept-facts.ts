import type { KeptLine } from '../../../db/stores/kept-ready-store.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { piecesOfKept } from '../plan/kept-ready.ts';

/** What is to stand ready of one kit or piece, and what of it does. */
export interface KeptFacts {
  /** As a form names it. */
  what: string;
  name: string;
  count: number;
  /** So many stand there, fit to go out, and are for nobody. */
  there: number;
  /** The date on which the last of them is fit to go out, by the plan; null: there is no time for it in the plan. */
  readyOn: string | null;
}

/** When each piece that is for nobody is fit to go out, by casting, the soonest first. */
const freePieces = (plan: PlanFile, yard: YardFile): Map<string, Minute[]> => {
  const now = minuteOf(yard.yard.now);
  const free = new Map<string, Minute[]>();
  const add = (casting: string, at: Minute) => free.set(casting, [...(free.get(casting) ?? []), at]);
  yard.finished.forEach(({ casting, count, readyAt, order }, place) => {
    if (order !== undefined) return;
    const dealt = plan.orders.flatMap(({ fromFinished = [] }) => fromFinished.filter((one) => one.finished === place));
    const left = count - dealt.reduce((sum, one) => sum + one.count, 0);
    for (let n = 0; n < left; n++) add(casting, readyAt === undefined ? now : Math.max(now, minuteOf(readyAt)));
  });
  for (const { mould, order, pieceReadyAt } of plan.strips) {
    const piece = yard.inMould.find((one) => one.mould === mould);
    if (piece && order === undefined && piece.order === undefined) add(piece.casting, minuteOf(pieceReadyAt));
  }
  for (const { casting, order, pieceReadyAt } of plan.pours)
    if (order === undefined) add(casting, minuteOf(pieceReadyAt));
  for (const times of free.values()) times.sort((a, b) => a - b);
  return free;
};

/** Takes the pieces of one kit; when they are all there, null where they are not to be. */
const takeOne = (free: Map<string, Minute[]>, pieces: readonly { casting: string; count: number }[]): Minute | null => {
  const taken = pieces.flatMap(({ casting, count }) => free.get(casting)?.splice(0, count) ?? []);
  const wanted = pieces.reduce((sum, { count }) => sum + count, 0);
  return taken.length < wanted ? null : Math.max(...taken);
};

/** What is to stand ready, each with what of it does and when the rest will. */
export const keptFacts = (lines: readonly KeptLine[], plan: PlanFile, yard: YardFile): KeptFacts[] => {
  const free = freePieces(plan, yard);
  const now = minuteOf(yard.yard.now);
  const { instantText } = calendarOf(yard.yard.timeZone);
  return lines.map((line) => {
    const [what, entry] =
      'kit' in line
        ? [`kit:${line.kit}`, yard.kits.find(({ id }) => id === line.kit)]
        : [`casting:${line.casting}`, yard.castings.find(({ id }) => id === line.casting)];
    const pieces = piecesOfKept([{ ...line, count: 1 }], yard);
    const times = Array.from({ length: line.count }, () => takeOne(free, pieces));
    const last = times.some((at) => at === null) ? null : Math.max(...(times as Minute[]));
    return {
      ...{ what, name: entry?.name ?? what, count: line.count },
      there: times.filter((at) => at !== null && at <= now).length,
      readyOn: last === null ? null : instantText(last).slice(0, 10),
    };
  });
};
