import { describe, expect, test } from 'vitest';
import type { CameOut } from '../../../shared/piece-to-mend.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { strip } from '../../../src/engine/book/strip.ts';
import { plannedYard, saturday } from '../../support/planned-yard.ts';

/** No. 1 is full since 9:22, for the order. It is 10:45. */
const yardWith = (changes: Partial<YardFile> = {}): YardFile => {
  const yard = plannedYard();
  return {
    ...{ ...yard, yard: { ...yard.yard, now: saturday('10:45') } },
    inMould: [{ mould: '900 no. 1', casting: 'panel-900', filledAt: saturday('09:22'), order: '27-001' }],
    ...changes,
  };
};
const stripped = (yard: YardFile, cameOut: CameOut = 'good', reason = '') => {
  const booked = strip(yard, { mould: '900 no. 1', cameOut, reason, doneAt: saturday('10:44') });
  if (!booked.ok) throw new Error(booked.faults[0]?.message);
  return booked.entries;
};
const dirty = {
  ...{ kind: 'mould', mould: '900 no. 1' },
  patch: { condition: 'dirty', prepped: false, setFor: 'panel-900', emptiedAt: saturday('10:44') },
};

describe('a piece that is out of its mould', () => {
  test('and good is in the yard for its order, and the mould is to be cleaned', () => {
    expect(stripped(yardWith())).toEqual([
      { kind: 'emptied', mould: '900 no. 1' },
      {
        kind: 'pieces in',
        lot: { casting: 'panel-900', readyAt: null, order: '27-001' },
        mark: { mould: '900 no. 1', filledAt: saturday('09:22') },
        count: 1,
      },
      dirty,
    ]);
  });

  test('cures on until it is fit to go out, two hours after it was full', () => {
    const yard = yardWith();
    const slow = { ...yard, mixes: yard.mixes.map((mix) => ({ ...mix, cureHours: 2 })) };
    expect(stripped(slow)[1]).toMatchObject({ lot: { readyAt: saturday('11:22') } });
  });

  test('and to be mended is kept aside with the reason, where there is one', () => {
    const aside = { casting: 'panel-900', mould: '900 no. 1', filledAt: saturday('09:22') };
    const piece = { ...aside, strippedAt: saturday('10:44') };
    expect(stripped(yardWith(), 'mend', 'chipped')[1]).toEqual({
      kind: 'put aside',
      piece: { ...piece, reason: 'chipped' },
    });
    expect(stripped(yardWith(), 'mend')[1]).toEqual({ kind: 'put aside', piece: { ...piece, reason: null } });
  });

  test('and scrap is gone', () => {
    expect(stripped(yardWith(), 'scrap')).toEqual([{ kind: 'emptied', mould: '900 no. 1' }, dirty]);
  });

  test('leaves a damaged mould damaged', () => {
    const yard = yardWith();
    const damaged = { ...yard, moulds: yard.moulds.map((mould) => ({ ...mould, condition: 'damaged' as const })) };
    expect(stripped(damaged)[2]).toMatchObject({ patch: { condition: 'damaged' } });
  });

  test('was in it by the book', () => {
    const booked = strip(yardWith({ inMould: [] }), {
      ...{ mould: '900 no. 1', cameOut: 'good', reason: '', doneAt: saturday('10:44') },
    });
    expect(booked).toEqual({
      ok: false,
      faults: [{ path: 'mould', message: '900 no. 1 has no piece in it by the stock book. Nothing was changed.' }],
    });
  });
});
