import type { PlanPour } from '../../shared/plan.ts';
import type { YardFile } from '../../shared/yard-file.ts';
import type { UseCaseContext } from '../../src/usecases/core/context.ts';
import { asWorked } from '../../src/usecases/plan/as-worked.ts';
import { type LateStep, lateStepName, lateSteps, mouldsOfStep } from '../../src/usecases/plan/late-steps.ts';
import { workOfPlan, workUnderWay } from '../../src/usecases/plan/late-work.ts';
import { currentPlan } from '../../src/usecases/plan/make-plan.ts';
import { stepsToRecord } from '../../src/usecases/plan/steps-to-record.ts';

/** What has begun and is not recorded, by name, and what of it is under way as the engine is told of it. */
export const begunBy = async (context: UseCaseContext) => {
  const { cached, yard } = await currentPlan(context);
  const work = workOfPlan(cached.stored);
  const underWay = workUnderWay(yard, work);
  return {
    yard,
    steps: stepsToRecord(yard, work),
    underWay: underWay ? lateSteps(underWay).length : 0,
    held: heldBy(asWorked(yard, cached.stored).yard.begun),
  };
};

export type Begun = Awaited<ReturnType<typeof begunBy>>;

/** Hands, mixer, moulds and bags that work under way holds, and until when. */
const heldBy = (begun: YardFile['begun']): string[] => [
  ...(begun?.batches ?? []).map(({ mix, bags, start, mixEnd, end }) => `mix ${mix} ${bags} ${start} ${mixEnd} ${end}`),
  ...(begun?.pours ?? []).map(({ mould, casting, fillEnd }) => `fill ${mould} ${casting} ${fillEnd}`),
  ...(begun?.strips ?? []).map(({ mould, stripStart, stripEnd }) => `strip ${mould} ${stripStart} ${stripEnd}`),
  ...(begun?.packs ?? []).map(({ order, packStart, packEnd }) => `pack ${order} ${packStart} ${packEnd}`),
  ...(begun?.preps ?? []).map(({ mould, prepStart, prepEnd }) => `set up ${mould} ${prepStart} ${prepEnd}`),
  ...(begun?.coats ?? []).map(({ mould, start, end }) => `coat ${mould} ${start} ${end}`),
];

const prepName = ({ prepStart, mould }: PlanPour): string => lateStepName({ kind: 'prep', at: prepStart, what: mould });

/** Steps but the one that was tapped and others of its moulds: of a mould that is full the coat and the set-up are over. */
export const besides = (steps: readonly LateStep[], tapped: string): LateStep[] => {
  const moulds = steps.flatMap((step) => (step.name === tapped ? mouldsOfStep(step) : []));
  return steps.filter((step) => step.name !== tapped && !mouldsOfStep(step).some((mould) => moulds.includes(mould)));
};

/** What of that is there no more. */
export const goneOf = (before: Pick<Begun, 'steps' | 'held'>, after: Begun): string[] => {
  // The set-ups of a batch that is over go with it.
  const preps = after.steps.flatMap((step) => (step.kind === 'batch' ? step.mix.pours.map(prepName) : []));
  const names = new Set([...after.steps.map(({ name }) => name), ...preps]);
  return [
    ...before.steps.map(({ name }) => name).filter((name) => !names.has(name)),
    ...before.held.filter((one) => !after.held.includes(one)),
  ];
};
