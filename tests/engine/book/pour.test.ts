import { describe, expect, test } from 'vitest';
import type { YardFile } from '../../../shared/yard-file.ts';
import { bagsPoured, pour } from '../../../src/engine/book/pour.ts';
import type { Filled, PourWork } from '../../../src/engine/book/work-done.ts';
import { plannedYard, saturday } from '../../support/planned-yard.ts';

const yardAt = (clock: string, changes: Partial<YardFile> = {}): YardFile => {
  const yard = plannedYard();
  return { ...yard, yard: { ...yard.yard, now: saturday(clock) }, ...changes };
};
const filled = (changes: Partial<Filled> = {}): Filled => ({
  ...{ mould: '900 no. 1', casting: 'panel-900', order: null, coated: false, filledAt: saturday('09:22') },
  ...changes,
});
const work = (pours: Filled[] = [filled()], bags: number | null = null): PourWork => ({ pours, bags });
const faultsOf = (yard: YardFile, poured: PourWork) => {
  const booked = pour(yard, poured);
  return booked.ok ? [] : booked.faults.map(({ path, message }) => `${path}: ${message}`);
};
const entriesOf = (yard: YardFile, poured: PourWork) => {
  const booked = pour(yard, poured);
  if (!booked.ok) throw new Error(booked.faults[0]?.message);
  return booked.entries;
};
const withMould = (changes: Partial<YardFile['moulds'][number]>, yard = yardAt('10:00')): YardFile => ({
  ...yard,
  moulds: yard.moulds.map((mould) => (mould.id === '900 no. 1' ? { ...mould, ...changes } : mould)),
});

describe('a batch poured', () => {
  test('is in its moulds, each from its own fill time, and its goods are taken', () => {
    const second = filled({ mould: '900 no. 2', coated: true, filledAt: saturday('09:29'), order: '27-001' });
    const why = {
      ...{ kind: 'used', at: saturday('09:22') },
      work: { mix: 'thin', mould: '900 no. 1', at: saturday('09:29') },
    };
    expect(entriesOf(yardAt('10:00'), work([filled(), second], 1))).toEqual([
      { kind: 'filled', piece: { mould: '900 no. 1', casting: 'panel-900', filledAt: saturday('09:22') } },
      {
        ...{ kind: 'mould', mould: '900 no. 1' },
        patch: { condition: 'ready', prepped: false, setFor: 'panel-900', turnsSinceOil: 1 },
      },
      {
        kind: 'filled',
        piece: { mould: '900 no. 2', casting: 'panel-900', filledAt: saturday('09:29'), order: '27-001' },
      },
      // Its ninth turn with a coat is the first of the new one.
      {
        ...{ kind: 'mould', mould: '900 no. 2' },
        patch: { condition: 'ready', prepped: false, setFor: 'panel-900', turnsSinceOil: 1 },
      },
      { kind: 'stock', material: 'mortar', quantity: -1, why },
      { kind: 'stock', material: 'mesh', quantity: -0.16, why },
      { kind: 'stock', material: 'mesh', quantity: -0.16, why },
    ]);
  });

  test('for an order that is gone is for nobody', () => {
    expect(entriesOf(yardAt('10:00', { orders: [] }), work([filled({ order: '27-001' })]))[0]).toEqual({
      kind: 'filled',
      piece: { mould: '900 no. 1', casting: 'panel-900', filledAt: saturday('09:22') },
    });
  });

  test('takes as many bags as it needs where nobody counted them: 13.6 kg of 27.5 to a bag', () => {
    expect(bagsPoured(work(), yardAt('10:00'))?.bags).toBe(1);
    expect(bagsPoured(work([filled()], 0.5), yardAt('10:00'))?.bags).toBe(0.5);
    expect(bagsPoured(work([filled({ casting: 'unknown' })]), yardAt('10:00'))).toBeNull();
  });

  test('mends a damaged mould whose day to be mended has come, and leaves another one damaged', () => {
    const patchOf = (repairedOn: string) => entriesOf(withMould({ condition: 'damaged', repairedOn }), work())[1];
    expect(patchOf('2027-04-10')).toMatchObject({ patch: { condition: 'ready', repairedOn: null, damageNote: null } });
    expect(patchOf('2027-04-11')).toEqual({
      ...{ kind: 'mould', mould: '900 no. 1' },
      patch: { condition: 'damaged', prepped: false, setFor: 'panel-900', turnsSinceOil: 1 },
    });
  });
});

describe('a batch is refused', () => {
  test('with nothing ticked, or of pieces that are not in the yard', () => {
    expect(faultsOf(yardAt('10:00'), work([]))).toEqual(['pours: Tick what was poured.']);
    expect(faultsOf(yardAt('10:00'), work([filled({ casting: 'unknown' })]))).toEqual([
      'pours: Choose what was poured.',
    ]);
  });

  test('of two mixes', () => {
    const yard = yardAt('10:00');
    const [mix, casting] = [yard.mixes[0]!, yard.castings[0]!];
    const both = {
      ...yard,
      mixes: [mix, { ...mix, id: 'thick' }],
      castings: [casting, { ...casting, id: 'kerb', mix: 'thick' }],
    };
    const kerb = filled({ mould: '900 no. 2', casting: 'kerb' });
    expect(faultsOf(both, work([filled(), kerb]))).toEqual([
      'pours: These pieces are of different mixes. Record one batch at a time.',
    ]);
  });

  test('with a mould that is named twice, full, scrapped, not there, or of other pieces', () => {
    const yard = yardAt('10:00');
    expect(faultsOf(yard, work([filled(), filled()]))).toEqual(['pours: A mould is in it twice.']);
    const inMould = [{ mould: '900 no. 1', casting: 'panel-900', filledAt: saturday('08:00') }];
    expect(faultsOf({ ...yard, inMould }, work())).toEqual([
      'pours: 900 no. 1 has a piece in it already. Nothing was recorded.',
    ]);
    expect(faultsOf(withMould({ condition: 'retired' }), work())).toEqual([
      'pours: 900 no. 1 is scrapped. Nothing was recorded.',
    ]);
    expect(faultsOf(yard, work([filled({ mould: 'none' })]))).toEqual(['pours: There is no mould none.']);
    expect(faultsOf(withMould({ makes: [] }), work())).toEqual([
      'pours: 900 no. 1 does not make that piece. Nothing was recorded.',
    ]);
  });

  // A batch of this mix is one bag at most.
  test.each([
    [1, true],
    [1.5, false],
    [0, false],
    [-1, false],
  ])('with %d bags: fits %o', (bags, fits) => {
    expect(faultsOf(yardAt('10:00'), work([filled()], bags))).toEqual(
      fits ? [] : ['bags: How many bags? Above 0, up to 1 at once.'],
    );
  });

  test('with no bags, unless its pieces weigh nothing', () => {
    const yard = yardAt('10:00');
    const weightless = { ...yard, castings: yard.castings.map((casting) => ({ ...casting, kg: 0 })) };
    expect(faultsOf(weightless, work([filled()], 0))).toEqual([]);
  });

  test('full at a time to come: a minute after now, not now', () => {
    expect(faultsOf(yardAt('09:22'), work())).toEqual([]);
    expect(faultsOf(yardAt('09:21'), work())).toEqual(['filledAt: That time is still to come.']);
  });
});
