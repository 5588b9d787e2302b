import { describe, expect, test } from 'vitest';
import type { YardFileInput } from '../../../shared/yard-file.ts';
import { asMouldsStand } from '../../../src/usecases/plan/fixed-pours.ts';
import { smallYard } from '../../support/small-yard.ts';

const base = smallYard();
const saturday = (clock: string) => `2027-04-10T${clock}:00+01:00`;
const times = { stripStart: saturday('11:00'), stripEnd: saturday('11:08'), pieceReadyAt: saturday('11:08') };

/** 900 no. 1 with a sealing coat of ten minutes from 08:00, dry at 08:40, set up from 08:40 to 08:52, full at 09:09. */
const fixed = {
  batch: {
    ...{ id: 'B1', mix: 'thin', start: saturday('08:52'), mixEnd: saturday('09:02'), end: saturday('09:09') },
    ...{ bags: 1, kg: 13.6, pours: ['P1'] },
  },
  pours: [
    {
      ...{ id: 'P1', batch: 'B1', mould: '900 no. 1', casting: 'panel-900', order: '27-001' },
      ...{ prepStart: saturday('08:40'), prepEnd: saturday('08:52') },
      ...{ fillStart: saturday('09:02'), fillEnd: saturday('09:09'), ...times },
    },
  ],
};
const coats = [{ mould: '900 no. 1', start: saturday('08:00'), end: saturday('08:10') }];
const coated = { oilEveryTurns: 3, oilMinutes: 10, oilDryMinutes: 30 };
const setUp = (mould: Partial<YardFileInput['moulds'][number]>) => {
  const yard = smallYard({ moulds: [{ ...base.moulds[0]!, ...coated, ...mould }, base.moulds[1]!] });
  const { mixes, coats: given } = asMouldsStand(yard, [fixed], coats);
  const { prepStart, prepEnd } = mixes[0]!.pours[0]!;
  const coat = given.map(({ start, end }) => `${start.slice(11, 16)}-${end.slice(11, 16)}`);
  return [coat[0] ?? 'no coat', prepStart.slice(11, 16), prepEnd.slice(11, 16)];
};

describe('the set-up of a fixed pour, as the mould stands now', () => {
  test('keeps its coat where the mould has had none since its last turns', () => {
    expect(setUp({ turnsSinceOil: 3 })).toEqual(['08:00-08:10', '08:40', '08:52']);
    expect(setUp({ turnsSinceOil: 1 })).toEqual(['08:00-08:10', '08:40', '08:52']);
  });

  // Six minutes of cleaning that were not in the plan: the coat would end at 08:10, so it would begin at 07:54.
  test('has its mould cleaned before the coat where it is dirty now', () => {
    expect(setUp({ turnsSinceOil: 3, condition: 'dirty' })).toEqual(['07:54-08:10', '08:40', '08:52']);
  });

  // Marked sealed on Friday: a second coat on top of a fresh one would be work for nothing.
  test('has no second coat where the mould was sealed meanwhile', () => {
    expect(setUp({ turnsSinceOil: 0 })).toEqual(['no coat', '08:40', '08:52']);
  });

  test('is the one that is under way, at its very times', () => {
    const preps = [
      { mould: '900 no. 1', casting: 'panel-900', prepStart: saturday('08:40'), prepEnd: saturday('08:52') },
    ];
    const begun = { batches: [], pours: [], strips: [], packs: [], preps, coats: [] };
    const yard = smallYard({ yard: { ...base.yard, now: saturday('08:45') }, begun });
    const [mix] = asMouldsStand(yard, [fixed]).mixes;
    expect([mix!.pours[0]!.prepStart, mix!.pours[0]!.prepEnd]).toEqual([saturday('08:40'), saturday('08:52')]);
  });

  test('takes no time where the mould is set up already', () => {
    expect(setUp({ turnsSinceOil: 0, prepped: true })).toEqual(['no coat', '08:52', '08:52']);
  });
});
