import { expect, test } from 'vitest';
import { workOfStep } from '../../../src/usecases/plan/late-step-work.ts';
import { handPlan, plannedYard, saturday } from '../../support/planned-yard.ts';

const plan = handPlan();
const yard = plannedYard();
const at = { name: '', at: '' };
const { sticks } = plan;
const none = { planned: [], sticks };

/* By hand: no. 2 has turned eight times since its coat, which lasts eight. */
test('a batch was poured as planned, with a coat that was due though nobody wrote it down, for whomever the plan deals to', () => {
  const filled = { casting: 'panel-900', order: null };
  expect(workOfStep({ ...at, kind: 'batch', mix: { batch: plan.batches[0]!, pours: plan.pours } }, yard, none)).toEqual(
    {
      ...{ kind: 'poured', bags: 1, cutFrom: [] },
      pours: [
        { ...filled, mould: '900 no. 1', coated: false, filledAt: saturday('09:22') },
        { ...filled, mould: '900 no. 2', coated: true, filledAt: saturday('09:29') },
      ],
    },
  );
});

test('a mould was set up as planned, with a coat that was due and no other', () => {
  const [, pour] = plan.pours;
  const ready = { kind: 'set up', mould: '900 no. 2', casting: 'panel-900', doneAt: saturday('09:05') };
  expect(workOfStep({ ...at, kind: 'prep', pour: pour! }, yard, none)).toEqual({ ...ready, coated: true });
  const sealed = { ...yard, moulds: yard.moulds.map((mould) => ({ ...mould, turnsSinceOil: 0 })) };
  expect(workOfStep({ ...at, kind: 'prep', pour: pour! }, sealed, none)).toEqual({
    ...{ ...ready, coated: false },
  });
});

test('a piece came out good when it was planned to', () => {
  expect(workOfStep({ ...at, kind: 'strip', strip: plan.pours[0]! }, yard, none)).toEqual({
    ...{ kind: 'stripped', mould: '900 no. 1', cameOut: 'good', reason: '', doneAt: saturday('10:45') },
  });
});

test('an order was packed with what the yard still asks for it, never short', () => {
  const order = { ...plan.orders[0]!, packStart: saturday('10:52'), packEnd: saturday('10:57') };
  const planned = [{ finished: 0, count: 1 }];
  const cutFrom = [{ material: 'rod', cuts: [{ lengthMm: 300, count: 2 }] }];
  const work = { kind: 'packed', order: '27-001', planned, evenShort: false, doneAt: saturday('10:57'), cutFrom };
  const step = { ...at, kind: 'pack' as const, order };
  expect(workOfStep(step, yard, { planned, sticks })).toEqual({ ...work, lines: [{ kit: 'pair', quantity: 1 }] });
  expect(workOfStep(step, { ...yard, orders: [] }, { planned, sticks })).toEqual({ ...work, lines: [] });
});
