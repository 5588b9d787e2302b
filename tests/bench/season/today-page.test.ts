import { describe, expect, test } from 'vitest';
import { plannedYard, saturday } from '../../support/planned-yard.ts';
import { screensOver } from '../../support/screens.ts';
import { dayOnPage, seasonClock } from './clock.ts';
import { stepsOn } from './today-page.ts';

const SATURDAY_MORNING = '2027-04-10T06:30:00Z';

const todayAt = async (now: string): Promise<string> => {
  const { get } = await screensOver(plannedYard({ yard: { ...plannedYard().yard, now } }));
  return (await get('/today')).text();
};

describe('Today as the worker reads it', () => {
  const clock = seasonClock('Europe/Dublin', Date.parse(SATURDAY_MORNING) / 60_000);

  test('has the steps of the day in order, each with its times and the form that says it is done', async () => {
    const steps = stepsOn(await todayAt(saturday('07:30')), clock);
    expect(steps.map(({ kind }) => kind)).toEqual(['prep', 'batch', 'strip', 'pack']);
    expect(steps[0]).toMatchObject({ start: clock.at('2027-04-10', '08:10'), end: clock.at('2027-04-10', '08:25') });
    expect(steps[1]?.done).toMatchObject({ action: '/today/poured', fields: { mould0: '900 no. 1', filled0: 'yes' } });
    // What is to be poured first cannot be stripped yet.
    expect(steps[2]?.done).toBeNull();
  });

  test('has no steps where it shows the session of another day', async () => {
    const html = await todayAt('2027-04-08T09:00:00+01:00');
    expect(html).toContain('Step by step, Sat 10 Apr');
    expect(stepsOn(html, clock)).toEqual([]);
  });
});

test.each([
  ['Order by Sat 2 Jan', '2026-12-28', '2027-01-02'],
  ['Was expected Wed 30 Dec', '2027-01-04', '2026-12-30'],
  ['Sat 8 May 2028', '2027-01-04', '2028-05-08'],
  ['Order today', '2027-01-04', '2027-01-04'],
  ['no price', '2027-01-04', null],
])('"%s" read on %s is %s', (text, today, day) => expect(dayOnPage(text, today)).toBe(day));
