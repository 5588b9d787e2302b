import { describe, expect, test } from 'vitest';
import type { WorkRecord } from '../../../shared/work-record.ts';
import { mouldHistory } from '../../../src/usecases/moulds/mould-history.ts';

const at = (day: number, clock = '10:00') => `2027-04-${String(day).padStart(2, '0')}T${clock}:00+01:00`;
const NOW = at(30);

const poured = (day: number, ...moulds: string[]): WorkRecord => ({
  ...{ kind: 'poured', at: at(day), mix: 'rapid', bags: 1 },
  pours: moulds.map((mould) => ({ mould, casting: 'panel', filledAt: at(day) })),
});

const stripped = (day: number, mould: string, cameOut: 'good' | 'mend' | 'scrap', reason?: string): WorkRecord => ({
  ...{ kind: 'stripped', at: at(day, '15:00'), mould, casting: 'panel', filledAt: at(day), cameOut },
  ...(reason === undefined ? {} : { reason }),
});

const marked = (day: number, mark: 'damaged' | 'mended' | 'scrapped'): WorkRecord => ({
  ...{ kind: 'marked', at: at(day), mould: 'A', mark },
});

/** So many turns of a mould, the first few of them scrapped. */
const turns = (mould: string, count: number, scrapped: number): WorkRecord[] =>
  Array.from({ length: count }, (_, index) => ({
    ...{ kind: 'stripped' as const, at: NOW, mould, casting: 'panel' },
    filledAt: `2027-04-01T10:${String(index).padStart(2, '0')}:00+01:00`,
    cameOut: index < scrapped ? ('scrap' as const) : ('good' as const),
  }));

test('a turn is a piece that came out, and what became of it last is what counts', () => {
  const mended: WorkRecord = {
    ...{ kind: 'after mending', at: at(3), mould: 'A', casting: 'panel', filledAt: at(1), cameOut: 'good' },
  };
  const lost: WorkRecord = {
    ...{ kind: 'after mending', at: at(3), mould: 'A', casting: 'panel', filledAt: at(2), cameOut: 'scrap' },
  };
  const records = [stripped(1, 'A', 'mend', 'corner'), stripped(2, 'A', 'mend', 'corner'), mended, lost];
  expect(mouldHistory(records, 'A', NOW)).toMatchObject({
    ...{ turns: 2, scrapped: 1, reasons: [{ name: 'corner', count: 2 }] },
  });
});

test('an instant written with another offset is the same piece', () => {
  const first = stripped(1, 'A', 'mend');
  const later: WorkRecord = {
    ...{ kind: 'after mending', at: at(3), mould: 'A', casting: 'panel', cameOut: 'scrap' },
    filledAt: '2027-04-01T09:00:00Z',
  };
  expect(mouldHistory([first, later], 'A', NOW)).toMatchObject({ turns: 1, scrapped: 1 });
});

describe('its share of scrapped pieces beside that of the others', () => {
  test.each([
    // Wilson, 95 %: 5 of 31 is 0.071 to 0.326; 1 of 31 is 0.006 to 0.162; 0 of 31 is 0 to 0.110.
    [5, 31, 3, 60, 'more'],
    [1, 31, 3, 60, null],
    [0, 31, 12, 60, 'fewer'],
    [1, 2, 3, 60, 'more'],
    [1, 1, 0, 0, null],
  ] as const)('%i of %i, and %i of %i', (scrapped, of, others, ofOthers, differs) => {
    const records = [...turns('A', of, scrapped), ...turns('B', ofOthers, others)];
    expect(mouldHistory(records, 'A', NOW).differs).toBe(differs);
  });
});

describe('days out of use', () => {
  test.each([
    [[marked(1, 'damaged'), marked(4, 'mended')], 3],
    [[marked(1, 'damaged'), marked(2, 'damaged'), marked(4, 'mended'), marked(28, 'damaged')], 5],
    [[marked(20, 'scrapped')], 10],
    [[], 0],
  ])('case %#', (records, days) => expect(mouldHistory(records, 'A', NOW).daysOut).toBe(days));
});

test('the newest is first, where it was done and not where it was told, and nothing of other moulds is there', () => {
  const records = [poured(5, 'A', 'B'), stripped(5, 'A', 'good'), stripped(5, 'B', 'good'), poured(2, 'A')];
  expect(mouldHistory(records, 'A', NOW).entries.map(({ kind, at: when }) => [kind, when])).toEqual([
    ['stripped', at(5, '15:00')],
    ['poured', at(5)],
    ['poured', at(2)],
  ]);
});

test('who did it stands with it, as far as somebody said; so does a look that came too soon', () => {
  const look: WorkRecord = { kind: 'not hard', at: at(1, '14:00'), mould: 'A', casting: 'panel', filledAt: at(1) };
  const records: WorkRecord[] = [
    { ...poured(1, 'A'), by: 'Ben', doneBy: 'Anna' } as WorkRecord,
    { ...look, doneBy: 'Anna' },
    stripped(1, 'A', 'good'),
  ];
  expect(mouldHistory(records, 'A', NOW).entries.map(({ kind, by }) => [kind, by])).toEqual([
    ['stripped', null],
    ['not hard', 'Anna'],
    ['poured', 'Ben'],
  ]);
});
