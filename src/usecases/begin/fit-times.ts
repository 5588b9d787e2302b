import { updateTimes } from '../../../db/stores/times-store.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { FittedSession } from '../../engine/begin/fit-session.ts';
import type { UsualSession } from '../../engine/begin/usual-session.ts';
import { computeForRequest } from '../core/compute-for-request.ts';
import { done, type Outcome, refuse, today, type UseCaseContext } from '../core/context.ts';
import type { PageHead } from '../core/page-parts.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { currentPlan } from '../plan/make-plan.ts';
import { HOW_MANY_MADE, madeTyped } from '../typed/begin-form.ts';

/** A time of handling, in minutes, before and after: of the mix, or of the panels, the least and the most of the lengths. */
export interface FittedTime {
  what: 'setUp' | 'clean' | 'fill' | 'strip' | 'mix';
  before: readonly number[];
  after: readonly number[];
}

/** Times that would make a usual session make as many pieces as were asked for. */
export interface FittedTimes {
  asked: number;
  makes: UsualSession;
  /** What no time of handling can change; null where it makes as many. */
  heldBy: FittedSession['heldBy'];
  /** The times are those of the yard already. */
  same: boolean;
  times: readonly FittedTime[];
}

/** What a usual session makes, and times fitted to what one made. */
export interface FitModel extends PageHead {
  /** By the yard's figures; null where nothing can be made yet. */
  usual: UsualSession | null;
  /** A piece of the yard to show the times of; null where none is cast. */
  first: string | null;
  /** Null where no number was typed, or none that could be read. */
  fitted: FittedTimes | null;
  /** What was wrong with the number typed. */
  wrong: string | null;
}

const TIMES = { setUp: 'prepMinutes', clean: 'cleanMinutes', fill: 'fillMinutes', strip: 'stripMinutes' } as const;

const fittedTimes = (before: YardFile, after: YardFile): FittedTime[] => [
  ...(['setUp', 'clean', 'fill', 'strip'] as const).map((what) => ({
    ...{
      what,
      before: before.castings.map((one) => one[TIMES[what]]),
      after: after.castings.map((one) => one[TIMES[what]]),
    },
  })),
  { what: 'mix', before: before.mixes.map((one) => one.mixMinutes), after: after.mixes.map((one) => one.mixMinutes) },
];

const shown = (yard: YardFile, pieces: number, fitted: FittedSession): FittedTimes => ({
  ...{ asked: pieces, makes: fitted.after, heldBy: fitted.heldBy, same: fitted.factor === 1 },
  times: fittedTimes(yard, fitted.yard),
});

const fittedTo = ({ background }: UseCaseContext, yard: YardFile, pieces: number) =>
  computeForRequest(background, 'times for a session', { yard, pieces });

/** What a usual session makes by the yard's figures and, for a number that was typed, the times that would make as many. */
export const showFit = async (context: UseCaseContext, made: string | null): Promise<FitModel> => {
  const { yard } = await currentPlan(context);
  const { session: usual } = await computeForRequest(context.background, 'usual session', { yard });
  const pieces = made === null ? null : madeTyped(made);
  const fitted = pieces === null ? null : (await fittedTo(context, yard, pieces)).fitted;
  return {
    ...{ yardName: yard.yard.name, today: today(yard.yard.timeZone, context.now), usual },
    first: yard.castings.at(0)?.id ?? null,
    fitted: pieces === null || !fitted ? null : shown(yard, pieces, fitted),
    wrong: made !== null && pieces === null ? HOW_MANY_MADE : null,
  };
};

/** Makes the times of handling such that a usual session makes as many pieces as the last one did. */
export const fitTimes = (
  context: UseCaseContext,
  made: string,
): Promise<Outcome<Changed<{ pieces: number; first: string }>>> =>
  changing(
    context,
    { kind: 'times fitted', words: ({ pieces }) => `Times changed so that a usual session makes ${pieces}` },
    async (tx, yard) => {
      const pieces = madeTyped(made);
      if (pieces === null) return refuse('made', HOW_MANY_MADE);
      const { fitted } = await fittedTo(context, yard, pieces);
      if (!fitted) return refuse('made', 'By these figures nothing can be made yet, so there are no times to change.');
      if (fitted.factor === 1) return refuse('made', 'Nothing has to be changed for that.');
      await updateTimes(tx, fitted.yard);
      return done({ pieces: fitted.after.pieces, first: yard.castings.at(0)?.id ?? '' });
    },
  );
