import type { Tx } from '../../../db/open.ts';
import type { Fault } from '../../../shared/fault.ts';
import type { PlanOfWork } from '../../../shared/late-work.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { done, type Outcome, type UseCaseContext } from '../core/context.ts';
import { cachePlan } from './cached-plan.ts';
import { notDoneBefore, rememberAct } from './done-once.ts';
import { workOfPlan } from './late-work.ts';
import { type CurrentPlan, planForNow } from './make-plan.ts';
import { type PromiseMove, promisesMoved, promisesOf } from './promises-moved.ts';
import { type Changed, type ChangeWords, type Replanning, readChange, recordChange } from './record-change.ts';
import { planApart, type Remaking } from './remake-plan.ts';

export type { Changed, ChangeWords } from './record-change.ts';

/** Carries a refusal out of a transaction, which only an error rolls back. */
class Refused extends Error {
  readonly faults: Fault[];
  constructor(faults: Fault[]) {
    super('refused');
    this.faults = faults;
  }
}

/** Carries what a change would have done out of its transaction. */
class OnlyTried<T> extends Error {
  readonly value: Changed<T>;
  constructor(value: Changed<T>) {
    super('only tried');
    this.value = value;
  }
}

/**
 * What a change does to the data, inside its transaction; it is told the yard and the plan until then, and what there was
 * to do by it, with what has no place in it any more.
 */
export type DoChange<T> = (
  tx: Tx,
  yard: YardFile,
  change: number,
  plan: PlanFile,
  work: PlanOfWork,
) => Promise<Outcome<T>>;

/** What has to come before the change is written down, in the same transaction. */
export type BeforeChange = (tx: Tx) => Promise<void>;

interface Manner<T> extends Replanning<T> {
  first?: BeforeChange;
  /** Told what the change does, says whether it is only tried and rolled back. */
  holdBack?: (changed: Changed<T>) => boolean;
}

/** Done, or held back: then nothing of it has happened, and there is no change to undo. */
interface Tried<T> {
  held: boolean;
  changed: Changed<T>;
}

const tried = async <T>(
  context: UseCaseContext,
  what: ChangeWords<T>,
  work: DoChange<T>,
  { first, holdBack, ...replanning }: Manner<T>,
): Promise<Outcome<Tried<T>>> => {
  try {
    const changed = await context.database.write(async (tx) => {
      const isNew = await notDoneBefore(tx, context);
      if (!isNew.ok) throw new Refused(isNew.faults);
      await first?.(tx);
      const before = await planForNow(tx, context);
      const outcome = await recordChange(
        tx,
        context,
        before,
        context.by ? { ...what, by: context.by } : what,
        (change) => work(tx, before.yard, change, before.plan, workOfPlan(before.cached.stored)),
        replanning,
      );
      if (!outcome.ok) throw new Refused(outcome.faults);
      if (holdBack?.(outcome.value)) throw new OnlyTried(outcome.value);
      await rememberAct(tx, context, outcome.value.change);
      return outcome.value;
    });
    cachePlan(context.database, changed.cached);
    context.background?.planMade();
    return { ok: true, value: { held: false, changed } };
  } catch (error) {
    if (error instanceof OnlyTried) return { ok: true, value: { held: true, changed: error.value } };
    if (error instanceof Refused) return { ok: false, faults: error.faults };
    throw error;
  }
};

/**
 * The one way to change data: one queued write transaction that does the work, counts the revision, plans anew, stores
 * the plan and writes the change down so that it can be undone. A refusal, or any error, rolls all of it back.
 * What was done by the same act before is refused at `act`.
 */
export const changing = async <T>(
  context: UseCaseContext,
  what: ChangeWords<T>,
  work: DoChange<T>,
  manner: Replanning<T> & { first?: BeforeChange } = {},
): Promise<Outcome<Changed<T>>> => {
  const outcome = await tried(context, what, work, manner);
  return outcome.ok ? { ok: true, value: outcome.value.changed } : outcome;
};

/**
 * What a change would do, without doing it: the same work, planned and written down in a transaction that is rolled back.
 * `moved` tells whose days would be other ones.
 */
export const previewing = async <T>(
  context: UseCaseContext,
  what: ChangeWords<T>,
  work: DoChange<T>,
  manner: Replanning<T> & { first?: BeforeChange } = {},
): Promise<Outcome<Omit<Changed<T>, 'change'>>> => {
  const outcome = await tried(context, what, work, { ...manner, holdBack: () => true });
  return outcome.ok ? { ok: true, value: outcome.value.changed } : outcome;
};

/** Carries what a plan would be made from out of a transaction. */
class OnlyRead extends Error {
  readonly before: CurrentPlan;
  readonly remaking: Remaking;
  constructor(before: CurrentPlan, remaking: Remaking) {
    super('only read');
    this.before = before;
    this.remaking = remaking;
  }
}

type YardPlan = Pick<CurrentPlan, 'plan' | 'yard'>;

/** What a change would come to: the yard and the plan until then and after it, and whose days would be other ones. */
export interface Previewed extends YardPlan {
  before: YardPlan;
  moved: PromiseMove[];
}

/**
 * As `previewing`, except that nobody who writes waits for the plan: the work is done and rolled back first, and the plan made
 * then, in the thread of questions. Null where that was given up.
 */
export const previewingApart = async <T>(
  context: UseCaseContext,
  { kind }: Pick<ChangeWords<T>, 'kind'>,
  work: DoChange<T>,
  replanning: Pick<Replanning<T>, 'unfixed'> = {},
): Promise<Outcome<Previewed> | null> => {
  const readOnly = async (tx: Tx): Promise<never> => {
    const before = await planForNow(tx, context);
    const doWork = (change: number) => work(tx, before.yard, change, before.plan, workOfPlan(before.cached.stored));
    const read = await readChange(tx, context, before, kind, doWork, replanning);
    throw read.ok ? new OnlyRead(before, read.value) : new Refused(read.faults);
  };
  const thrown: unknown = await context.database.write(readOnly).catch((error) => error);
  if (thrown instanceof Refused) return { ok: false, faults: thrown.faults };
  if (!(thrown instanceof OnlyRead)) throw thrown;
  const { before, remaking } = thrown;
  const made = await planApart(context, remaking);
  if (!made) return null;
  const moved = promisesMoved(promisesOf(before.yard, before.plan), promisesOf(made.yard, made.plan));
  return done({ ...made, before, moved });
};

/**
 * As `changing`, except that a change of which `holdBack` says so, told what it does, is rolled back: `held` says which of
 * the two came of it. Planned once, whichever way it goes.
 */
export const changingUnless = <T>(
  context: UseCaseContext,
  what: ChangeWords<T>,
  work: DoChange<T>,
  holdBack: (changed: Changed<T>) => boolean,
  replanning: Replanning<T> = {},
): Promise<Outcome<Tried<T>>> => tried(context, what, work, { ...replanning, holdBack });
