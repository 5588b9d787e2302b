import { expect, test } from 'vitest';
import type { ReadyFacts } from '../../../src/usecases/first/ask-when.ts';
import { byOddsText } from '../../../views/first/how-sure-text.ts';
import { readyNote, soonerHeading, soonerOnes, tellOn } from '../../../views/first/ready-answer.tsx';

const today = '2027-04-05';
const facts: ReadyFacts = {
  earliestOn: '2027-05-08',
  isProven: true,
  isLooking: false,
  promiseOn: '2027-05-08',
  promiseOdds: null,
  record: { pieces: 0, sessions: 0, isEnough: false },
  sessionsInHand: 0,
  deliveryDaysInHand: 0,
  ifFirstOn: '2027-05-08',
  reason: null,
  hold: null,
  limits: null,
};
test('the note says nothing that the date has said already', () => {
  expect(readyNote(facts, today)).toBe("By today's plan; no promised date moves.");
});

test('the date to tell has the time in hand, and the note says how much sooner it could be', () => {
  const inHand = { ...facts, promiseOn: '2027-05-11', sessionsInHand: 1 };
  expect(tellOn(inHand)).toBe('2027-05-11');
  expect(tellOn({ ...inHand, promiseOn: null })).toBe('2027-05-08');
  const note = readyNote(inHand, today);
  expect(note).toContain('With one session in hand. Sat 8 May at the earliest.');
  // A day that may not be the earliest is not called so.
  const open = readyNote({ ...inHand, isProven: false }, today);
  expect(open).toBe("With one session in hand; Sat 8 May without. By today's plan; no promised date moves.");
  expect(readyNote({ ...inHand, sessionsInHand: 2 }, today)).toContain('With two sessions in hand.');
  expect(readyNote({ ...inHand, deliveryDaysInHand: 7 }, today)).toContain(
    'With one session in hand and 7 days for deliveries. Sat 8 May at the earliest.',
  );
  expect(readyNote({ ...inHand, sessionsInHand: 0, deliveryDaysInHand: 1 }, today)).toContain(
    'With 1 day in hand for deliveries. Sat 8 May at the earliest.',
  );
  // The day after them can be the same day of hand-over: then there is nothing that could be sooner.
  expect(readyNote({ ...facts, sessionsInHand: 1 }, today)).toMatch(/^With one session in hand\. By today's plan/);
  // With none left in the days planned, the earliest day is told, and nothing is claimed.
  expect(readyNote({ ...inHand, promiseOn: null }, today)).not.toContain('in hand');
});

test('a date that goes by its odds says so, and not what is in hand', () => {
  const byOdds = { ...facts, promiseOn: '2027-05-11', promiseOdds: 0.9 as const, sessionsInHand: 1, isProven: false };
  expect(readyNote(byOdds, today)).toBe(
    "Kept 9 in 10 times, by the yard's record; Sat 8 May if nothing goes wrong. By today's plan; no promised date moves.",
  );
  expect(soonerHeading(byOdds, today)).toMatch(/^If nothing goes wrong it is Sat 8 May\./);
  expect(byOddsText(facts)).toContain('(0 pieces and 0 days so far)');
  expect(byOddsText({ record: { pieces: 300, sessions: 120, isEnough: true } })).toMatch(
    /^No day within the days planned/,
  );
});

test('what would make it sooner is a sentence each, and nothing that gains nothing', () => {
  const limits = [{ change: 'One more 1100 mould', earliestOn: '2027-05-01', daysSooner: 7 }];
  expect(soonerOnes({ ...facts, limits, ifFirstOn: '2027-04-24' }, today)).toEqual([
    { text: 'One more 1100 mould: Sat 1 May, 7 days sooner.', on: '2027-05-01' },
    { text: 'Put before everything else: Sat 24 Apr, but other dates would move.', on: '2027-04-24' },
  ]);
  expect(soonerOnes({ ...facts, limits: [] }, today)).toEqual([]);
});

test('what would make it sooner is measured by the day without time in hand, and says so', () => {
  expect(soonerHeading(facts, today)).toBe("What would make it sooner, by today's plan:");
  expect(soonerHeading({ ...facts, promiseOn: '2027-05-15', sessionsInHand: 1 }, today)).toBe(
    "Without time in hand it is Sat 8 May. What would make that sooner, by today's plan:",
  );
  expect(soonerHeading({ ...facts, promiseOn: null }, today)).toBe("What would make it sooner, by today's plan:");
});
