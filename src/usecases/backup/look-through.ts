import { recentHeads } from '../../../db/stores/change-store.ts';
import { openOrders } from '../../../db/stores/order-store.ts';
import { storedPlan } from '../../../db/stores/plan-store.ts';
import { isEmpty, loadYardFile } from '../../../db/stores/yard-store.ts';
import { refereePlan } from '../../engine/referee.ts';
import { type Computations, type Compute, computeWithoutThread } from '../core/computations.ts';
import type { UseCaseContext } from '../core/context.ts';
import { remakePlan } from '../plan/remake-plan.ts';

/** What a database holds, for whoever chooses between two of them. */
export interface Holding {
  yardName: string;
  openOrders: number;
  /** The last change, with its instant; null before the first. */
  last: { at: string; words: string } | null;
  /** Rules that a plan of it breaks, in words; none where all is in order. */
  faults: string[];
}

/** Plans as requests do, and holds each plan against the rules. */
const refereed = (faults: string[]): Compute => {
  const compute = async (kind: 'quick plan', question: Computations['quick plan']['question']) => {
    const answer = await computeWithoutThread(kind, question);
    if (kind === 'quick plan' && answer !== null)
      faults.push(
        ...refereePlan(question.yard, answer.plan).map(({ rule, message }) => `the plan breaks ${rule}: ${message}`),
      );
    return answer;
  };
  return compute as Compute;
};

/**
 * Reads all that planning needs, and the plan that stands, and has the plan carried on from there held against every rule by the
 * referee. Writes to the database: to be asked of a copy. Null where it holds no yard.
 */
export const lookThrough = async ({ database, now }: UseCaseContext): Promise<Holding | null> => {
  if (await database.read(isEmpty)) return null;
  const faults: string[] = [];
  const compute = refereed(faults);
  const background = { planMade: () => {}, improving: () => true, compute, computeForRequest: compute };
  return database.write(async (tx) => {
    const stored = await storedPlan(tx);
    await remakePlan(tx, { database, now: stored?.now ?? now, background }, stored);
    const [last] = await recentHeads(tx, 1);
    const { yard } = await loadYardFile(tx, now);
    return {
      ...{ yardName: yard.name, openOrders: (await openOrders(tx)).length, faults },
      last: last ? { at: last.at, words: last.words } : null,
    };
  });
};
