import { done, type Outcome, type UseCaseContext } from '../core/context.ts';
import { effectApart, type SeenEffect } from '../plan/save-edit.ts';
import type { FormFields } from '../typed/form-fields.ts';
import { runningLate } from './more-hours.ts';
import { type RetimedSession, retimedSession } from './retimed-session.ts';

/** What a slip does to dates, once that is worked out. */
export interface SlipAnswer {
  /** The order of which the rest is left for another day beside; '' where none is. */
  without: string;
  /** Null where it was given up. */
  effect: SeenEffect | null;
}

/** A slip that was asked about: the session as it moves on, and what is known so far of each thing that could be done. */
export interface SlipModel {
  retimed: RetimedSession;
  answers: readonly SlipAnswer[];
}

/** What a slip would do to dates, beside all that is recorded meanwhile. */
export const slipAnswer = async (context: UseCaseContext, typed: FormFields): Promise<Outcome<SlipAnswer>> => {
  const effect = await effectApart(context, runningLate(context, typed));
  if (effect?.ok === false) return effect;
  return done({ without: typed.without ?? '', effect: effect?.value ?? null });
};

/** The same of everything that could be done, one after the other; where an order is named, of that one and of none left out. */
export const slipAnswers = async (context: UseCaseContext, typed: FormFields): Promise<Outcome<SlipModel>> => {
  const retimed = await retimedSession(context, typed);
  if (!retimed.ok) return retimed;
  const { session = '', at = '', without } = typed;
  const orders = without === undefined ? retimed.value.toLeave.map(({ order }) => order) : [without];
  const answers: SlipAnswer[] = [];
  for (const order of ['', ...orders]) {
    const answer = await slipAnswer(context, { session, at, ...(order === '' ? {} : { without: order }) });
    if (!answer.ok) return answer;
    answers.push(answer.value);
  }
  return done({ retimed: retimed.value, answers });
};
