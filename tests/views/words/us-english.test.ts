import { describe, expect, test } from 'vitest';
import { sayAround } from '../../../views/words/own-words.ts';
import { usText } from '../../../views/words/us-english.ts';

test.each([
  ['Moulds are full: 3 moulds, no colour.', 'Molds are full: 3 molds, no color.'],
  ['MOULD, plasticiser, fibres, grey, centred', 'MOLD, plasticizer, fibers, gray, centered'],
  ['Millimetres and litres of a Galvanised mesh', 'Millimeters and liters of a Galvanized mesh'],
  ['It was cancelled; cancel it; a cancellation', 'It was canceled; cancel it; a cancellation'],
  [
    'None ticked: tick one. A ticket fulfilled, fulfilling.',
    'None checked: check one. A ticket fulfilled, fulfilling.',
  ],
  ['a realistic organism, programmed by a programmer', 'a realistic organism, programmed by a programmer'],
])('is spelled as in the US: %s', (british, us) => {
  expect(usText(british)).toBe(us);
  expect(usText(us)).toBe(us);
});

describe('has', () => {
  test.each([
    ['Sat 8 May', 'Sat, May 8'],
    ['Saturday 8 May 2027.', 'Saturday, May 8, 2027.'],
    ['Sat 8 May 1200 no. 2', 'Sat, May 8 1200 no. 2'],
    ['8 May to 12 June', 'May 8 to June 12'],
    ['Sat 10 Apr, 9:40', 'Sat, Apr 10, 9:40 am'],
    ['27-014 on Fri 9 Apr (2 × Panel 900 8 May)', '27-014 on Fri, Apr 9 (2 × Panel 900 May 8)'],
  ])('the month before the day: %s', (british, us) => expect(usText(british)).toBe(us));

  test.each([
    ['8:00 to 13:30', '8 am to 1:30 pm'],
    ['0:05, 00:00, 12:00, 12:30, 24:00', '12:05 am, 12 am, 12 pm, 12:30 pm, midnight'],
    ['2027-04-10T09:40:00Z and 1:2:3', '2027-04-10T09:40:00Z and 1:2:3'],
    ['2:30 pm', '2:30 pm'],
  ])('a clock of twelve hours: %s', (british, us) => expect(usText(british)).toBe(us));
});

test('leaves words of the yard as they were typed, whole ones only', () => {
  const say = sayAround(['Mould oil', 'Grey fibre, 8 May']);
  expect(say('Mould oil for mould 3, Grey fibre, 8 May by Sat 8 May')).toBe(
    'Mould oil for mold 3, Grey fibre, 8 May by Sat, May 8',
  );
  expect(say('Mould oils')).toBe('Mold oils');
  expect(sayAround([])('Mould Rota')).toBe('Mould Rota');
});
