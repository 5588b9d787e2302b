import type { StoredOrder } from '../../../db/stores/order-store.ts';
import { type PlanOrder, spellsOf } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import { done, type Outcome, refuse } from '../core/context.ts';
import { packingName } from '../plan/late-steps.ts';

/** What of an order a step of Today packs. */
export interface PackingOfStep {
  /** When it is planned; null where it is not. */
  packStart: string | null;
  /** Of a spell with others after it; null where all that is left is packed. */
  minutes: number | null;
}

/** What a form says of it. */
interface PackingTold {
  step?: string | null;
  /** For how long, where that is not as planned. */
  minutes?: number | null;
}

/**
 * What of an order a step packs, by its name: a spell, of one that takes several sessions, or else all of the minutes that are
 * left. Refused where the plan has no such spell any more: it is recorded already, or planned for another time.
 */
export const packingOfStep = (
  planned: PlanOrder | undefined,
  { packedMinutes }: StoredOrder,
  { step, minutes: told = null }: PackingTold,
  left: number,
): Outcome<PackingOfStep> => {
  const spells = planned ? spellsOf(planned) : [];
  if (!step || !planned || (packedMinutes === null && spells.length < 2))
    return done({ packStart: spells[0]?.packStart ?? null, minutes: null });
  const spell = spells.find(({ packStart }) => packingName(planned.id, packStart) === step);
  if (!spell) return refuse('order', 'That part of its packing is no longer planned then. Nothing was changed.');
  const { packStart, packEnd } = spell;
  const minutes = told ?? (spells.length < 2 ? left : minuteOf(packEnd) - minuteOf(packStart));
  return done({ packStart, minutes: minutes < left ? minutes : null });
};
