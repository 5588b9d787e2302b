import { describe, expect, test } from 'vitest';
import { recordsOfMark, recordsOfWork } from '../../../src/engine/book/work-records.ts';
import { plannedYard, saturday } from '../../support/planned-yard.ts';

const yard = plannedYard();
const full = { ...yard, inMould: [{ mould: '900 no. 1', casting: 'panel-900', filledAt: saturday('09:00') }] };
const filled = (mould: string, coated: boolean, clock: string) => ({
  ...{ mould, casting: 'panel-900', order: null, coated, filledAt: saturday(clock) },
});
const NOTHING = { note: '', repairedOn: null, cameOut: null };

describe('what was done leaves in the record', () => {
  test('a batch with its bags, as many as its pieces need where nobody said, and the coat that nobody told of', () => {
    const pours = [filled('900 no. 1', true, '09:00'), filled('900 no. 2', false, '09:10')];
    const [coat, batch] = recordsOfWork({ kind: 'poured', pours, bags: null }, yard);
    expect(coat).toEqual({ kind: 'coated', at: saturday('09:00'), mould: '900 no. 1' });
    expect(batch).toMatchObject({ kind: 'poured', at: saturday('09:10'), mix: yard.mixes[0]!.id });
    expect(batch).toMatchObject({ pours: [{ filledAt: saturday('09:00') }, { filledAt: saturday('09:10') }] });
    expect((batch as { bags: number }).bags).toBeGreaterThan(0);
  });

  test('a strip with the piece that was in the mould; a good one has no reason', () => {
    const strip = { kind: 'stripped' as const, mould: '900 no. 1', reason: 'corner', doneAt: saturday('11:00') };
    expect(recordsOfWork({ ...strip, cameOut: 'mend' }, full)).toEqual([
      {
        ...{ kind: 'stripped', at: saturday('11:00'), mould: '900 no. 1', casting: 'panel-900' },
        ...{ filledAt: saturday('09:00'), cameOut: 'mend', reason: 'corner' },
      },
    ]);
    expect(recordsOfWork({ ...strip, cameOut: 'good' }, full)[0]).not.toHaveProperty('reason');
    expect(recordsOfWork({ ...strip, cameOut: 'good' }, yard)).toEqual([]);
  });

  test('a mark; the piece that is lost with the mould comes first', () => {
    const lost = recordsOfMark('900 no. 1', 'damaged', { ...NOTHING, note: 'split', cameOut: 'scrap' }, full);
    expect(lost.map(({ kind }) => kind)).toEqual(['stripped', 'marked']);
    expect(lost[0]).toMatchObject({ cameOut: 'scrap', reason: 'split', filledAt: saturday('09:00') });
    const good = recordsOfMark('900 no. 1', 'damaged', { ...NOTHING, cameOut: 'good' }, full);
    expect(good).toEqual([{ kind: 'marked', at: yard.yard.now, mould: '900 no. 1', mark: 'damaged' }]);
  });

  test('a mould that is marked sealed was coated', () => {
    expect(recordsOfMark('900 no. 1', 'sealed', NOTHING, yard)).toEqual([
      { kind: 'coated', at: yard.yard.now, mould: '900 no. 1' },
    ]);
  });
});
