import { describe, expect, test } from 'vitest';
import type { PlanFile } from '../../../shared/plan.ts';
import { compile } from '../../../src/engine/decoder/compile.ts';
import { decoderStateOf } from '../../../src/engine/decoder/decoder-state.ts';
import { dispatchOf } from '../../../src/engine/decoder/dispatch.ts';
import { NONE } from '../../../src/engine/decoder/problem.ts';
import { earliestDueFirst } from '../../../src/engine/search/rules.ts';
import { type Beside, chooseBeside, onceTaken } from '../../../src/engine/standing/choose-beside.ts';
import { type Candidate, candidateOf } from '../../../src/engine/standing/standing-plan.ts';
import { handPlan, plannedYard } from '../../support/planned-yard.ts';

const [one] = plannedYard().orders;
const problem = compile(plannedYard({ orders: [one!, { ...one!, id: '27-002', weight: 3 }] }));
const whole = candidateOf(
  decoderStateOf(problem, dispatchOf(new Int32Array(0))),
  dispatchOf(earliestDueFirst(problem)),
);

/** Of 27-001, which the plan that holds now knows, and of 27-002, which has just been taken. */
const plan = ({ late = 0, daysLate = [0, 0], readyOn = [10, 10] } = {}): Candidate => ({
  ...{ ...whole, daysLate, readyOn },
  evaluation: { unplannedWeight: 0, weightedDaysLate: late, weightedDaysAfterWanted: 0, cost: 100, lateness: 0 },
});

/** The plan that holds now, so late. */
const nearOf = (weightedDaysLate: number): PlanFile => {
  const hand = handPlan();
  return { ...hand, score: { ...hand.score, weightedDaysLate } };
};
const beside = (near = nearOf(0), lost: Beside['lost'] = () => 0): Beside => ({ given: new Set(), near, lost });

describe('an order that has just been taken', () => {
  test('is no later in what takes the place of the plan in which its day was told', () => {
    const stood = plan({ late: 3, daysLate: [3, 0] });
    const better = plan();
    expect(chooseBeside(stood, [better], beside())).toBe(better);
    expect(chooseBeside(stood, [plan({ readyOn: [10, 17] })], beside())).toBe(stood);
    expect(chooseBeside(stood, [plan({ readyOn: [10, NONE] })], beside())).toBe(stood);
  });

  const [late, sooner] = [plan({ readyOn: [10, 17] }), plan()];

  test('has the sooner day that the question found for it', () => {
    expect(onceTaken(late, sooner, beside())).toBe(sooner);
    expect(onceTaken(sooner, late, beside())).toBe(sooner);
    expect(onceTaken(late, null, beside())).toBe(late);
  });

  test('or a day no sooner, where that does less harm to a date that was given', () => {
    const [harming, harmless] = [plan({ daysLate: [3, 0] }), plan()];
    expect(onceTaken(harming, harmless, { ...beside(), given: new Set(['27-001']) })).toBe(harmless);
    expect(onceTaken(harming, harmless, beside())).toBe(harming);
  });

  test('but not where another falls out by it, what is fixed cannot stay, or more is late than now', () => {
    expect(onceTaken(late, plan({ readyOn: [NONE, 10] }), beside())).toBe(late);
    expect(
      onceTaken(
        late,
        sooner,
        beside(nearOf(0), (plan) => (plan === sooner ? 1 : 0)),
      ),
    ).toBe(late);
    const more = plan({ late: 2, daysLate: [2, 0] });
    expect(onceTaken(late, more, beside())).toBe(late);
    expect(onceTaken(late, more, beside(nearOf(2)))).toBe(more);
  });
});

describe('what is fixed', () => {
  const [whole, better] = [plan({ late: 5 }), plan({ late: 1 })];
  const first = new Set(['27-001']);
  const lost = (one: Candidate) => (one === better ? 1 : 0);

  test('stays in the plan that spares dates, where another does that too and drops some of it', () => {
    const late = plan({ late: 30, daysLate: [30, 0] });
    expect(chooseBeside(late, [better, whole], { ...beside(nearOf(0), lost), given: first })).toBe(whole);
  });

  test('is not dropped for a plan that is only better', () => {
    expect(chooseBeside(whole, [better], beside(nearOf(0), lost))).toBe(whole);
    expect(chooseBeside(whole, [better], beside())).toBe(better);
  });
});

describe('an order that was planned', () => {
  const both = { ...beside(), given: new Set(['27-001', '27-002']) };
  const stands = plan({ readyOn: [10, NONE] });
  const heavier = plan({ readyOn: [NONE, 10] });

  test('does not fall out for one that was left out, however much that one weighs', () => {
    expect(chooseBeside(stands, [heavier], both)).toBe(stands);
  });

  test('falls out only where another that was planned is spared by it', () => {
    const late = plan({ daysLate: [30, 0] });
    const spared = plan({ readyOn: [10, NONE] });
    const onlyFirst = { ...beside(), given: new Set(['27-001']) };
    expect(chooseBeside(late, [spared], onlyFirst)).toBe(spared);
    expect(chooseBeside(plan(), [spared], onlyFirst)).toStrictEqual(plan());
  });

  test('may be late beside one that was left out and has a place again', () => {
    const returned = plan({ daysLate: [1, 0] });
    expect(chooseBeside(stands, [returned], both)).toBe(returned);
  });
});
