import { expect, test } from 'vitest';
import { sentencesSaid } from '../src/sentences-said.ts';

const yard = { moulds: [{ id: 'Colour mould' }] };
const answer = {
  readyOn: '2027-05-08',
  limits: [{ kind: 'mould', what: 'Colour mould', change: 'One more session on Sat 8 May, 13:30 to 17:00' }],
  reason: 'Colour mould is no mould that is whole',
};

test('reasons and changes are said in US English, names, days and kinds stay as they are', () => {
  expect(sentencesSaid(answer, 'US', yard)).toEqual({
    readyOn: '2027-05-08',
    limits: [{ kind: 'mould', what: 'Colour mould', change: 'One more session on Sat, May 8, 1:30 pm to 5 pm' }],
    reason: 'Colour mould is no mold that is whole',
  });
});

test('in British English nothing is changed', () => {
  expect(sentencesSaid(answer, 'British', yard)).toBe(answer);
});
