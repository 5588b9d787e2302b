import { type PlanFile, spellsOf } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import type { Session } from '../../engine/calendar/sessions.ts';
import type { SparePoured } from '../plan/spares-of-plan.ts';
import { cutList, type StickFacts } from './cut-list.ts';
import { hoursFacts, type SessionHours } from './hours-facts.ts';
import { type MeshFacts, meshList } from './mesh-list.ts';
import type { CoatStep, PrepStep, RecipeFacts, SessionStep } from './session-step.ts';
import { recipesOf, type Shown, sessionSteps } from './session-steps.ts';

/** What is got ready the evening before a session. */
export interface EveningFacts {
  session: SessionHours;
  sticks: readonly StickFacts[];
  /** How sheets and rolls are cut up. */
  meshes: readonly MeshFacts[];
  recipes: readonly RecipeFacts[];
  /** Moulds that can be coated now, and set up now: nothing is in them. */
  coats: readonly CoatStep[];
  preps: readonly PrepStep[];
  /** Pieces of the session that no order asked for, in case one of an order is not good. */
  spares: readonly SparePoured[];
  /** All of the session. */
  steps: readonly SessionStep[];
}

/** Ids of batches and orders that are mixed or packed in a session, and of those before it. */
const doneWhen = (plan: PlanFile, { start, end }: Session) => {
  const times = [
    ...plan.batches.map((batch) => ({ id: batch.id, at: minuteOf(batch.start) })),
    ...plan.orders.flatMap((order) =>
      spellsOf(order)
        .slice(0, 1)
        .map((spell) => ({ id: order.id, at: minuteOf(spell.packStart) })),
    ),
  ];
  const ids = (isIn: (at: number) => boolean) => new Set(times.filter(({ at }) => isIn(at)).map(({ id }) => id));
  return { cutFor: ids((at) => at >= start && at < end), done: ids((at) => at < start) };
};

/** A mould is coated, or set up for its first pour, before the session as well as in it. */
const isReadied = (step: SessionStep): step is CoatStep | PrepStep =>
  (step.kind === 'coat' || step.kind === 'prep') && !step.waits;

/** What is got ready before a session: what is cut and weighed, which moulds can be coated or set up, what is laid out. */
export const eveningFacts = (
  plan: PlanFile,
  yard: YardFile,
  session: Session,
  { spares, ...shown }: Shown & Pick<EveningFacts, 'spares'>,
): EveningFacts => {
  const steps = sessionSteps(plan, yard, session, shown);
  const when = doneWhen(plan, session);
  const readied = steps.filter(isReadied);
  return {
    session: hoursFacts(session, calendarOf(yard.yard.timeZone)),
    sticks: cutList(plan.sticks, yard, when, shown.system),
    meshes: meshList(plan, yard, when.cutFor, shown.system),
    recipes: recipesOf(steps, yard, shown),
    coats: readied.filter((step): step is CoatStep => step.kind === 'coat'),
    preps: readied.filter((step): step is PrepStep => step.kind === 'prep'),
    ...{ spares, steps },
  };
};
