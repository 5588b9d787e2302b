import { describe, expect, test } from 'vitest';
import { recentChanges } from '../../../db/stores/change-store.ts';
import { updateMould } from '../../../db/stores/mould-store.ts';
import { minuteOf } from '../../../shared/time.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { done, type Outcome, type UseCaseContext } from '../../../src/usecases/core/context.ts';
import { markMould } from '../../../src/usecases/moulds/mark-mould.ts';
import { takeOrder } from '../../../src/usecases/orders/take-order.ts';
import { changing } from '../../../src/usecases/plan/changing.ts';
import { fixedMixes } from '../../../src/usecases/plan/fixed-plan.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { planSessionAnew } from '../../../src/usecases/today/plan-session-anew.ts';
import { recordPour } from '../../../src/usecases/today/record-pour.ts';
import { fixHours } from '../../../src/usecases/yard/fix-hours.ts';
import { BLANK_DRAFT } from '../../support/blank-draft.ts';
import { FRIDAY, fixedYard, SATURDAY_START } from '../../support/fixed-yard.ts';
import { handPlan, plannedYard, saturday } from '../../support/planned-yard.ts';
import { doAnyway } from '../../support/saving.ts';

const kept = <T>(outcome: Outcome<T>): T => {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.faults));
  return outcome.value;
};

const order = (quantity: number) => ({
  ...BLANK_DRAFT,
  customer: 'In a hurry',
  wantedOn: '2027-04-10',
  promisedOn: '2027-04-10',
  slip: 'not' as const,
  lines: [{ row: 0, line: { casting: 'panel-900', quantity } }],
});

const take = (context: UseCaseContext, quantity: number) => doAnyway(context, takeOrder(order(quantity)));

const dropped = async ({ database }: UseCaseContext) => (await database.read((tx) => recentChanges(tx, 1)))[0]?.dropped;

describe('what is planned for a session that begins within a day', () => {
  test('stays, whatever else is taken on', async () => {
    const yard = await fixedYard();
    const before = yard.mixes(await yard.planNow());
    expect(before).toEqual(['2027-04-10T08:24 900 no. 1 + 900 no. 2']);
    const { plan } = kept(await take(yard.friday, 4));
    expect(yard.mixes(plan)).toEqual(expect.arrayContaining(before));
    expect(await dropped(yard.friday)).toEqual([]);
  });

  test('is not fixed earlier than that, nor where the yard says so', async () => {
    const yard = await fixedYard();
    const keepAt = async (now: string) => (await currentPlan(yard.at(now))).yard.keep?.batches.length ?? 0;
    expect(await keepAt('2027-04-09T07:59:00+01:00')).toBe(0);
    expect(await keepAt('2027-04-09T08:00:00+01:00')).toBe(1);
    kept(await fixHours(yard.friday, 6));
    expect(await keepAt(FRIDAY)).toBe(0);
    expect(await keepAt('2027-04-10T02:00:00+01:00')).toBe(1);
    kept(await fixHours(yard.friday, 0));
    expect(await keepAt('2027-04-10T07:59:00+01:00')).toBe(0);
    expect(await keepAt('2027-04-10T08:00:00+01:00')).toBe(1);
  });

  test('takes no number of hours that makes no sense', async () => {
    const { friday } = await fixedYard();
    for (const hours of [null, 337]) expect(await fixHours(friday, hours)).toMatchObject({ ok: false });
  });

  test('goes with the reason on record when a mould it needs is out of use', async () => {
    const yard = await fixedYard();
    const marked = kept(
      await markMould(yard.friday, '900 no. 2', 'damaged', { note: '', repairedOn: null, cameOut: null }),
    );
    expect(yard.mixes(marked.plan).some((mix) => mix.includes('900 no. 2'))).toBe(false);
    expect(await dropped(yard.friday)).toEqual([
      {
        at: '2027-04-10T08:24:00+01:00',
        moulds: ['900 no. 1', '900 no. 2'],
        reason: expect.stringMatching(/900 no. 2/),
      },
    ]);
  });

  test('stays when its mould is marked cleaned, which makes its set-up shorter', async () => {
    const moulds = ['900 no. 1', '900 no. 2'].map((id) => ({
      ...{ id, makes: [{ casting: 'panel-900' }], setFor: 'panel-900', condition: 'dirty' as const },
    }));
    const yard = await fixedYard({ moulds });
    const before = yard.mixes(await yard.planNow());
    expect(before).toHaveLength(1);
    const details = { note: '', repairedOn: null, cameOut: null };
    const { plan } = kept(await markMould(yard.friday, '900 no. 1', 'cleaned', details));
    expect(yard.mixes(plan)).toEqual(before);
    expect(await dropped(yard.friday)).toEqual([]);
  });

  test('is given up in words, not by a fault, when a mould it names no longer makes its piece', async () => {
    const yard = await fixedYard();
    const changed = kept(
      await changing(yard.friday, { kind: 'moulds', words: 'Moulds changed' }, async (tx) => {
        await updateMould(tx, '900 no. 1', { condition: 'retired' });
        return done(null);
      }),
    );
    expect(yard.mixes(changed.plan).every((mix) => !mix.includes('900 no. 1'))).toBe(true);
    expect((await dropped(yard.friday))?.[0]?.reason).toContain('900 no. 1');
  });
});

