import { describe, expect, test } from 'vitest';
import type { PlanOfWork } from '../../../shared/late-work.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import { lateSteps, lateTaken } from '../../../src/usecases/plan/late-steps.ts';
import { lateWork } from '../../../src/usecases/plan/late-work.ts';
import { withLateBack } from '../../../src/usecases/plan/late-work-back.ts';
import { withLateWorkDone } from '../../../src/usecases/plan/late-work-done.ts';
import { handPlan, plannedYard, saturday } from '../../support/planned-yard.ts';

const yard = plannedYard({ yard: { ...plannedYard().yard, now: saturday('12:20') } });
const stepsOf = (plan: PlanOfWork) => {
  const late = lateWork(yard, plan);
  return late ? lateSteps(late) : [];
};
const namesOf = (plan: PlanOfWork) => [...new Set(stepsOf(plan).map(({ name }) => name))].sort();

const nothing = (): PlanFile => ({ ...handPlan(), batches: [], pours: [], coats: [], strips: [], orders: [] });
/** The batch again, of a plan made since, which has given its ids to another one. */
const sinceThen = (): PlanFile => {
  const plan = handPlan();
  const later = { fillStart: saturday('16:00'), fillEnd: saturday('16:07'), prepStart: saturday('15:50') };
  return {
    ...plan,
    batches: plan.batches.map((batch) => ({ ...batch, start: saturday('15:50'), end: saturday('16:14') })),
    pours: plan.pours.map((pour) => ({
      ...{ ...pour, ...later, prepEnd: saturday('15:50') },
      ...{ stripStart: saturday('17:30'), stripEnd: saturday('17:38') },
    })),
    orders: [],
  };
};

/* By hand: a coat, a batch of two, two strips, one order. */
describe('late work that is back', () => {
  test.each([
    ['of a plan without any', nothing],
    ['beside others of the same ids', sinceThen],
    ['that was never gone', handPlan],
  ])('is on the list as it was, %s', (_of, plan) => {
    const back = withLateBack(plan(), lateTaken(stepsOf(handPlan())));
    expect(namesOf(back)).toEqual(namesOf(handPlan()));
    expect(namesOf(back)).toHaveLength(5);
    const ids = [...back.batches, ...back.pours].map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(withLateWorkDone(yard, back)?.yard).toEqual(withLateWorkDone(yard, handPlan())?.yard);
  });

  test('is a strip alone, of a pour that is planned to be stripped later now', () => {
    const strip = stepsOf(handPlan()).filter(({ kind }) => kind === 'strip')[0]!;
    const plan = handPlan();
    const later = { stripStart: '2027-04-17T08:10:00+01:00', stripEnd: '2027-04-17T08:18:00+01:00' };
    plan.pours[0] = { ...plan.pours[0]!, ...later };
    expect(namesOf(plan)).not.toContain(strip.name);
    expect(namesOf(withLateBack(plan, lateTaken([strip])))).toEqual(namesOf(handPlan()));
  });

  test('is a set-up for a pour to come', () => {
    const next = (prepStart: string): PlanFile => {
      const plan = nothing();
      const [pour] = handPlan().pours;
      const fill = { fillStart: '2027-04-17T09:00:00+01:00', fillEnd: '2027-04-17T09:07:00+01:00' };
      const strip = { stripStart: '2027-04-17T11:00:00+01:00', stripEnd: '2027-04-17T11:08:00+01:00' };
      return { ...plan, pours: [{ ...pour!, ...fill, ...strip, prepStart }] };
    };
    const [was, is] = [next(saturday('11:30')), next('2027-04-17T08:10:00+01:00')];
    expect(namesOf(was)).toHaveLength(1);
    expect(namesOf(is)).toEqual([]);
    for (const plan of [is, nothing()])
      expect(namesOf(withLateBack(plan, lateTaken(stepsOf(was))))).toEqual(namesOf(was));
  });
});

test('a strip is of the piece that was in the mould then, not of one poured since', () => {
  const strips = [
    { mould: '900 no. 1', stripStart: saturday('08:10'), stripEnd: saturday('08:18'), pieceReadyAt: saturday('08:18') },
  ];
  const holding = (filledAt: string) => ({
    ...yard,
    inMould: [{ mould: '900 no. 1', casting: 'panel-900', filledAt }],
  });
  const plan = { ...nothing(), strips };
  expect(withLateWorkDone(holding('2027-04-03T09:00:00+01:00'), plan)?.yard.inMould).toEqual([]);
  expect(withLateWorkDone(holding(saturday('09:00')), plan)).toBeNull();
});
