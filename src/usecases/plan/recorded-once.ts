import { changeById } from '../../../db/stores/change-store.ts';
import { changeOfStep } from '../../../db/stores/recorded-step-store.ts';
import { done, type Outcome, type UseCaseContext } from '../core/context.ts';
import type { Changed } from './changing.ts';
import { currentPlan } from './make-plan.ts';

/** The change that recorded a step already, as if it had just been done; null where none did, or it was undone. */
const alreadyRecorded = async (
  context: UseCaseContext,
  step: string | null | undefined,
): Promise<Outcome<Changed<null>> | null> => {
  if (!step) return null;
  const found = await context.database.read(async (tx) => {
    const change = await changeOfStep(tx, step);
    return change === null ? null : changeById(tx, change);
  });
  if (!found) return null;
  const { plan, yard, cached } = await currentPlan(context);
  return done({ value: null, change: found.id, words: found.words, moved: [], plan, yard, cached });
};

type Recording<T> = () => Promise<Outcome<Changed<T>>>;

/** Records what cannot have been, unless that is because it is recorded already: then that is what came of it. */
export const orRecorded = async <T>(
  context: UseCaseContext,
  step: string | null | undefined,
  record: Recording<T>,
): Promise<Outcome<Changed<T | null>>> => {
  const outcome = await record();
  return outcome.ok ? outcome : ((await alreadyRecorded(context, step)) ?? outcome);
};

/**
 * Records a step that is done once only: the second tap on its button, or one in another tab, finds the change of the
 * first and changes nothing.
 */
export const recordedOnce = async <T>(
  context: UseCaseContext,
  step: string | null | undefined,
  record: Recording<T>,
): Promise<Outcome<Changed<T | null>>> => (await alreadyRecorded(context, step)) ?? orRecorded(context, step, record);
