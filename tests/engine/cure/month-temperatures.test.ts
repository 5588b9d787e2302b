import { describe, expect, test } from 'vitest';
import { datedLines, isOfMonths, monthsOf, stepsOfMonths } from '../../../src/engine/cure/month-temperatures.ts';

const FIGURES = [6, 6, 7, 9, 11, 14, 16, 16, 14, 11, 8, 6];
const TODAY = '2027-04-05';

describe('twelve months as steps', () => {
  test('are a step on each first, from the present month to a year beyond what is planned', () => {
    const steps = stepsOfMonths(FIGURES, TODAY, 30);
    expect(steps).toHaveLength(14);
    expect(steps.slice(0, 3)).toEqual([
      { from: '2027-04-01', celsius: 9 },
      { from: '2027-05-01', celsius: 11 },
      { from: '2027-06-01', celsius: 14 },
    ]);
    expect(steps[9]).toEqual({ from: '2028-01-01', celsius: 6 });
    expect(steps.at(-1)).toEqual({ from: '2028-05-01', celsius: 11 });
    expect(stepsOfMonths(FIGURES, '2027-12-31', 1).at(-1)?.from).toBe('2029-01-01');
  });

  test('are the same twelve figures again, on whichever day one looks', () => {
    for (const today of [TODAY, '2027-01-01', '2027-12-31', '2028-02-29']) {
      const steps = stepsOfMonths(FIGURES, today, 365);
      expect(monthsOf(steps, today)).toEqual(FIGURES);
      expect(datedLines(steps, today)).toEqual([]);
      expect(steps.every((step) => isOfMonths(step, FIGURES, today))).toBe(true);
    }
  });

  test('are known a year later still, from months gone by where none is to come', () => {
    expect(monthsOf(stepsOfMonths(FIGURES, TODAY, 30), '2030-06-10')).toEqual(FIGURES);
  });

  test('stay unsaid where no step is on a first of theirs', () => {
    const months = monthsOf(
      [
        { from: '2027-04-01', celsius: 9 },
        { from: '2027-05-12', celsius: 3 },
      ],
      TODAY,
    );
    expect(months[3]).toBe(9);
    expect(months.filter((celsius) => celsius !== null)).toHaveLength(1);
  });
});

describe('dated lines', () => {
  const months = stepsOfMonths(FIGURES, TODAY, 30);

  test('are the steps on other days, each to the day before the next', () => {
    const week = [
      { from: '2027-04-12', celsius: 3 },
      { from: '2027-04-19', celsius: 9 },
    ];
    expect(datedLines([...months, ...week], TODAY)).toEqual([
      { from: '2027-04-12', celsius: 3, to: '2027-04-18' },
      { from: '2027-04-19', celsius: 9, to: '2027-04-30' },
    ]);
  });

  test('are firsts of a month too that is unlike the month in the next year', () => {
    const odd = months.map((step) => (step.from === '2028-05-01' ? { ...step, celsius: 20 } : step));
    expect(datedLines(odd, TODAY)).toEqual([{ from: '2028-05-01', celsius: 20, to: null }]);
  });

  test('are left out once they are over, and not a day before', () => {
    const steps = [
      { from: '2027-03-20', celsius: 2 },
      { from: '2027-04-06', celsius: 8 },
    ];
    expect(datedLines(steps, '2027-04-05').map(({ from }) => from)).toEqual(['2027-03-20', '2027-04-06']);
    expect(datedLines(steps, '2027-04-06').map(({ from }) => from)).toEqual(['2027-04-06']);
  });
});
