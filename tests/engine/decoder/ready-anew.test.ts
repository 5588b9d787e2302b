import { describe, expect, test } from 'vitest';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFileInput } from '../../../shared/yard-file.ts';
import { compile } from '../../../src/engine/decoder/compile.ts';
import { smallYard } from '../../support/small-yard.ts';

type Keep = NonNullable<YardFileInput['keep']>;
const base = smallYard();
const saturday = (clock: string) => `2027-04-10T${clock}:00+01:00`;
const minute = (clock: string) => minuteOf(saturday(clock));

/** Set up from 9:00 and 9:12, 12 minutes each; mixed at 9:30 and filled 9:40 to 9:54, by one person, in 8:00 to 12:00. */
const pour = (no: number, prep: [string, string], fill: [string, string]): Keep['pours'][number] => ({
  ...{ id: `P${no}`, batch: 'B1', mould: `900 no. ${no}`, casting: 'panel-900', order: '27-001' },
  ...{ prepStart: saturday(prep[0]), prepEnd: saturday(prep[1]) },
  ...{ fillStart: saturday(fill[0]), fillEnd: saturday(fill[1]) },
  ...{ stripStart: saturday('11:20'), stripEnd: saturday('11:28'), pieceReadyAt: saturday('11:28') },
});
const batch: Keep['batches'][number] = {
  ...{ id: 'B1', mix: 'thin', start: saturday('09:30'), mixEnd: saturday('09:40'), end: saturday('09:54') },
  ...{ bags: 1, kg: 27.2, pours: ['P1', 'P2'] },
};
const keep: Keep = {
  batches: [batch],
  pours: [pour(1, ['09:00', '09:12'], ['09:40', '09:47']), pour(2, ['09:12', '09:24'], ['09:47', '09:54'])],
};
const firstMould = (more: Partial<YardFileInput['moulds'][number]>): Partial<YardFileInput> => ({
  moulds: [{ ...base.moulds[0]!, ...more }, base.moulds[1]!],
});
const standing = (changes: Partial<YardFileInput>, firm?: Keep) => {
  const { batches, dropped, coats } = compile(smallYard({ keep, ...changes }), { firm: firm as never }).fixed;
  const first = batches[0]?.pours[0];
  const coat = first?.coat ? [first.coat.start, first.coat.minutes] : null;
  return { first: first && { prep: [first.prepStart, first.prepMinutes], coat }, dropped, coats };
};

describe('the mould of a pour that stands', () => {
  test('is set up as it was planned where nothing has changed', () => {
    expect(standing({}).first).toEqual({ prep: [minute('09:00'), 12], coat: null });
  });

  /* Cleaning takes 6 minutes: 18 until 9:12. */
  test('takes longer where it is dirty now, and is set up as soon as it was', () => {
    expect(standing(firstMould({ condition: 'dirty' })).first).toEqual({ prep: [minute('08:54'), 18], coat: null });
  });

  test('has nothing done to it where it is set up already', () => {
    expect(standing(firstMould({ prepped: true })).first).toEqual({ prep: [minute('09:30'), 0], coat: null });
  });

  /* 9 minutes of coating and cleaning, dry after 20, then 12 of setting up that end at 9:12: nothing of it is to be cleaned. */
  test('is coated first where that is due now', () => {
    const due = firstMould({
      condition: 'dirty',
      oilEveryTurns: 3,
      turnsSinceOil: 3,
      oilMinutes: 3,
      oilDryMinutes: 20,
    });
    expect(standing(due).first).toEqual({ prep: [minute('09:00'), 12], coat: [minute('08:31'), 9] });
  });

  /* The coat was for a pour of 8:50 that is gone; it stays where it was. */
  test('gets the coat of a pour before it that is gone, when that was to be', () => {
    const due = firstMould({ oilEveryTurns: 3, turnsSinceOil: 3, oilMinutes: 5, oilDryMinutes: 20 });
    const coats = [{ mould: '900 no. 1', start: saturday('08:03'), end: saturday('08:08') }];
    const kept = standing({ ...due, keep: { ...keep, coats } });
    expect(kept).toMatchObject({ first: { coat: [minute('08:03'), 5] }, dropped: [], coats: [] });
  });

  /* Cleaning of 70 minutes and 12 more by 9:30: from 8:08 on at the latest, when the one person has no. 2 to set up at 9:12. */
  test('goes without its pour where nobody has the time: what else is to be done stays', () => {
    const castings = [{ ...base.castings[0]!, cleanMinutes: 70 }];
    const { first, dropped } = standing({ ...firstMould({ condition: 'dirty' }), castings });
    expect(first).toBeUndefined();
    expect(dropped).toMatchObject([{ batch: 'B1', reason: 'setting up mould 900 no. 1 takes another time now' }]);
  });

  test('is made ready as planned or not at all where that is fixed', () => {
    const { dropped } = standing(firstMould({ condition: 'dirty' }), keep);
    expect(dropped).toMatchObject([{ batch: 'B1', reason: 'setting up mould 900 no. 1 takes another time now' }]);
  });

  test('is coated for nothing only where that coat is fixed', () => {
    const coats = [{ mould: '900 no. 2', start: saturday('10:00'), end: saturday('10:05') }];
    const oiled = { oilEveryTurns: 9, turnsSinceOil: 3, oilMinutes: 5, oilDryMinutes: 20 };
    const moulds = [base.moulds[0]!, { ...base.moulds[1]!, ...oiled }];
    const kept = { batches: [], pours: [], coats };
    expect(standing({ moulds, keep: kept }).coats).toEqual([]);
    expect(standing({ moulds, keep: kept }, kept).coats).toEqual([{ mould: 1, start: minute('10:00'), minutes: 5 }]);
  });
});

/* A piece in mould no. 1 is stripped at 8:30, a batch is poured there at 9:30 and another at 11:20. The first cannot stay. */
test('what is in a mould is stripped when it was to be, also where the pour after that falls out', () => {
  const [first] = keep.pours;
  const strips = [{ mould: '900 no. 1', stripStart: saturday('08:30'), stripEnd: saturday('08:38') }];
  const inMould = [{ mould: '900 no. 1', casting: 'panel-900', filledAt: '2027-04-07T10:00:00+01:00' }];
  const kept = {
    batches: [
      { ...batch, pours: ['P1'], kg: 13.6, end: saturday('09:59') },
      { ...batch, id: 'B2', pours: ['P3'], kg: 13.6, start: saturday('11:20'), end: saturday('11:37') },
    ],
    pours: [
      { ...first!, prepStart: saturday('08:54'), stripStart: saturday('11:02'), stripEnd: saturday('11:10') },
      {
        ...{ ...first!, id: 'P3', batch: 'B2', prepStart: saturday('11:02'), prepEnd: saturday('11:20') },
        ...{ fillStart: saturday('11:30'), fillEnd: saturday('11:37') },
      },
    ],
    strips,
  };
  const { fixed } = compile({ ...smallYard({ inMould }), keep: kept as never });
  expect(fixed.dropped).toMatchObject([{ batch: 'B1', reason: 'it takes another time now' }]);
  expect(fixed.stripNow.get(0)).toBe(minute('08:30'));
  expect(fixed.batches.map(({ pours }) => pours[0]!.stripFirst)).toEqual([minute('08:30')]);
});
