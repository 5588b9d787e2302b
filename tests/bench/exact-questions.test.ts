import { describe, expect, test } from 'vitest';
import { exactQuestion, type Question } from '../support/exact/exact-question.ts';
import { askedBeside } from './exact-questions.ts';

/** Seconds for one yard at most; those below take one or two on an idle machine. */
const SECONDS = 60;
const timeout = SECONDS * 2500;

/** As if the plan known had the new order later than it has. */
const knownLater = (question: Question, completesOn: string): Question => {
  const orders = question.known.orders.map((one) => (one.id === 'asked' ? { ...one, completesOn } : one));
  return { ...question, known: { ...question.known, orders } };
};

describe('the earliest day by a mixed-integer program', () => {
  test.each([9, 14])(
    'is that of the planner (yard %i), whose plan has it then and nobody later',
    { timeout },
    async (seed) => {
      const { question, faults } = askedBeside(seed, 'quick')!;
      expect(faults).toEqual([]);
      expect(await exactQuestion(question, SECONDS)).toMatchObject({ isProven: true, plan: null });
    },
  );

  test('is found where the plan known has it a day later, by a plan that passes the audit', { timeout }, async () => {
    const { question, earliestOn } = askedBeside(14, 'quick')!;
    const { isProven, plan, faults } = await exactQuestion(knownLater(question, '2027-04-11'), SECONDS);
    expect([isProven, faults]).toEqual([false, []]);
    expect(plan!.orders.find(({ id }) => id === 'asked')!.completesOn).toBe(earliestOn);
  });
});
