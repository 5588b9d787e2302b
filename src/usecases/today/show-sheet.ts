import { recentHeads } from '../../../db/stores/change-store.ts';
import { unitsOfYard } from '../../../db/stores/units-store.ts';
import { dateOfDay, minuteOf } from '../../../shared/time.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import type { PageHead } from '../core/page-parts.ts';
import { lateSteps } from '../plan/late-steps.ts';
import { workOfPlan, workUnderWay } from '../plan/late-work.ts';
import { currentPlan } from '../plan/make-plan.ts';
import { type SparePoured, sparesPouredIn } from '../plan/spares-of-plan.ts';
import { watersOfYard } from '../yard/mix-water.ts';
import { doneOnDay } from './done-today.ts';
import { hoursFacts, type SessionHours } from './hours-facts.ts';
import { lastMixes } from './last-mix.ts';
import { sessionForWall } from './session-for-wall.ts';
import type { SessionStep } from './session-step.ts';
import { sessionSteps } from './session-steps.ts';
import { CHANGES_READ } from './show-today.ts';
import type { DoneFacts, LastMix } from './today-model.ts';
import { DONE_KINDS } from './work-change-kinds.ts';

/** A session for a sheet of paper. */
export interface SheetModel extends PageHead {
  /** Null: none has anything to do. */
  session: SessionHours | null;
  steps: readonly SessionStep[];
  lastMix: readonly LastMix[];
  /** Pieces of it that no order asked for. */
  spares: readonly SparePoured[];
  /** The names of the steps that are under way. */
  begun: readonly string[];
  /** What was recorded of it so far. */
  done: readonly DoneFacts[];
}

/** The next session for a sheet of paper; its session is null where none has anything to do. */
export const showSheet = async (context: UseCaseContext): Promise<SheetModel> => {
  const { plan, yard, cached } = await currentPlan(context);
  const written = await context.database.read(async (tx) => ({
    system: await unitsOfYard(tx),
    waters: await watersOfYard(tx),
    changes: await recentHeads(tx, CHANGES_READ),
  }));
  const calendar = calendarOf(yard.yard.timeZone);
  const session = sessionForWall(plan, yard);
  const mixes = session ? lastMixes(plan, yard, session) : [];
  const underWay = workUnderWay(yard, workOfPlan(cached.stored));
  const day = today(yard.yard.timeZone, context.now);
  const isToday = session !== null && dateOfDay(session.day) === day;
  return {
    yardName: yard.yard.name,
    today: day,
    session: session && hoursFacts(session, calendar),
    steps: session ? sessionSteps(plan, yard, session, written) : [],
    lastMix: mixes.map(({ mix, at }) => ({ mix, at: calendar.instantText(at) })),
    spares: session ? await sparesPouredIn(context, { plan, yard }, session) : [],
    begun: underWay ? lateSteps(underWay).map(({ name }) => name) : [],
    done: isToday ? doneOnDay(written.changes, minuteOf(context.now), calendar, DONE_KINDS) : [],
  };
};
