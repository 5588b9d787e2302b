import type { PlanFile } from '../../../shared/plan.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { audit } from '../../contract/audit-plan.mjs';
import { type Season, settle } from './season.ts';
import { completeBy, poursBetween, type Standing } from './standing.ts';
import { exportedYard } from './yard-export.ts';

const DAY_MINUTES = 1440;

/** What is left of a yard and its plan once some orders are taken out, and whether any were. */
interface Left {
  yard: YardFile;
  plan: PlanFile;
  isLess: boolean;
}

/** The score of a plan counts all its orders: with some taken out it is the sum over those left. */
const withOwnScore = ({ yard, plan }: Left): PlanFile => ({ ...plan, score: audit(yard, plan).score ?? plan.score });

/**
 * A yard and its plan without the orders that are complete already. The plan has them complete at the minute at which it
 * was made; by a yard of some hours later that minute has passed, which is no fault of the plan.
 */
const withoutComplete = (yard: YardFile, standing: Standing, minute: number): Left => {
  const complete = completeBy(standing, minute);
  const finished = yard.finished.map((pieces) => ({ ...pieces }));
  for (const order of standing.plan.orders.filter(({ id }) => complete.has(id)))
    for (const { finished: place, count } of order.fromFinished) {
      const pieces = finished[place];
      if (!pieces) continue;
      pieces.count -= count;
      if (pieces.order === order.id) delete pieces.order;
    }
  return {
    isLess: complete.size > 0,
    yard: { ...yard, finished, orders: yard.orders.filter(({ id }) => !complete.has(id)) },
    plan: { ...standing.plan, orders: standing.plan.orders.filter(({ id }) => !complete.has(id)) },
  };
};

/** The plan as it stands in the evening against the yard as it is exported then: faults by the independent check. */
export const auditNight = async (season: Season): Promise<void> => {
  const { tally, standing, visitor } = season;
  if (!standing) return;
  const left = withoutComplete(await exportedYard(visitor), standing, season.clock.minute);
  const { faults } = audit(left.yard, left.isLess ? withOwnScore(left) : left.plan);
  tally.audits += 1;
  tally.auditFaults += faults.length;
  for (const fault of faults) {
    const rule = /\bR\d+\b/.exec(fault)?.[0] ?? fault.slice(0, 40);
    tally.auditWords[rule] = (tally.auditWords[rule] ?? 0) + 1;
    season.log(`AUDIT ${fault}`);
  }
};

/** The pours of the day to come, as they stand in the evening. */
export interface Evening {
  pours: ReadonlySet<string>;
  from: number;
}

export const eveningPours = ({ standing, clock }: Season): Evening => ({
  from: clock.minute,
  pours: standing ? poursBetween(standing, clock.minute, clock.minute + DAY_MINUTES) : new Set(),
});

/** In the morning: how many pours of the day are others than they were in the evening, gone or new. */
export const countChangedPours = async (season: Season, evening: Evening | null): Promise<void> => {
  await season.visitor.page('/today');
  await settle(season, 'time went by');
  if (!evening || !season.standing) return;
  const now = poursBetween(season.standing, evening.from, evening.from + DAY_MINUTES);
  if (evening.pours.size + now.size === 0) return;
  season.tally.nights += 1;
  const changed = [...evening.pours].filter((pour) => !now.has(pour)).length;
  season.tally.changedPours += changed;
  if (changed > 0) season.log(`OVERNIGHT ${changed} of ${evening.pours.size} pours changed`);
};
