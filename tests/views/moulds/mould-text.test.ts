import { describe, expect, test } from 'vitest';
import type { MouldFacts } from '../../../views/moulds/mould-facts.ts';
import {
  conditionOf,
  fillOf,
  mouldSentences,
  mouldsAnswer,
  paintedText,
  untilText,
} from '../../../views/moulds/mould-text.ts';

const today = '2027-04-05';
const mould: MouldFacts = {
  id: '800 no. 2',
  condition: 'ready',
  prepped: false,
  makes: ['Panel 800'],
  setFor: 'Panel 800',
  lengthMm: 800,
  piece: null,
  repairedOn: null,
  note: null,
  damageNote: null,
  troubled: [],
  turnsToSealing: 3,
  turnsBetweenCoats: 8,
  turnsToService: null,
  dryFrom: null,
  nextPour: null,
};
const piece = {
  name: 'Panel 800',
  filledAt: '2027-04-03T12:15:00+01:00',
  customer: 'School garden',
  stripAt: null,
  stays: null,
};

describe('a condition is a word and a shape', () => {
  test.each([
    [{}, 'clean', 'full'],
    [{ prepped: true }, 'clean and set up', 'full'],
    [{ condition: 'dirty' }, 'to be cleaned', 'ring'],
    [{ piece }, 'full', 'square'],
    [{ condition: 'damaged' }, 'damaged', 'triangle'],
    [{ condition: 'damaged', piece }, 'damaged, with a piece in it', 'triangle'],
    [{ condition: 'retired' }, 'scrapped', 'cross'],
  ] as const)('%j', (changes, word, shape) => expect(conditionOf({ ...mould, ...changes })).toEqual({ word, shape }));
});

describe('what is worth knowing', () => {
  test('of a full one: what is in it, for whom, and when it comes out', () => {
    const stripAt = '2027-04-05T16:42:00+01:00';
    expect(mouldSentences({ ...mould, piece: { ...piece, stripAt } }, today)[0]).toBe(
      "Holds a Panel 800 for School garden, poured Sat 3 Apr, 12:15; strip Mon 5 Apr, 16:45 by today's plan.",
    );
    expect(mouldSentences({ ...mould, piece: { ...piece, name: 'Edging 600' } }, today)[0]).toContain(
      'Holds an Edging 600',
    );
    expect(mouldSentences({ ...mould, piece: { ...piece, stays: 'no session allows it' } }, today)[0]).toContain(
      'it stays in, because no session allows it.',
    );
  });

  test('of a damaged one: what is wrong and until when, and not when to seal it', () => {
    const out: MouldFacts = {
      ...mould,
      condition: 'damaged',
      damageNote: 'End board split.',
      repairedOn: '2027-04-14',
    };
    expect(mouldSentences(out, today)).toEqual(['End board split. Should be mended Wed 14 Apr.']);
    expect(mouldSentences({ ...out, damageNote: null, repairedOn: null }, today)).toEqual([
      'Out of use until it is mended.',
    ]);
  });

  test('of its next pour: when and for whom, or that it is not written down', () => {
    const nextPour = { at: '2027-04-05T09:30:00+01:00', customer: 'School garden', late: false };
    expect(mouldSentences({ ...mould, nextPour }, today)[0]).toBe('Next pour Mon 5 Apr, 9:30 for School garden.');
    expect(mouldSentences({ ...mould, nextPour: { ...nextPour, late: true } }, today)[0]).toBe(
      'Was to be poured Mon 5 Apr, 9:30 for School garden, which is not recorded yet.',
    );
  });

  test('of the sealing coat: how many turns it still lasts', () => {
    expect(mouldSentences({ ...mould, turnsToSealing: 0 }, today)).toEqual([
      'The sealing coat is due before the next pour.',
    ]);
    expect(mouldSentences({ ...mould, turnsToSealing: 1 }, today)).toEqual(['Sealing coat due after 1 more turn.']);
    const service = (turnsToService: number) =>
      mouldSentences({ ...mould, turnsToSealing: null, turnsToService }, today);
    expect([2, 0, -1].map(service)).toEqual([
      ['To be looked over after 2 more turns.'],
      ['Due to be looked over.'],
      ['Due to be looked over, 1 turn ago.'],
    ]);
    expect(mouldSentences({ ...mould, turnsToSealing: null }, today)).toEqual([]);
  });
});

test('the answer counts what is in use and names what is out', () => {
  const out: MouldFacts = { ...mould, id: '800 no. 3', condition: 'damaged' };
  expect(mouldsAnswer([])).toBe('There is no mould in use.');
  expect(mouldsAnswer([mould])).toBe('The one mould is in use.');
  expect(mouldsAnswer([mould, out])).toBe('One of 2 moulds is in use. Out: 800 no. 3.');
  expect(mouldsAnswer([mould, mould])).toBe('All 2 moulds are in use.');
  expect(mouldsAnswer([mould, mould, out])).toBe('Two of 3 moulds are in use. Out: 800 no. 3.');
});

describe('on the map', () => {
  test.each([
    [{}, 'empty'],
    [{ prepped: true }, 'set-up'],
    [{ condition: 'dirty' }, 'dirty'],
    [{ condition: 'dirty', piece }, 'full'],
    [{ condition: 'damaged', piece }, 'damaged'],
  ] as const)('%j is drawn as %s', (changes, fill) => expect(fillOf({ ...mould, ...changes })).toBe(fill));

  test('a mould has what tells it from the others of its kind painted on it', () => {
    expect(paintedText('1200 no. 2', '1200')).toBe('no. 2');
    expect(paintedText('Corner', 'Corner')).toBe('Corner');
  });

  test('below it stands for whom, and until when', () => {
    const stripAt = '2027-04-05T16:42:00+01:00';
    expect(untilText({ ...mould, piece: { ...piece, stripAt } }, today)).toBe('School garden, until Mon 5 Apr');
    expect(untilText({ ...mould, piece: { ...piece, customer: null } }, today)).toBe('stays in');
    expect(untilText({ ...mould, condition: 'damaged' }, today)).toBe('until it is mended');
    expect(untilText({ ...mould, condition: 'damaged', repairedOn: '2027-04-14' }, today)).toBe('until Wed 14 Apr');
    const nextPour = { at: '2027-04-10T08:00:00+01:00', customer: 'Ann', late: false };
    expect(untilText({ ...mould, nextPour }, today)).toBe('next Sat 10 Apr, Ann');
    expect(untilText(mould, today)).toBe('');
  });
});
