import type { StoredPlan } from '../../../db/stores/plan-store.ts';
import type { PlanOfWork } from '../../../shared/late-work.ts';
import { type PlanCoat, type PlanOrder, type PlanPour, type PlanStrip, spellsOf } from '../../../shared/plan.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { mixesOf } from './fixed-plan.ts';
import type { FixedMix } from './fixed-pours.ts';
import { pourMinutes } from './pour-minutes.ts';

/** A planned order that is packed, at these times; where it has `packs`, that is one of its spells. */
export type PlannedPack = PlanOrder & { packStart: string; packEnd: string };

/** What was planned for a time that is over, and is not recorded. */
export interface LateWork {
  mixes: FixedMix[];
  /** Of pieces that were in their moulds before, and of those of the mixes. */
  strips: (PlanStrip | PlanPour)[];
  packs: PlannedPack[];
  /** Set up for a pour that is still to come. */
  preps: PlanPour[];
  coats: PlanCoat[];
}

/** No work at all. */
export const NO_WORK: PlanOfWork = { batches: [], pours: [], coats: [], strips: [], orders: [] };

/** Each packing of an order: several where it takes several sessions. */
const packsOf = (order: PlanOrder): PlannedPack[] => spellsOf(order).map((spell) => ({ ...order, ...spell }));

const joined = new WeakMap<StoredPlan, PlanOfWork>();

/** All that a stored plan has to do, with what is over and has no place in it any more. */
export const workOfPlan = (stored: StoredPlan): PlanOfWork => {
  const { plan, unanswered: aside } = stored;
  if (!aside) return plan;
  const known = joined.get(stored);
  if (known) return known;
  const work = {
    batches: [...aside.batches, ...plan.batches],
    pours: [...aside.pours, ...plan.pours],
    coats: [...(aside.coats ?? []), ...plan.coats],
    strips: [...aside.strips, ...plan.strips],
    orders: [...plan.orders, ...aside.orders],
    sticks: plan.sticks,
    ...(plan.sheets ? { sheets: plan.sheets } : {}),
  };
  joined.set(stored, work);
  return work;
};

/** What has no place in a plan that is carried on: set-ups and coats that stood alone are over once their mould is poured. */
export const asideLeft = ({ unanswered: aside }: StoredPlan, left: PlanOfWork | null): PlanOfWork | null => {
  if (!aside || !left) return aside;
  const batches = new Set(aside.batches.map(({ id }) => id));
  const pours = aside.pours.filter((pour) => batches.has(pour.batch) || left.pours.includes(pour));
  const coats = aside.coats?.filter((coat) => left.coats?.includes(coat)) ?? [];
  return batches.size + pours.length + coats.length === 0 ? null : { ...aside, pours, coats };
};

const filled = (mixes: readonly FixedMix[]): FixedMix[] => mixes.filter(({ pours }) => pours.length > 0);

/** Work whose time is as asked for, none where there is none: these batches, and strips of what others have filled. */
const workAt = (
  { work, now, isIt }: { work: PlanOfWork; now: Minute; isIt: (start: string, end: string) => boolean },
  mixes: FixedMix[],
  full: readonly FixedMix[],
): LateWork | null => {
  const own = new Set(mixes.flatMap(({ pours }) => pours));
  const prepStarts = pourMinutes(work, 'prepStart');
  const isStrip = ({ stripStart, stripEnd }: PlanStrip): boolean => isIt(stripStart, stripEnd);
  const found: LateWork = {
    mixes,
    strips: [...work.strips.filter(isStrip), ...full.flatMap(({ pours }) => pours).filter(isStrip)],
    packs: work.orders.flatMap(packsOf).filter(({ packStart, packEnd }) => isIt(packStart, packEnd)),
    preps: work.pours.filter(
      (pour, place) =>
        prepStarts[place]! <= now &&
        !own.has(pour) &&
        pour.prepStart !== pour.prepEnd &&
        isIt(pour.prepStart, pour.prepEnd),
    ),
    coats: (work.coats ?? []).filter(({ start, end }) => isIt(start, end)),
  };
  return Object.values(found).some(({ length }) => length > 0) ? found : null;
};

/**
 * The late work of a yard at its now, of all sessions back: what is recorded leaves the plan, so what it still has of a
 * time that is over is not. Null when all is recorded.
 */
export const lateWork = (yard: YardFile, work: PlanOfWork): LateWork | null => {
  const now = minuteOf(yard.yard.now);
  const isOver = (end: string): boolean => minuteOf(end) <= now;
  const mixes = filled(mixesOf(work, ({ end }) => isOver(end)));
  return workAt({ work, now, isIt: (_start, end) => isOver(end) }, mixes, mixes);
};

/** The work of a plan that is under way at a yard's now: begun by then and not over yet. Null where there is none. */
export const workUnderWay = (yard: YardFile, work: PlanOfWork): LateWork | null => {
  const now = minuteOf(yard.yard.now);
  const isUnderWay = (start: string, end: string): boolean => minuteOf(start) <= now && minuteOf(end) > now;
  const mixes = filled(mixesOf(work, ({ start, end }) => isUnderWay(start, end)));
  const over = filled(mixesOf(work, ({ end }) => minuteOf(end) <= now));
  return workAt({ work, now, isIt: isUnderWay }, mixes, over);
};

/** The work of a plan that begins at a minute, whenever that is. Null where there is none. */
export const workBeginning = (work: PlanOfWork, minute: Minute): LateWork | null => {
  const isIt = (start: string): boolean => minuteOf(start) === minute;
  const all = filled(mixesOf(work));
  return workAt(
    { work, now: minute, isIt },
    all.filter(({ batch }) => isIt(batch.start)),
    all,
  );
};
