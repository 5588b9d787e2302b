import type { Doubt } from '../../../shared/doubt.ts';
import type { PlanOfWork } from '../../../shared/late-work.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import type { Changed } from '../plan/changing.ts';
import { type LateStep, lateSteps, minuteOfStep, mouldsOfStep } from '../plan/late-steps.ts';
import { lateWords } from '../plan/late-words.ts';
import { lateWork, workBeginning } from '../plan/late-work.ts';
import { orRecorded } from '../plan/recorded-once.ts';
import { recordingWork } from '../plan/recording-work.ts';
import { stepsBefore } from '../plan/steps-before.ts';
import { measuresOf } from '../typed/measures.ts';
import { recordedStep, workSteps } from './write-late-work.ts';

const FIELD = 'before';

const placed = (step: LateStep) => ({ moulds: mouldsOfStep(step), at: step.at });

/** The step of a plan with this name, whether it is over or still to come. */
const stepNamed = (work: PlanOfWork, name: string): LateStep | undefined => {
  const minute = minuteOfStep(name);
  const beginning = minute === null ? null : workBeginning(work, minute);
  return beginning ? lateSteps(beginning).find((step) => step.name === name) : undefined;
};

/** What is not recorded, though its time is over, of the turns that come before a step in its moulds. */
const lateBefore = (yard: YardFile, work: PlanOfWork, name: string): LateStep[] => {
  const late = lateWork(yard, work);
  const step = stepNamed(work, name);
  if (!late || !step) return [];
  const others = lateSteps(late).filter((one) => one.name !== name);
  return stepsBefore([...others, step], step, placed);
};

/** The step that something has to be recorded before, and what the maker was asked about and is sure of. */
export interface BeforeStep {
  before: string;
  sure?: readonly Doubt[];
}

/**
 * What comes before a step in its moulds was done as planned: all of it is recorded at once, in order, so that the step can
 * be begun or recorded itself. Refused, or asked about, at `before`.
 */
export const recordBefore = (
  context: UseCaseContext,
  { before, sure = [] }: BeforeStep,
): Promise<Outcome<Changed<string | null>>> =>
  orRecorded(context, { names: [`${FIELD} ${before}`], field: FIELD }, () =>
    recordingWork<string>(context, { kind: 'as planned', words: (words) => words }, async (tx, yard, _plan, work) => {
      const steps = lateBefore(yard, work, before);
      if (steps.length === 0) return refuse(FIELD, 'There is nothing before it to be recorded. Nothing was changed.');
      const under = { sure, system: (await measuresOf(tx)).system };
      const recorded = workSteps(steps, work, under).map((step) => ({
        ...step,
        nameOf: (fault: Parameters<NonNullable<typeof step.nameOf>>[0]) => {
          const name = step.nameOf?.(fault) ?? FIELD;
          return steps.some((one) => one.name === name) ? FIELD : name;
        },
      }));
      const named = steps.flatMap((one) => recordedStep(one, yard));
      const own = named.slice(0, 1).map((one) => ({ ...one, step: `${FIELD} ${before}` }));
      return done({ steps: recorded, value: `${lateWords(steps)} as planned`, named: [...named, ...own] });
    }),
  );
