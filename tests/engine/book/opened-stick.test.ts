import { expect, test } from 'vitest';
import type { YardFile, YardFileInput } from '../../../shared/yard-file.ts';
import { record, type UnderBook } from '../../../src/engine/book/carry-on.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { smallYard } from '../../support/small-yard.ts';
import { tasksOf } from '../../support/work-by-plan.ts';
import { workOf } from '../../support/work-down.ts';

/** Rods of 3000 mm and 3 mm to a cut; more takes a fortnight. Two moulds, so many panels wanted, each with its pieces. */
const yardOf = (rods: number, panels: number, lengthMm: number, count: number): YardFile => {
  const base = smallYard();
  const changes: Partial<YardFileInput> = {
    materials: base.materials.map((one) => (one.id === 'rod' ? { ...one, onHand: rods, leadDays: 14 } : one)),
    castings: base.castings.map((one) => ({ ...one, cuts: [{ material: 'rod', lengthMm, count }] })),
    orders: [{ id: '27-001', lines: [{ casting: 'panel-900', quantity: panels }] }],
  };
  return smallYard(changes);
};

/** All that is done up to the first batch, as planned, each thing recorded as it ends. */
const afterFirstBatch = (yard: YardFile): UnderBook => {
  let under: UnderBook = { yard, plan: planYard(yard, { effort: 'quick' }) };
  for (let poured = false; !poured; ) {
    const [task] = tasksOf(under.plan!);
    const now = calendarOf(yard.yard.timeZone).instantText(task!.end);
    const at = { ...under.yard, yard: { ...under.yard.yard, now } };
    const recorded = record({ ...under, yard: at }, workOf(task!, under.plan!, at));
    if (!recorded.ok) throw new Error(recorded.faults[0]?.message);
    under = recorded.after;
    poured = task!.what.kind === 'poured';
  }
  return under;
};

const rodIn = ({ materials }: YardFile) => materials.find(({ id }) => id === 'rod');

// The case that was found: one rod, eight cuts of 190. Four are made, 3000 - 4 x 193 = 2228 are left, enough for four more.
test('the rest of an opened stick serves the rest of the work: the plan goes on, and no stick is ordered', () => {
  const yard = yardOf(1, 4, 190, 2);
  const before = planYard(yard, { effort: 'quick' });
  const { yard: after, plan } = afterFirstBatch(yard);
  expect(rodIn(after)).toMatchObject({ onHand: 0, offcuts: [{ lengthMm: 2228, count: 1 }] });
  expect(plan?.orders).toEqual(before.orders);
  expect(plan?.buys.filter(({ material }) => material === 'rod')).toEqual([]);
  const anew = planYard(after, { effort: 'quick' });
  expect(anew.orders.map(({ completesOn }) => completesOn)).toEqual(
    before.orders.map(({ completesOn }) => completesOn),
  );
  expect(anew.buys.filter(({ material }) => material === 'rod')).toEqual([]);
  expect(anew.sticks).toMatchObject([{ material: 'rod', offcutMm: 2228 }]);
});

// The other way round: 1600 from each of three rods leaves 1397 three times, which is no fourth 1600.
test('ends that are too short for a cut are no stick, whatever they come to together', () => {
  const ends = yardOf(0, 1, 1600, 1);
  const materials = ends.materials.map((one) =>
    one.id === 'rod' ? { ...one, offcuts: [{ lengthMm: 1397, count: 3 }] } : one,
  );
  const [made] = planYard({ ...ends, materials }, { effort: 'quick' }).sticks;
  expect(made).not.toHaveProperty('offcutMm');
  // It waits for one that is bought, a fortnight from now.
  expect(made!.openedAt.slice(0, 10) >= '2027-04-22').toBe(true);
});
