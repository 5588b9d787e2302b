import { expect, test } from 'vitest';
import { begin } from '../../../src/engine/book/begin-work.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { refereePlan } from '../../../src/engine/referee.ts';
import { audit } from '../../contract/audit-plan.mjs';
import { handPlan, plannedYard, saturday } from '../../support/planned-yard.ts';

/** Saturday at 9:10, its batch under way, and no hours from 9:40 on that would strip what it fills. */
const midway = () => {
  const base = plannedYard();
  const today = { date: '2027-04-10', start: '08:00', end: '09:40', crew: 1 };
  const allows = ['prep', 'batch', 'strip', 'pack'] as const;
  const yard = {
    ...base,
    ...{ work: [], extra: [{ ...today, allows: [...allows] }], inMould: [], finished: [] },
    yard: { ...base.yard, now: saturday('09:10'), horizonDays: 1 },
  };
  const { batches, pours } = handPlan();
  const work = {
    kind: 'poured' as const,
    bags: 1,
    pours: pours.map(({ mould, casting, fillEnd }) => ({
      mould,
      casting,
      order: null,
      coated: true,
      filledAt: fillEnd,
    })),
  };
  return begin(yard, { work, end: batches[0]!.end, as: { batches, pours } })!;
};

test('what is being poured and no session strips stays in its mould, for nobody, with the times it came with', () => {
  const yard = midway();
  const plan = planYard(yard, { effort: 'quick' });
  expect(plan.unstripped.map(({ mould }) => mould).sort()).toEqual(['900 no. 1', '900 no. 2']);
  const times = ({ id, stripStart, stripEnd, pieceReadyAt }: (typeof plan.pours)[0]) => [
    id,
    stripStart,
    stripEnd,
    pieceReadyAt,
  ];
  expect(plan.pours.map(times)).toEqual(handPlan().pours.map(times));
  expect(plan.pours.map(({ order }) => order)).toEqual([undefined, undefined]);
  expect(audit(yard, plan).faults).toEqual([]);
  expect(refereePlan(yard, plan)).toEqual([]);
});
