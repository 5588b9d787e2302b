import { describe, expect, test } from 'vitest';
import { turnsOfPlan } from '../../../src/usecases/turns/turns-of-plan.ts';
import { handPlan, plannedYard, saturday } from '../../support/planned-yard.ts';

describe('turns', () => {
  test('stand with their mould, in order of time, with the session of their pour and strip', () => {
    const { sessions, moulds } = turnsOfPlan(plannedYard(), handPlan(), 'MO');
    expect(sessions).toEqual([
      { date: '2027-04-10', week: '2027-04-05', start: saturday('08:00'), end: saturday('12:00') },
    ]);
    expect(moulds.map(({ mould, turns }) => [mould, turns.length])).toEqual([
      ['900 no. 1', 1],
      ['900 no. 2', 1],
    ]);
    expect(moulds[0]?.turns[0]).toEqual({
      ...{ id: 'P1', mould: '900 no. 1', piece: 'Panel 900', customer: 'School garden', pouredAt: saturday('09:15') },
      ...{
        mayFrom: saturday('10:37'),
        strippedAt: saturday('10:37'),
        readyAt: saturday('10:45'),
        pourSession: 0,
        stripSession: 0,
      },
    });
    expect(moulds[1]?.turns[0]?.customer).toBeNull();
  });

  test('leave out sessions in which no mould is filled or stripped', () => {
    const plan = handPlan();
    plan.pours[1] = {
      ...plan.pours[1]!,
      stripStart: '2027-04-24T08:10:00+01:00',
      stripEnd: '2027-04-24T08:18:00+01:00',
    };
    const { sessions, moulds } = turnsOfPlan(plannedYard(), plan, 'SU');
    expect(sessions.map(({ date }) => date)).toEqual(['2027-04-10', '2027-04-24']);
    // Weeks from Sunday, as that yard says.
    expect(sessions.map(({ week }) => week)).toEqual(['2027-04-04', '2027-04-18']);
    expect(moulds[1]?.turns[0]).toMatchObject({ pourSession: 0, stripSession: 1 });
  });

  test('begin with what is in a mould now', () => {
    const yard = plannedYard({
      inMould: [{ mould: '900 no. 2', casting: 'panel-900', filledAt: '2027-04-08T08:00:00Z', order: '27-001' }],
    });
    const plan = handPlan();
    plan.unstripped = [{ mould: '900 no. 2', reason: 'no session allows it' }];
    expect(
      turnsOfPlan(yard, plan, 'MO').moulds[1]?.turns.map(
        ({ id, customer, strippedAt, pourSession, stripSession, pouredAt }) => [
          id,
          customer,
          strippedAt,
          pourSession,
          stripSession,
          pouredAt,
        ],
      ),
    ).toEqual([
      ['in-1', 'School garden', null, null, null, '2027-04-08T09:00:00+01:00'],
      ['P2', null, saturday('10:44'), 0, 0, saturday('09:22')],
    ]);
  });

  test('of a session that is over have ended, or have their piece in the mould until its strip', () => {
    const base = plannedYard();
    const yard = plannedYard({
      yard: { ...base.yard, now: saturday('12:20') },
      moulds: [...base.moulds, { ...base.moulds[0]!, id: '900 no. 3' }],
      inMould: [{ mould: '900 no. 3', casting: 'panel-900', filledAt: '2027-04-08T08:00:00Z' }],
    });
    const plan = handPlan();
    const week = { stripStart: '2027-04-17T08:10:00+01:00', stripEnd: '2027-04-17T08:18:00+01:00' };
    plan.pours[1] = { ...plan.pours[1]!, ...week };
    plan.strips = [
      {
        ...{ mould: '900 no. 3', stripStart: saturday('08:10'), stripEnd: saturday('08:18') },
        pieceReadyAt: saturday('08:18'),
      },
    ];
    const { sessions, moulds } = turnsOfPlan(yard, plan, 'MO');
    expect(sessions.map(({ date }) => date)).toEqual(['2027-04-17']);
    expect(moulds.map(({ turns }) => turns.map(({ id }) => id))).toEqual([[], ['P2'], []]);
    expect(moulds[1]?.turns[0]).toMatchObject({ pourSession: null, stripSession: 0 });
  });

  test('of a piece that will never set in the frost are shown all the same', () => {
    const yard = plannedYard({
      temperatures: [{ from: '2027-04-01', celsius: -150 }],
      inMould: [{ mould: '900 no. 2', casting: 'panel-900', filledAt: '2027-04-08T08:00:00Z' }],
    });
    const { mayFrom } = turnsOfPlan(yard, handPlan(), 'MO').moulds[1]!.turns[0]!;
    expect(Number(mayFrom.slice(0, 4))).toBe(2127);
  });

  test('say which mould is out of use and until when; a scrapped one is left out', () => {
    const [one, two] = plannedYard().moulds;
    const yard = plannedYard({
      moulds: [
        { ...one!, condition: 'damaged', repairedOn: '2027-05-01' },
        { ...two!, condition: 'retired' },
      ],
    });
    expect(turnsOfPlan(yard, { ...handPlan(), pours: [], batches: [] }, 'MO').moulds).toEqual([
      { mould: '900 no. 1', outOfUse: { until: '2027-05-01' }, turns: [] },
    ]);
  });
});
