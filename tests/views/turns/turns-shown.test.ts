import { describe, expect, test } from 'vitest';
import type { MouldTurns, TurnFacts, TurnsOfPlan } from '../../../src/usecases/turns/turns-of-plan.ts';
import { SESSIONS_SHOWN, turnsShown } from '../../../views/turns/turns-shown.ts';
import {
  fitted,
  fittedApart,
  hoursFitted,
  outText,
  spellText,
  turnsAnswer,
  turnsNote,
} from '../../../views/turns/turns-text.ts';

const date = (index: number) => `2027-04-${String(10 + index)}`;
const sessions = Array.from({ length: 8 }, (_, index) => ({
  ...{ date: date(index), week: index < 2 ? '2027-04-05' : '2027-04-12' },
  start: `${date(index)}T08:00:00+01:00`,
  end: `${date(index)}T12:00:00+01:00`,
}));
const turn = (id: string, pourSession: number | null, stripSession: number | null): TurnFacts => ({
  ...{ id, mould: 'A', piece: 'Panel', customer: 'Ann', pourSession, stripSession, readyAt: null },
  ...{
    pouredAt: '2027-04-10T09:11:00+01:00',
    mayFrom: '2027-04-10T10:26:00+01:00',
    strippedAt: '2027-04-10T10:26:00+01:00',
  },
});
const model = (turns: TurnFacts[], outOfUse: MouldTurns['outOfUse'] = null): TurnsOfPlan & { today: string } => ({
  ...{ today: '2027-04-05', sessions },
  moulds: [
    { mould: 'A', outOfUse: null, turns },
    { mould: 'B', outOfUse, turns: [] },
  ],
});

describe('the part of the turns that is shown', () => {
  test('is so many sessions from the first one named, with the ways on and back', () => {
    expect(SESSIONS_SHOWN).toBe(6);
    expect(turnsShown(model([]), 0)).toMatchObject({ from: 0, earlierFrom: null, laterFrom: 6 });
    expect(turnsShown(model([]), 6)).toMatchObject({
      from: 6,
      earlierFrom: 0,
      laterFrom: null,
      sessions: [{ date: date(6) }, { date: date(7) }],
    });
    expect(turnsShown(model([]), 99).from).toBe(7);
    expect(turnsShown({ ...model([]), sessions: [] }, 3)).toMatchObject({
      from: 0,
      sessions: [],
      earlierFrom: null,
      laterFrom: null,
    });
  });

  test('has its sessions week by week', () => {
    expect(turnsShown(model([]), 0).weeks).toEqual([
      { week: '2027-04-05', from: 0, to: 2 },
      { week: '2027-04-12', from: 2, to: 6 },
    ]);
    expect(turnsShown(model([]), 6).weeks).toEqual([{ week: '2027-04-12', from: 0, to: 2 }]);
    expect(turnsShown({ ...model([]), sessions: [] }, 0).weeks).toEqual([]);
  });

  test('has the turns that touch it, counted from its own first session', () => {
    const turns = [
      turn('over', 2, 5),
      turn('into', 5, 6),
      turn('in', 6, 7),
      turn('stays', 1, null),
      turn('held', null, 6),
    ];
    expect(turnsShown(model(turns), 6).spans.map(({ id, pour, strip }) => [id, pour, strip])).toEqual([
      ['into', null, 0],
      ['in', 0, 1],
      ['stays', null, null],
      ['held', null, 0],
    ]);
    expect(turnsShown(model([turn('later', 6, 7), turn('out', 5, 7)]), 0).spans).toEqual([
      { id: 'out', row: 0, pour: 5, strip: null },
    ]);
  });

  test('marks a mould out of use until the day it should be mended', () => {
    expect(turnsShown(model([], { until: date(2) }), 0).outs).toEqual([{ row: 1, from: 0, to: 2 }]);
    expect(turnsShown(model([], { until: null }), 6).outs).toEqual([{ row: 1, from: 0, to: 2 }]);
    expect(turnsShown(model([], { until: date(0) }), 0).outs).toEqual([]);
    // Mended before the sessions that are shown: nothing is said of it there.
    expect(turnsShown(model([], { until: date(2) }), 6).moulds[1]?.outOfUse).toBeNull();
    expect(turnsNote(turnsShown(model([], { until: date(2) }), 6), date(0))).toBe('Nothing is planned for A and B.');
  });
});

describe('the words', () => {
  const today = '2027-04-05';
  test('of the first lines', () => {
    const shown = turnsShown(model([turn('a', 0, 0)], { until: '2027-04-17' }), 0);
    expect(turnsAnswer(shown, today)).toBe('1 turn in 1 mould, Sat 10 Apr to Thu 15 Apr.');
    expect(turnsNote(shown, today)).toBe('B is out of use until Sat 17 Apr.');
    expect(turnsNote(turnsShown(model([]), 0), today)).toBe('Nothing is planned for A and B.');
    expect(outText({ mould: 'B', outOfUse: { until: null }, turns: [] }, today)).toBe('out of use');
  });

  test('of a turn', () => {
    expect(spellText(turn('a', 0, 0), today, 'pour')).toBe('9:10 to 10:30');
    expect(spellText({ ...turn('a', 0, 1), strippedAt: '2027-04-11T16:40:00+01:00' }, today, 'pour')).toBe(
      '9:10 to Sun 11 Apr',
    );
    expect(spellText({ ...turn('a', 0, null), strippedAt: null }, today, 'pour')).toBe('9:10, stays in');
    expect(spellText(turn('a', null, 0), today, 'before')).toBe('in since Sat 10 Apr');
  });

  test('are cut where they would not fit', () => {
    expect(fitted('School garden', 100, 7)).toBe('School garden');
    expect(fitted('Terrace wall, Quinn', 100, 7)).toBe('Terrace wall,…');
    expect(fitted('Ann', 0, 7)).toBe('…');
  });

  test('are cut in the middle where two would read the same', () => {
    const plots = ['Allotments, plot 12', 'Allotments, plot 30', 'Terrace wall, Quinn'];
    expect(plots.map((name) => fittedApart(name, plots, 119, 7))).toEqual([
      'Allotment…plot 12',
      'Allotment…plot 30',
      'Terrace wall, Qu…',
    ]);
    expect(plots.map((name) => fittedApart(name, plots, 140, 7))).toEqual(plots);
    expect(fittedApart('Allotments, plot 12', plots, 42, 7)).toBe('Allot…');
  });

  test('of hours say when they begin where there is no room for more', () => {
    expect(hoursFitted(sessions[0]!, 100, 7)).toBe('8:00 to 12:00');
    expect(hoursFitted(sessions[0]!, 80, 7)).toBe('from 8:00');
  });
});
