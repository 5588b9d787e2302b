import { storedPlan } from '../../db/stores/plan-store.ts';
import type { PlanFile } from '../../shared/plan.ts';
import type { YardFileInput } from '../../shared/yard-file.ts';
import type { UseCaseContext } from '../../src/usecases/core/context.ts';
import { currentPlan } from '../../src/usecases/plan/make-plan.ts';
import { smallYard } from './small-yard.ts';
import { yardContext } from './yard-context.ts';

/** Saturday 10 April 2027, 08:00 to 12:00, is the small yard's next session; this is 23 hours before it begins. */
export const FRIDAY = '2027-04-09T09:00:00+01:00';
export const SATURDAY_START = '2027-04-10T08:00:00+01:00';

export interface FixedYard {
  friday: UseCaseContext;
  at(now: string): UseCaseContext;
  /** Mixes of a plan: when each begins, and which moulds it fills. */
  mixes(plan: PlanFile): string[];
  planNow(): Promise<PlanFile>;
}

/** The small yard, with its plan made on Thursday, on Friday. */
export const fixedYard = async (changes: Partial<YardFileInput> = {}): Promise<FixedYard> => {
  const { database, now } = await yardContext(smallYard(changes));
  await currentPlan({ database, now });
  const at = (instant: string): UseCaseContext => ({ database, now: instant });
  const mixes = ({ batches, pours }: PlanFile) =>
    batches.map(({ id, start }) => {
      const moulds = pours.filter(({ batch }) => batch === id).map(({ mould }) => mould);
      return `${start.slice(0, 16)} ${moulds.join(' + ')}`;
    });
  const planNow = async () => (await database.read(storedPlan))!.plan;
  return { friday: at(FRIDAY), at, mixes, planNow };
};
