import { guessesOfYard } from '../../../db/stores/figure-store.ts';
import { orderById } from '../../../db/stores/order-store.ts';
import { piecesToMend } from '../../../db/stores/piece-to-mend-store.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import { drawKits } from '../kits/draw-kits.ts';
import { currentPlan } from '../plan/make-plan.ts';
import { restsOn } from '../plan/rests-on.ts';
import { showMeasures } from '../typed/measures.ts';
import { orderFacts, ordersSeen } from './order-facts.ts';
import { toMendOfLines } from './to-mend-facts.ts';

/** How an order comes together by the plan: pieces taken from the yard, pieces poured by day, and its packing. */
const comingTogether = (id: string, plan: PlanFile, yard: YardFile) => {
  const calendar = calendarOf(yard.yard.timeZone);
  const names = new Map(yard.castings.map((casting) => [casting.id, casting.name]));
  const poured = new Map<string, Map<string, number>>();
  for (const pour of plan.pours.filter(({ order }) => order === id)) {
    const day = calendar.instantText(minuteOf(pour.fillStart)).slice(0, 10);
    const pieces = poured.get(day) ?? poured.set(day, new Map()).get(day)!;
    const name = names.get(pour.casting) ?? pour.casting;
    pieces.set(name, (pieces.get(name) ?? 0) + 1);
  }
  const fromYard = plan.orders.find((order) => order.id === id)?.fromFinished ?? [];
  return {
    fromYard: fromYard.reduce((sum, { count }) => sum + count, 0),
    inMoulds: plan.strips.filter(({ order }) => order === id).map(({ mould }) => mould),
    poured: [...poured]
      .sort(([a], [b]) => a.localeCompare(b))
      .map(([date, pieces]) => ({ date, pieces: [...pieces].map(([name, count]) => ({ name, count })) })),
  };
};

/** One order with its date by today's plan; null when there is none of that number. */
export const showOrder = async (context: UseCaseContext, id: string) => {
  const { plan, yard } = await currentPlan(context);
  const stored = await context.database.read((tx) => orderById(tx, id));
  if (!stored) return null;
  const { system } = await showMeasures(context);
  return {
    yardName: yard.yard.name,
    today: today(yard.yard.timeZone, context.now),
    order: orderFacts(stored, ordersSeen({ plan, yard }, system, context.now)),
    together: comingTogether(id, plan, yard),
    /** Such pieces as it needs, kept aside: they do not count for it. */
    toMend: toMendOfLines(await context.database.read(piecesToMend), stored.lines, yard),
    /** What of it is still guessed; nothing where it is packed. */
    restsOn: stored.packedAt ? [] : restsOn(yard, stored.lines, await context.database.read(guessesOfYard)),
    drawings: await drawKits(context, yard, stored.lines),
  };
};
