import { unitsOfYard } from '../../../db/stores/units-store.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import type { PageHead } from '../core/page-parts.ts';
import { currentPlan } from '../plan/make-plan.ts';
import { sparesPouredIn } from '../plan/spares-of-plan.ts';
import { watersOfYard } from '../yard/mix-water.ts';
import { type EveningFacts, eveningFacts } from './evening-facts.ts';
import { sessionForWall } from './session-for-wall.ts';

/** What is got ready for the next session in which something is mixed, on a sheet of paper. */
export interface EveningModel extends PageHead {
  /** Null: no session has anything to do. */
  evening: EveningFacts | null;
}

/** The evening before the next session in which something is mixed. */
export const showEvening = async (context: UseCaseContext): Promise<EveningModel> => {
  const { plan, yard } = await currentPlan(context);
  const shown = await context.database.read(async (tx) => ({
    system: await unitsOfYard(tx),
    waters: await watersOfYard(tx),
  }));
  const session = sessionForWall(plan, yard);
  const spares = session ? await sparesPouredIn(context, { plan, yard }, session) : [];
  return {
    yardName: yard.yard.name,
    today: today(yard.yard.timeZone, context.now),
    evening: session && eveningFacts(plan, yard, session, { ...shown, spares }),
  };
};
