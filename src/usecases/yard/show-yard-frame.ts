import { guessesOfYard } from '../../../db/stores/figure-store.ts';
import { habitsOfYard } from '../../../db/stores/habits-store.ts';
import { unitsOfYard } from '../../../db/stores/units-store.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import { currentPlan } from '../plan/make-plan.ts';

/** What every section of the yard needs to be shown: the data, how it is written, and which figures are guesses. */
export const showYardFrame = async (context: UseCaseContext) => {
  const { yard, plan } = await currentPlan(context);
  const written = await context.database.read(async (tx) => ({
    system: await unitsOfYard(tx),
    habits: await habitsOfYard(tx),
    guesses: await guessesOfYard(tx),
  }));
  return { yard, plan, yardName: yard.yard.name, today: today(yard.yard.timeZone, context.now), ...written };
};
export type YardFrame = Awaited<ReturnType<typeof showYardFrame>>;
