import type { PlanFile, PlanOrder, PlanPour, PlanStrip } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { mixesOf } from './fixed-plan.ts';
import type { FixedMix } from './fixed-pours.ts';
import { graceNow } from './grace.ts';

/** A planned order that is packed. */
export type PlannedPack = PlanOrder & { packStart: string; packEnd: string };

/** What a plan has to do, and when. */
export type PlanOfWork = Pick<PlanFile, 'batches' | 'pours' | 'strips' | 'orders'>;

/** What was planned for a session that is over, is not written down yet, and may still be. */
export interface LateWork {
  mixes: FixedMix[];
  /** Of pieces that were in their moulds before, and of those of the mixes. */
  strips: (PlanStrip | PlanPour)[];
  packs: PlannedPack[];
  /** Set up for a pour of a later session. */
  preps: PlanPour[];
}

const isPack = (order: PlanOrder): order is PlannedPack => order.packStart !== undefined && order.packEnd !== undefined;

/**
 * The late work of a yard at its now, by the plan that holds: what is written down leaves the plan, so what it still has
 * for the session is not. Null outside the hour after a session, and when all is written down.
 */
export const lateWork = (yard: YardFile, plan: PlanOfWork): LateWork | null => {
  const session = graceNow(yard)?.session;
  if (!session) return null;
  const isLate = (instant: string): boolean => {
    const minute = minuteOf(instant);
    return minute >= session.start && minute < session.end;
  };
  const mixes = mixesOf(plan, ({ start }) => isLate(start));
  const poured = new Set(mixes.flatMap(({ pours }) => pours.map(({ id }) => id)));
  const late: LateWork = {
    mixes,
    strips: [
      ...plan.strips.filter(({ stripStart }) => isLate(stripStart)),
      ...plan.pours.filter(({ id, stripStart }) => poured.has(id) && isLate(stripStart)),
    ],
    packs: plan.orders.filter(isPack).filter(({ packStart }) => isLate(packStart)),
    preps: plan.pours.filter(
      ({ id, prepStart, prepEnd }) => !poured.has(id) && prepStart !== prepEnd && isLate(prepStart),
    ),
  };
  return Object.values(late).some(({ length }) => length > 0) ? late : null;
};
