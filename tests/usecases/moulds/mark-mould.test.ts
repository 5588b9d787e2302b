import { describe, expect, test } from 'vitest';
import { mouldById } from '../../../db/stores/mould-store.ts';
import type { YardFileInput } from '../../../shared/yard-file.ts';
import { type MarkDetails, type MouldMark, markMould } from '../../../src/usecases/moulds/mark-mould.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { smallYard } from '../../support/small-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

const base = smallYard();
const NOTHING: MarkDetails = { note: '', repairedOn: null, cameOut: null };
const first = (more: Partial<YardFileInput['moulds'][number]>): Partial<YardFileInput> => ({
  moulds: [{ ...base.moulds[0]!, ...more }, base.moulds[1]!],
});
const holding = { inMould: [{ mould: '900 no. 1', casting: 'panel-900', filledAt: '2027-04-08T08:00:00+01:00' }] };

/** Marks 900 no. 1 and gives what came of it, as the words of the change or of the refusal, and the mould after it. */
const marked = async (mark: MouldMark, changes: Partial<YardFileInput>, details: Partial<MarkDetails> = {}) => {
  const context = await yardContext(smallYard(changes));
  const outcome = await markMould(context, '900 no. 1', mark, { ...NOTHING, ...details });
  const mould = await context.database.read((tx) => mouldById(tx, '900 no. 1'));
  return { outcome, refusal: refusalOf(outcome), mould };
};

describe('a mould marked', () => {
  test('cleaned is ready and has to be set up', async () => {
    const { outcome, mould } = await marked('cleaned', first({ condition: 'dirty' }));
    expect(doneOf(outcome).words).toBe('900 no. 1 marked cleaned');
    expect(mould).toMatchObject({ condition: 'ready', prepped: false });
  });

  test('sealed begins its turns anew, and is clean', async () => {
    const { mould } = await marked('sealed', first({ condition: 'dirty', oilEveryTurns: 8, turnsSinceOil: 8 }));
    expect(mould).toMatchObject({ condition: 'ready', turnsSinceOil: 0, prepped: false });
    expect((await marked('sealed', first({ condition: 'damaged' }))).mould?.condition).toBe('damaged');
  });

  test('damaged is out of the plan until the day it is mended', async () => {
    const { outcome, mould } = await marked('damaged', {}, { note: 'end split', repairedOn: '2027-04-12' });
    expect(mould).toMatchObject({ condition: 'damaged', damageNote: 'end split', repairedOn: '2027-04-12' });
    expect(doneOf(outcome).plan.pours.some((pour) => pour.fillStart < '2027-04-12' && pour.mould === '900 no. 1')).toBe(
      false,
    );
  });

  test('mended is ready, and its damage is forgotten', async () => {
    const { mould } = await marked('mended', first({ condition: 'damaged', repairedOn: '2027-04-12' }));
    expect(mould).toMatchObject({ condition: 'ready', repairedOn: null, damageNote: null, prepped: false });
  });

  test('scrapped with a piece in it that is no good is empty', async () => {
    const { mould } = await marked('scrapped', holding, { cameOut: 'scrap' });
    expect(mould).toMatchObject({ condition: 'retired', piece: null });
    expect((await marked('scrapped', holding, { cameOut: 'good' })).mould?.piece).not.toBe(null);
  });
});

test.each<[string, MouldMark, Partial<YardFileInput>, Partial<MarkDetails>, RegExp]>([
  ['cleaned with a piece in it', 'cleaned', holding, {}, /^mark: 900 no. 1 has a piece in it\./],
  ['cleaned when it is clean', 'cleaned', {}, {}, /was not waiting to be cleaned/],
  ['sealed with a piece in it', 'sealed', holding, {}, /Strip it first, then it can be sealed/],
  ['sealed when it is scrapped', 'sealed', first({ condition: 'retired' }), {}, /is scrapped/],
  ['damaged until a day that has passed', 'damaged', {}, { repairedOn: '2027-04-07' }, /^repairedOn: /],
  ['damaged with a piece nobody speaks of', 'damaged', holding, {}, /^cameOut: /],
  ['mended when it is whole', 'mended', {}, {}, /was not out of use/],
])('%s is refused', async (_, mark, changes, details, why) => {
  const { refusal, mould } = await marked(mark, changes, details);
  expect(refusal).toMatch(why);
  expect(mould?.condition).toBe(smallYard(changes).moulds[0]!.condition);
});