describe('a session under way', () => {
  test('goes on as planned when something is poured: what was poured is not missed', async () => {
    const yard = await fixedYard({
      orders: [{ id: '27-001', due: '2027-04-10', lines: [{ kit: 'pair', quantity: 2 }] }],
    });
    const before = yard.mixes(await yard.planNow());
    expect(before.length).toBeGreaterThan(1);
    const pours = ['900 no. 1', '900 no. 2'].map((mould) => ({
      ...{ mould, casting: 'panel-900', order: '27-001', sealed: false },
    }));
    const at = yard.at('2027-04-10T08:50:00+01:00');
    kept(await recordPour(at, { pours, bags: null, filledAt: '08:48' }));
    expect(await dropped(at)).toEqual([]);
  });
});

/* Set up for 9:05 and full by 8:58 already: what is still to come of the plan is not that batch once more. */
test('a batch that was poured before its time is no longer fixed, and nobody is told that it is gone', () => {
  const yard = plannedYard();
  const inMould = [{ mould: '900 no. 1', casting: 'panel-900', filledAt: saturday('08:58') }];
  const poured = { ...yard, yard: { ...yard.yard, now: saturday('09:00') }, inMould };
  const fixing = { yard: poured, plan: handPlan(), hours: 24, clock: minuteOf(saturday('09:00')) };
  expect(fixedMixes(fixing)).toEqual({ keep: { batches: [], pours: [] }, gone: [] });
  // What the plan had in its mould before says nothing of it.
  const strip = { mould: '900 no. 1', stripStart: saturday('08:10'), stripEnd: saturday('08:18') };
  const known = { ...handPlan(), strips: [{ ...strip, pieceReadyAt: saturday('08:18') }] };
  expect(fixedMixes({ ...fixing, plan: known }).keep.batches).toHaveLength(1);
});

describe('a session that is planned anew', () => {
  const shorter = async () => {
    const yard = await fixedYard();
    // With 900 no. 2 marked damaged and mended again, only one mould is in the plan: planned anew, both are used at once.
    const details = { note: '', repairedOn: null, cameOut: null };
    kept(await markMould(yard.friday, '900 no. 2', 'damaged', details));
    kept(await markMould(yard.friday, '900 no. 2', 'mended', details));
    return yard;
  };

  test('is another one, and undone it is the old one to the minute', async () => {
    const yard = await shorter();
    const before = yard.mixes(await yard.planNow());
    expect(before).toHaveLength(2);
    const anew = kept(await planSessionAnew(yard.friday, SATURDAY_START));
    expect(anew.words).toBe('Sat 10 Apr replanned');
    expect(yard.mixes(anew.plan)).toEqual(['2027-04-10T08:24 900 no. 1 + 900 no. 2']);
    const undone = kept(await undoChange(yard.friday, anew.change));
    expect(yard.mixes(undone.plan)).toEqual(before);
    const again = kept(await undoChange(yard.friday, undone.change));
    expect(yard.mixes(again.plan)).toEqual(['2027-04-10T08:24 900 no. 1 + 900 no. 2']);
  });

  test('is fixed again by the next change', async () => {
    const yard = await shorter();
    const anew = kept(await planSessionAnew(yard.friday, SATURDAY_START));
    kept(await take(yard.friday, 1));
    expect(yard.mixes(await yard.planNow())).toEqual(expect.arrayContaining(yard.mixes(anew.plan)));
    expect((await currentPlan(yard.friday)).yard.keep?.batches.length).toBeGreaterThan(0);
  });

  test.each(['2027-04-17T08:00:00+01:00', '2027-04-10T08:05:00+01:00', 'Saturday', ''])(
    'has to be one that is fixed: %j is refused',
    async (start) => {
      const { friday } = await fixedYard();
      expect(await planSessionAnew(friday, start)).toMatchObject({ ok: false, faults: [{ path: 'session' }] });
    },
  );
});
