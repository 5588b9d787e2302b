import { describe, expect, test } from 'vitest';
import type { SessionStep } from '../../../src/usecases/today/session-step.ts';
import { atHand, pastText, restText } from '../../../views/today/at-hand.ts';
import { sessionLanes, sessionTitle } from '../../../views/today/session-lanes.ts';

const at = (clock: string) => `2027-04-10T${clock}:00+01:00`;
const step = (kind: 'prep' | 'batch' | 'strip' | 'set up' | 'clear up', from: string, to: string): SessionStep =>
  ({
    kind,
    name: `${kind} ${from}`,
    at: at(from),
    until: at(to),
    mould: '900 no. 1',
    bags: 1,
    pours: [{ mould: 'a' }, { mould: 'b' }],
  }) as never;
const STEPS = [
  step('set up', '08:00', '08:10'),
  step('prep', '08:10', '08:22'),
  step('batch', '08:22', '08:50'),
  step('prep', '08:50', '08:56'),
  step('strip', '09:10', '09:18'),
  step('prep', '09:18', '09:24'),
  step('batch', '09:24', '09:50'),
  step('strip', '09:50', '09:58'),
  step('clear up', '11:45', '12:00'),
];
const shown = (now: string, begun: string[] = [], underWay = true) => {
  const hand = atHand({
    ...{ steps: STEPS, now: at(now), underWay },
    begun: STEPS.filter(({ name }) => begun.includes(name)).map((one) => ({ name: one.name, step: one })),
  });
  const names = (steps: readonly (SessionStep | null)[]) => steps.map((one) => one?.name ?? null);
  return [names(hand.past), names([hand.justOver, hand.due]), names(hand.next), names(hand.rest)];
};

describe('what is at hand', () => {
  test('before a session its first work is due, however early it is', () => {
    expect(shown('08:30', [], false)).toEqual([
      [],
      [null, 'prep 08:10'],
      ['batch 08:22', 'prep 08:50'],
      ['set up 08:00', 'strip 09:10', 'prep 09:18', 'batch 09:24', 'strip 09:50', 'clear up 11:45'],
    ]);
  });

  test('a batch that is just over is asked about first; the rest of what is over is folded', () => {
    expect(shown('09:00')).toEqual([
      ['set up 08:00', 'prep 08:10', 'prep 08:50'],
      ['batch 08:22', 'strip 09:10'],
      ['prep 09:18', 'batch 09:24'],
      ['strip 09:50', 'clear up 11:45'],
    ]);
    expect(shown('09:19')[1]).toEqual(['batch 08:22', 'prep 09:18']);
    expect(shown('09:20')[1]).toEqual(['strip 09:10', 'prep 09:18']);
  });

  test('what is under way is due, also beyond its time', () => {
    expect(shown('09:00', ['batch 08:22'])[1]).toEqual(['prep 08:50', 'batch 08:22']);
    expect(shown('08:55', ['prep 08:50'])[1]).toEqual(['batch 08:22', 'prep 08:50']);
  });

  test('at the end only clearing up is left', () => {
    expect(shown('11:50').slice(1)).toEqual([[null, null], [], ['clear up 11:45']]);
  });

  test('what is folded is counted in words', () => {
    expect(pastText(STEPS.slice(1, 5))).toBe('4 steps not recorded: pour 2 pieces and strip 1');
    expect(pastText(STEPS.slice(0, 1))).toBeNull();
    expect(restText(STEPS.slice(6))).toBe('After that 2 steps more: pour 2 pieces and strip 1');
    expect(restText(STEPS.slice(8))).toBe('After that the yard is cleared up');
    expect(restText([])).toBeNull();
  });
});

describe('the session drawn to time', () => {
  const session = { date: '2027-04-10', start: at('08:00'), end: at('12:00'), windows: [] };
  const people = [{ start: at('08:00'), end: at('12:00'), steps: STEPS.map(({ name }) => name), wet: null }];

  test('has work of one kind in one go as one, and each mix by itself', () => {
    const [lane] = sessionLanes({ session, steps: STEPS, people });
    expect(lane?.hours).toBe('8:00 to 12:00');
    expect(lane?.spells.map(({ start, end, word, pieces, mix }) => [start, end, word, pieces, mix])).toEqual([
      ...[
        [480, 490, 'open', 1, false],
        [490, 502, 'set up', 1, false],
        [502, 530, 'mix', 2, true],
      ],
      ...[
        [530, 536, 'set up', 1, false],
        [550, 558, 'strip', 1, false],
        [558, 564, 'set up', 1, false],
      ],
      ...[
        [564, 590, 'mix', 2, true],
        [590, 598, 'strip', 1, false],
        [705, 720, 'clear up', 1, false],
      ],
    ]);
    const twice = [step('prep', '08:00', '08:12'), step('prep', '08:15', '08:20'), step('prep', '08:26', '08:30')];
    const joined = sessionLanes({
      session,
      steps: twice,
      people: [{ ...people[0]!, steps: twice.map(({ name }) => name) }],
    });
    expect(joined[0]?.spells.map(({ start, end, pieces }) => [start, end, pieces])).toEqual([
      [480, 500, 2],
      [506, 510, 1],
    ]);
  });

  test('has the minutes to keep pieces wet as a bar and a line of their own', () => {
    const own = { ...people[0]!, steps: ['set up 08:00', 'prep 08:50'], wet: { start: at('08:10'), end: at('08:20') } };
    const [lane] = sessionLanes({ session, steps: STEPS, people: [own] });
    expect(lane?.spells.map(({ start, end, drawn, word }) => [start, end, drawn, word])).toEqual([
      [480, 490, 'edge', 'open'],
      [490, 500, 'wavy', 'wet'],
      [530, 536, 'open', 'set up'],
    ]);
    expect(lane?.facts[1]).toBe('8:10 to 8:20 keep wet what is out of its mould');
  });

  test('says the same in words, and in its title what it shows', () => {
    expect(sessionLanes({ session, steps: STEPS, people })[0]?.facts.slice(4, 6)).toEqual([
      '9:10 to 9:20 strip 900 no. 1',
      '9:20 to 9:25 set up 900 no. 1',
    ]);
    expect(sessionTitle({ steps: STEPS, people, underWay: false })).toBe(
      'The session, drawn to time: 1 person, 2 mixes.',
    );
    expect(sessionTitle({ steps: STEPS.slice(0, 1), people, underWay: true })).toBe(
      'What is left of the session, drawn to time: 1 person.',
    );
  });
});
