import type { PlanFile, PlanPour } from '../../../shared/plan.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';

/**
 * What becomes of a plan when work is written down that was done as it has it: the plan less that work, or null when it
 * was done otherwise, so that it has to be made anew. With every tap planned anew, tasks half done would begin again.
 */
export type CarryOn<T> = (plan: PlanFile, after: AfterWork, value: T) => PlanFile | null;

/** What is looked at of the data after the work: the finished pieces at their places. */
interface AfterWork {
  finished: readonly { count: number }[];
}

/** Done no more than this much sooner or later than planned: what follows still holds. */
const ON_TIME_MINUTES = 15;

const onTime = (planned: string, at: Minute): boolean => Math.abs(minuteOf(planned) - at) <= ON_TIME_MINUTES;

const byPrep = (a: PlanPour, b: PlanPour): number => minuteOf(a.prepStart) - minuteOf(b.prepStart);

/** A mould was made ready to pour, for what the plan has next for it. */
export const afterPrep =
  (mould: string, casting: string, now: Minute): CarryOn<unknown> =>
  (plan) => {
    const next = plan.pours.filter((pour) => pour.mould === mould).sort(byPrep)[0];
    const start = plan.batches.find(({ id }) => id === next?.batch)?.start;
    if (!next || start === undefined || next.casting !== casting || !onTime(next.prepEnd, now)) return null;
    const ready = { ...next, prepStart: start, prepEnd: start, oiled: false };
    return { ...plan, pours: plan.pours.map((pour) => (pour === next ? ready : pour)) };
  };

interface Poured {
  pours: readonly { mould: string; casting: string; order: string | null }[];
  bags: number;
  filled: Minute;
}

const namesOf = (pours: readonly { mould: string; casting: string; order?: string | null | undefined }[]): string =>
  JSON.stringify(pours.map(({ mould, casting, order }) => [mould, casting, order ?? null]).sort());

/** The pours of each batch of a plan. */
const poursByBatch = ({ pours }: PlanFile): ReadonlyMap<string, readonly PlanPour[]> => {
  const batches = new Map<string, PlanPour[]>();
  for (const pour of pours)
    batches
      .set(pour.batch, batches.get(pour.batch) ?? [])
      .get(pour.batch)!
      .push(pour);
  return batches;
};

/** A whole batch was poured: its pieces are in their moulds, its materials and lengths are taken. */
export const afterPour =
  ({ pours, bags, filled }: Poured): CarryOn<unknown> =>
  (plan) => {
    const planned = poursByBatch(plan);
    const poured = namesOf(pours);
    const isIt = (own: readonly PlanPour[]): boolean =>
      own.some(({ mould }) => mould === pours[0]?.mould) && namesOf(own) === poured;
    const batch = plan.batches.find(({ id }) => isIt(planned.get(id) ?? []));
    const own = (batch && planned.get(batch.id)) ?? [];
    const full = own.map(({ fillEnd }) => fillEnd).sort((a, b) => minuteOf(b) - minuteOf(a))[0];
    if (!batch || full === undefined || batch.bags !== bags || !onTime(full, filled)) return null;
    return {
      ...plan,
      batches: plan.batches.filter((one) => one !== batch),
      pours: plan.pours.filter((pour) => !own.includes(pour)),
      strips: [
        ...plan.strips,
        ...own.map(({ mould, order, stripStart, stripEnd, pieceReadyAt }) => ({
          ...{ mould, stripStart, stripEnd, pieceReadyAt },
          ...(order === undefined ? {} : { order }),
        })),
      ],
      sticks: plan.sticks
        .map((stick) => ({ ...stick, cuts: stick.cuts.filter((cut) => cut.for !== batch.id) }))
        .filter(({ cuts }) => cuts.length > 0),
      score: { ...plan.score, batches: plan.score.batches - 1, bags: plan.score.bags - batch.bags },
    };
  };

/** A good piece is out of its mould: the order it is for gets it from the yard, where it is the last entry. */
export const afterStrip =
  (mould: string, now: Minute): CarryOn<unknown> =>
  (plan, after) => {
    const strip = plan.strips.find((one) => one.mould === mould);
    if (!strip || !onTime(strip.stripEnd, now)) return null;
    const piece = { finished: after.finished.length - 1, count: 1 };
    return {
      ...plan,
      strips: plan.strips.filter((one) => one !== strip),
      orders: plan.orders.map((order) =>
        order.id === strip.order ? { ...order, fromFinished: [...order.fromFinished, piece] } : order,
      ),
    };
  };

/** Where finished pieces stand in the list before and after a change: by place before, the place after. */
export type Places = ReadonlyMap<number, number>;

/** An order is packed: nothing is left to do for it. Pieces planned for other orders have to be there still. */
export const afterPack =
  (id: string, now: Minute): CarryOn<{ places: Places }> =>
  (plan, after, { places }) => {
    const packed = plan.orders.find((order) => order.id === id);
    if (packed?.packEnd === undefined || !onTime(packed.packEnd, now)) return null;
    const taken = new Map<number, number>();
    const orders = plan.orders.map((order) => {
      if (order === packed) {
        const { packStart: _start, packEnd: _end, ...rest } = packed;
        return { ...rest, fromFinished: [] };
      }
      const fromFinished = order.fromFinished.map(({ finished, count }) => ({
        finished: places.get(finished) ?? -1,
        count,
      }));
      for (const { finished, count } of fromFinished) taken.set(finished, (taken.get(finished) ?? 0) + count);
      return { ...order, fromFinished };
    });
    if ([...taken].some(([finished, count]) => count > (after.finished[finished]?.count ?? 0))) return null;
    const sticks = plan.sticks
      .map((stick) => ({ ...stick, cuts: stick.cuts.filter((cut) => cut.for !== id) }))
      .filter(({ cuts }) => cuts.length > 0);
    return { ...plan, orders, sticks };
  };
