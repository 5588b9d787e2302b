import { expect, test } from 'vitest';
import { holdText, readyNote } from '../../../views/first/ready-answer.tsx';

const today = '2027-04-05';
const facts = { earliestOn: '2027-05-08', promiseOn: '2027-05-08', ifFirstOn: '2027-05-08', reason: null, hold: null };
const hold = { count: 2, kind: '1100', makes: 'Panel 1100', withOneMoreOn: '2027-05-01' };

test.each([
  [hold, 'Two 1100 moulds hold it.'],
  [{ ...hold, count: 1 }, 'One 1100 mould holds it.'],
  [{ ...hold, kind: null }, 'The moulds that make Panel 1100 hold it.'],
])('%j is said as %s', (held, text) => expect(holdText(held)).toBe(text));

test('the note says nothing that the date has said already', () => {
  expect(readyNote(facts, today)).toBe("By today's plan; no date already given gets later by it.");
});

test('the note says what would help and what to promise', () => {
  const note = readyNote({ ...facts, promiseOn: '2027-05-11', ifFirstOn: '2027-05-01', hold }, today);
  expect(note).toContain('promise Tue 11 May.');
  expect(note).toContain('One more 1100 mould would make it Sat 1 May.');
  expect(note).toContain('Put before everything else it could be Sat 1 May, and other dates would move.');
});
