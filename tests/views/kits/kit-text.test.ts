import { expect, test } from 'vitest';
import type { KitFacts } from '../../../src/usecases/kits/kit-model.ts';
import { kitAnswer, kitNote, meetingText, pinsText } from '../../../views/kits/kit-text.ts';
import { loadsAnswer, loadText } from '../../../views/words/loads-text.ts';

const pins = {
  count: 6,
  corners: 4,
  joints: 2,
  ends: 0,
  length: '700 mm',
  above: '',
  ground: '',
  from: 'Rod',
  tooLong: null,
};
const facts = {
  ...{
    asked: '4 ft by 635 mm',
    shape: 'rectangle',
    faces: 'inside',
    panelCount: 18,
    pins,
    courses: 3,
    height: '600 mm',
  },
  ...{ comesOut: null, outside: '1289.2 mm by 705 mm', inside: '1219.2 mm by 635 mm' },
} as unknown as KitFacts;

test('the answer says what it takes, and pins only where there is something to cut them from', () => {
  expect(kitAnswer(facts)).toBe('4 ft by 635 mm inside takes 18 panels and six pins.');
  expect(kitAnswer({ ...facts, faces: 'outside', pins: { ...pins, from: null } })).toBe(
    '4 ft by 635 mm takes 18 panels.',
  );
  expect(kitAnswer({ ...facts, shape: 'row', asked: '2700 mm', panelCount: 1 })).toBe(
    'A row of 2700 mm takes one panel and six pins.',
  );
});

test('the note says both sizes, and how it comes out where that differs', () => {
  expect(kitNote(facts)).toBe('Outside 1289.2 mm by 705 mm, inside 1219.2 mm by 635 mm, 600 mm high in three courses.');
  expect(kitNote({ ...facts, comesOut: '1220 mm by 635 mm' })).toMatch(/^It comes out at 1220 mm by 635 mm\. Outside/);
  expect(kitNote({ ...facts, inside: null, outside: '2700 mm', courses: 1 })).toBe(
    '2700 mm long, 600 mm high in one course.',
  );
});

test('pins are counted by where they stand', () => {
  expect(pinsText(pins)).toBe('four at the corners and two at joints');
  expect(pinsText({ ...pins, corners: 0, ends: 2 })).toBe('two at joints and two at the ends');
});

test('loads are counted, and what is too heavy is said', () => {
  expect(loadsAnswer({ payload: '200 kg', count: 2, loads: [] })).toBe('Two loads, none over 200 kg.');
  expect(loadsAnswer({ payload: '200 kg', count: 1, loads: [] })).toBe('One load, not over 200 kg.');
  expect(loadsAnswer({ payload: '10 kg', count: 0, loads: [] })).toBe('One piece alone is more than 10 kg.');
  const pieces = [
    { casting: 'Panel 900', count: 4 },
    { casting: 'Panel 600', count: 2 },
  ];
  expect(loadText({ times: 1, mass: '72 kg', pieces })).toBe('One load of 72 kg: 4 × Panel 900 and 2 × Panel 600.');
  expect(loadText({ times: 3, mass: '72 kg', pieces })).toBe(
    'Three loads, each of 72 kg: 4 × Panel 900 and 2 × Panel 600.',
  );
});

test('how panels meet is said for what is there', () => {
  expect(meetingText({ shape: 'row', courses: 3 })).toContain('stand above one another');
  expect(meetingText({ shape: 'L', courses: 1 })).toContain('without a pin of its own');
  expect(meetingText({ shape: 'rectangle', courses: 2 })).toContain('the other way round in the next course');
});
