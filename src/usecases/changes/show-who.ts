import { namesLately } from '../../../db/stores/change-store.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import type { PageHead } from '../core/page-parts.ts';
import { currentPlan } from '../plan/make-plan.ts';

const SHOWN = 6;

/** Who may be at a device. */
export interface WhoModel extends PageHead {
  /** Names that something was done under, the latest first. */
  names: readonly string[];
}

/** The names that something was done under lately, to choose from. */
export const showWho = async (context: UseCaseContext): Promise<WhoModel> => {
  const { yard } = await currentPlan(context);
  return {
    ...{ yardName: yard.yard.name, today: today(yard.yard.timeZone, context.now) },
    names: await context.database.read((tx) => namesLately(tx, SHOWN)),
  };
};
