import { expect, test } from 'vitest';
import type { YardFile } from '../../../shared/yard-file.ts';
import { apply } from '../../../src/engine/book/apply.ts';
import { throwAway } from '../../../src/engine/book/throw-away.ts';
import { plannedYard, saturday } from '../../support/planned-yard.ts';

const filled = (mould: string) => ({
  ...{ mould, casting: 'panel-900', order: null, coated: true, filledAt: saturday('09:29') },
});
const work = { bags: 1, pours: [filled('900 no. 1'), filled('900 no. 2')] };

/** At 9:20, nine minutes before its last mould was to be full. */
const yard = (changes: Partial<YardFile> = {}): YardFile => {
  const base = plannedYard();
  const moulds = base.moulds.map((mould) => ({ ...mould, condition: 'ready' as const, prepped: true }));
  return { ...base, yard: { ...base.yard, now: saturday('09:20') }, moulds, ...changes };
};

/* A bag and two sheets of mesh of 0.16 m2 less; no piece, two moulds to clean, no turn more than before. */
test('a batch that went off takes its materials, and leaves its moulds dirty and empty', () => {
  const thrown = throwAway(yard(), work, 'to clean');
  if (!thrown.ok) throw new Error(thrown.faults[0]?.message);
  const after = apply(yard(), thrown.entries);
  const onHand = (id: string) => after.materials.find((one) => one.id === id)?.onHand;
  expect(onHand('mortar')).toBe(2);
  expect(onHand('mesh')).toBeCloseTo(4 - 0.32, 9);
  expect(after.inMould).toEqual([]);
  expect(after.moulds.map(({ condition, prepped }) => [condition, prepped])).toEqual([
    ['dirty', false],
    ['dirty', false],
  ]);
  expect(after.moulds.map(({ turnsSinceOil }) => turnsSinceOil)).toEqual(
    yard().moulds.map(({ turnsSinceOil }) => turnsSinceOil),
  );
});

test('told of hours later, what it took was taken, and its bags were opened, when it was to be poured', () => {
  const [mortar, ...others] = yard().materials;
  const materials = [{ ...mortar!, onHand: 3, openedDays: 7 }, ...others];
  const late = { ...yard({ materials }).yard, now: saturday('19:00') };
  const thrown = throwAway({ ...yard({ materials }), yard: late }, { ...work, bags: 0.5 }, 'set up');
  if (!thrown.ok) throw new Error(thrown.faults[0]?.message);
  const stock = thrown.entries.flatMap((one) => (one.kind === 'stock' && one.material === 'mortar' ? [one] : []));
  expect(stock.map(({ quantity, bags, why }) => [quantity, bags?.openedAt, why.at])).toEqual([
    [-1, undefined, saturday('09:29')],
    [0.5, saturday('09:29'), saturday('09:29')],
  ]);
});

test('a mould that is out of use stays so; one that is full meanwhile was not in it', () => {
  const moulds = yard().moulds.map((mould, place) =>
    place === 0 ? { ...mould, condition: 'damaged' as const } : mould,
  );
  const thrown = throwAway(yard({ moulds }), work, 'to clean');
  if (!thrown.ok) throw new Error(thrown.faults[0]?.message);
  expect(apply(yard({ moulds }), thrown.entries).moulds.map(({ condition }) => condition)).toEqual([
    'damaged',
    'dirty',
  ]);
  const inMould = [{ mould: '900 no. 1', casting: 'panel-900', filledAt: saturday('08:00') }];
  expect(throwAway(yard({ inMould }), work, 'to clean')).toMatchObject({ ok: false, faults: [{ path: 'pours' }] });
});

/* Nothing was in the moulds: the bag alone is gone. */
test('moulds in which nothing was stay set up, and what lies in them stays there', () => {
  const thrown = throwAway(yard({ moulds: plannedYard().moulds }), work, 'set up');
  if (!thrown.ok) throw new Error(thrown.faults[0]?.message);
  const after = apply(yard(), thrown.entries);
  const onHand = (id: string) => after.materials.find((one) => one.id === id)?.onHand;
  expect([onHand('mortar'), onHand('mesh')]).toEqual([2, 4]);
  expect(after.inMould).toEqual([]);
  expect(after.moulds.map(({ condition, prepped }) => [condition, prepped])).toEqual([
    ['ready', true],
    ['ready', true],
  ]);
});
