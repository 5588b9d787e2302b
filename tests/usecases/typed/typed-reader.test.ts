import { describe, expect, test } from 'vitest';
import { TypedReader } from '../../../src/usecases/typed/typed-reader.ts';

const reading = (value: string) => new TypedReader({ field: value }, { today: '2027-04-08', system: 'metric' });

describe('a form that is read', () => {
  test('collects every fault, and gives a value only where there is none', () => {
    const reader = new TypedReader({ count: 'two', name: '' });
    reader.whole('count', 'How many?', { least: 1, most: 9 });
    reader.words('name', 'What is it called?');
    expect(reader.outcome('all')).toEqual({
      ok: false,
      faults: [
        { path: 'count', message: 'How many? Write a whole number, 1 to 9.' },
        { path: 'name', message: 'What is it called?' },
      ],
    });
    expect(new TypedReader({}).outcome('all')).toEqual({ ok: true, value: 'all' });
  });

  test.each([
    ['0', 0],
    ['007', 7],
  ])('takes the whole number %s', (text, number) => {
    const reader = reading(text);
    expect([reader.whole('field', ''), reader.faults]).toEqual([number, []]);
  });

  test.each(['-1', '1.5', '1e3', '', '12345678901', '٣'])('refuses %s as a whole number', (text) => {
    const reader = reading(text);
    reader.whole('field', 'How many?');
    expect(reader.faults).toHaveLength(1);
  });

  test.each([
    ['8:30', '08:30'],
    ['18.05', '18:05'],
    ['08:00', '08:00'],
  ])('takes the time %s', (text, clock) => {
    expect(reading(text).clock('field')).toBe(clock);
  });

  test.each(['24:00', '8:60', 'noon', '8'])('refuses %s as a time', (text) => {
    const reader = reading(text);
    reader.clock('field');
    expect(reader.faults).toEqual([{ path: 'field', message: 'Which time? Write it as 8:30.' }]);
  });

  test('takes days as people write them, and amounts with a decimal comma', () => {
    expect(reading('10 Apr').date('field')).toBe('2027-04-10');
    expect(reading('0,5').amount('field', '')).toBe(0.5);
    expect(reading('').dateOrNone('field')).toBeNull();
  });

  test('takes ticks by name, and nothing that was not asked for', () => {
    const reader = new TypedReader({ 'days:SA': 'yes', 'days:XX': 'yes' });
    expect(reader.ticked('days', ['MO', 'SA'])).toEqual(['SA']);
  });
});
