import { typedFiguresOf } from '../../../db/stores/figure-store.ts';
import { materialsInOrder, onTheirWay } from '../../../db/stores/material-store.ts';
import type { UseCaseContext } from '../core/context.ts';
import { currentPlan } from '../plan/make-plan.ts';
import { measuresOf } from '../typed/measures.ts';
import type { BuyingModel } from './buying-facts.ts';
import { buyingModel } from './buying-model.ts';
import { arrivalsThatKeep } from './keeping-facts.ts';
import { materialUsesYielding } from './material-uses.ts';
import { buyingKnown, tripsAhead } from './trips-ahead.ts';

/** What to buy by when and for whom, what is on its way, and what is in the yard. */
export const showBuying = async (context: UseCaseContext): Promise<BuyingModel> => {
  const current = await currentPlan(context);
  const { goods, materials, measures, typed, arrivals, known } = await context.database.read(async (tx) => ({
    goods: await onTheirWay(tx),
    materials: await materialsInOrder(tx),
    measures: await measuresOf(tx),
    typed: await typedFiguresOf(tx, 'material'),
    arrivals: await arrivalsThatKeep(tx, current.yard),
    known: await buyingKnown(tx),
  }));
  const notes = new Map(
    materials.flatMap(({ id, openedNote }): [string, string][] => (openedNote ? [[id, openedNote]] : [])),
  );
  const uses = await materialUsesYielding(current.yard, current.plan);
  const planned = await tripsAhead(context, current);
  return buyingModel(current, { now: context.now, goods, notes, measures, typed, arrivals, known }, uses, planned);
};
