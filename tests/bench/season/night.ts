import { audit } from '../../contract/audit-plan.mjs';
import { type Season, settle } from './season.ts';
import { completeBy, poursBetween } from './standing.ts';
import { exportedYard } from './yard-export.ts';

const DAY_MINUTES = 1440;

/**
 * An order that is complete already is complete at the minute at which the plan was made. By a yard that is exported some
 * hours later that minute has passed, which is no fault of the plan.
 */
const isOfComplete = (fault: string, complete: ReadonlySet<string>): boolean =>
  [...complete].some((id) => fault === `R11 order ${id}: complete before its last piece`);

/** The plan as it stands in the evening against the yard as it is exported then: faults by the independent check. */
export const auditNight = async (season: Season): Promise<void> => {
  const { tally, standing, visitor } = season;
  if (!standing) return;
  const complete = completeBy(standing, season.clock.minute);
  const faults = audit(await exportedYard(visitor), standing.plan).faults.filter(
    (fault) => !isOfComplete(fault, complete),
  );
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
