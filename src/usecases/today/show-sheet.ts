import { unitsOfYard } from '../../../db/stores/units-store.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { type Session, sessionsOf } from '../../engine/calendar/sessions.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import type { PageHead } from '../core/page-parts.ts';
import { currentPlan } from '../plan/make-plan.ts';
import { watersOfYard } from '../yard/mix-water.ts';
import { lastMixes } from './last-mix.ts';
import type { SessionStep } from './session-step.ts';
import { sessionSteps } from './session-steps.ts';
import { sessionToShow } from './session-to-show.ts';
import { hoursFacts } from './show-today.ts';
import type { LastMix, SessionHours } from './today-model.ts';

/** The next session in which something is mixed, which is what hangs on a wall; else the next that has anything to do. */
const sessionForWall = (plan: PlanFile, yard: YardFile): Session | null => {
  const starts = plan.batches.map(({ start }) => minuteOf(start));
  const mixing = sessionsOf(yard, calendarOf(yard.yard.timeZone)).find(({ start, end }) =>
    starts.some((at) => at >= start && at < end),
  );
  return mixing ?? sessionToShow(plan, yard).session;
};

/** A session for a sheet of paper. */
export interface SheetModel extends PageHead {
  /** Null: none has anything to do. */
  session: SessionHours | null;
  steps: readonly SessionStep[];
  lastMix: readonly LastMix[];
}

/** The next session for a sheet of paper; its session is null where none has anything to do. */
export const showSheet = async (context: UseCaseContext): Promise<SheetModel> => {
  const { plan, yard } = await currentPlan(context);
  const written = await context.database.read(async (tx) => ({
    system: await unitsOfYard(tx),
    waters: await watersOfYard(tx),
  }));
  const calendar = calendarOf(yard.yard.timeZone);
  const session = sessionForWall(plan, yard);
  const mixes = session ? lastMixes(plan, yard, session) : [];
  return {
    yardName: yard.yard.name,
    today: today(yard.yard.timeZone, context.now),
    session: session && hoursFacts(session, calendar),
    steps: session ? sessionSteps(plan, yard, session, written) : [],
    lastMix: mixes.map(({ mix, at }) => ({ mix, at: calendar.instantText(at) })),
  };
};
