import { describe, expect, test } from 'vitest';
import type { Mould } from '../../../shared/mould.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { type MarkDetails, type MouldMark, mark } from '../../../src/engine/book/mark.ts';
import { plannedYard, saturday } from '../../support/planned-yard.ts';

const NO_1 = '900 no. 1';
/** Saturday 10 April 2027, with something about no. 1. */
const yardWith = (changes: Partial<Mould>, isFull = false): YardFile => {
  const yard = plannedYard();
  return {
    ...{ ...yard, yard: { ...yard.yard, now: saturday('10:45') } },
    moulds: yard.moulds.map((mould) => (mould.id === NO_1 ? { ...mould, ...changes } : mould)),
    inMould: isFull ? [{ mould: NO_1, casting: 'panel-900', filledAt: saturday('09:22'), order: '27-001' }] : [],
  };
};
const marked = (yard: YardFile, what: MouldMark, details: Partial<MarkDetails> = {}) => {
  const booked = mark(yard, NO_1, what, { note: '', repairedOn: null, cameOut: null, ...details });
  return booked.ok ? booked.entries : booked.faults.map(({ path, message }) => `${path}: ${message}`);
};
const patch = (change: object) => ({ kind: 'mould', mould: NO_1, patch: { ...change, prepped: false } });
const full = (what: string) => [`mark: ${NO_1} has a piece in it. Strip it first, then it can be ${what}.`];

describe('a mould cleaned', () => {
  test('is ready, where it was dirty and empty', () => {
    expect(marked(yardWith({ condition: 'dirty' }), 'cleaned')).toEqual([patch({ condition: 'ready' })]);
    expect(marked(yardWith({}), 'cleaned')).toEqual([
      `mark: ${NO_1} was not waiting to be cleaned. Nothing was changed.`,
    ]);
    expect(marked(yardWith({ condition: 'dirty' }, true), 'cleaned')).toEqual(full('cleaned'));
  });
});

describe('a mould sealed', () => {
  test('has a coat of no turns, and a dirty one is clean', () => {
    expect(marked(yardWith({ turnsSinceOil: 5, prepped: true }), 'sealed')).toEqual([patch({ turnsSinceOil: 0 })]);
    expect(marked(yardWith({ condition: 'dirty' }), 'sealed')).toEqual([
      patch({ turnsSinceOil: 0, condition: 'ready' }),
    ]);
  });

  test('that is damaged stays so', () => {
    expect(marked(yardWith({ condition: 'damaged' }), 'sealed')).toEqual([patch({ turnsSinceOil: 0 })]);
  });

  test('is empty, and not scrapped', () => {
    expect(marked(yardWith({}, true), 'sealed')).toEqual(full('sealed'));
    expect(marked(yardWith({ condition: 'retired' }), 'sealed')).toEqual([
      `mark: ${NO_1} is scrapped. Mark it mended first.`,
    ]);
  });
});

describe('a mould damaged', () => {
  test('is out of use with its note until its day', () => {
    expect(marked(yardWith({}), 'damaged', { note: 'split', repairedOn: '2027-04-17' })).toEqual([
      patch({ condition: 'damaged', repairedOn: '2027-04-17', damageNote: 'split' }),
    ]);
    expect(marked(yardWith({}), 'damaged')).toEqual([
      patch({ condition: 'damaged', repairedOn: null, damageNote: null }),
    ]);
  });

  test('is mended today or later, not before today', () => {
    expect(marked(yardWith({}), 'damaged', { repairedOn: '2027-04-10' })).toEqual([
      patch({ condition: 'damaged', repairedOn: '2027-04-10', damageNote: null }),
    ]);
    expect(marked(yardWith({}), 'damaged', { repairedOn: '2027-04-09' })).toEqual([
      'repairedOn: That day has passed. Leave it empty when nobody knows.',
    ]);
  });

  test('with a piece in it asks whether that is good, and keeps a good one until it is stripped', () => {
    const out = patch({ condition: 'damaged', repairedOn: null, damageNote: null });
    const yard = yardWith({}, true);
    expect(marked(yard, 'damaged')).toEqual([`cameOut: Say whether the piece in ${NO_1} is good.`]);
    expect(marked(yard, 'damaged', { cameOut: 'good' })).toEqual([out]);
    const emptied = { kind: 'emptied', mould: NO_1 };
    expect(marked(yard, 'damaged', { cameOut: 'scrap' })).toEqual([emptied, out]);
    const piece = { casting: 'panel-900', mould: NO_1, filledAt: saturday('09:22'), strippedAt: saturday('10:45') };
    expect(marked(yard, 'damaged', { cameOut: 'mend' })).toEqual([
      emptied,
      { kind: 'put aside', piece: { ...piece, reason: null } },
      out,
    ]);
  });
});

describe('a mould scrapped or mended', () => {
  test('scrapped has no day to be mended, and keeps the note it had unless there is more to say', () => {
    expect(marked(yardWith({}), 'scrapped')).toEqual([patch({ condition: 'retired', repairedOn: null })]);
    expect(marked(yardWith({}), 'scrapped', { note: 'split' })).toEqual([
      patch({ condition: 'retired', repairedOn: null, damageNote: 'split' }),
    ]);
  });

  test('mended is ready, and its damage forgotten; it was out of use', () => {
    const ready = patch({ condition: 'ready', repairedOn: null, damageNote: null });
    expect(marked(yardWith({ condition: 'damaged' }), 'mended')).toEqual([ready]);
    expect(marked(yardWith({ condition: 'retired' }), 'mended')).toEqual([ready]);
    expect(marked(yardWith({}), 'mended')).toEqual([`mark: ${NO_1} was not out of use. Nothing was changed.`]);
  });
});

test('a mould that is not there cannot be marked', () => {
  expect(mark(yardWith({}), 'none', 'cleaned', { note: '', repairedOn: null, cameOut: null })).toEqual({
    ok: false,
    faults: [{ path: 'mark', message: 'There is no mould none.' }],
  });
});
