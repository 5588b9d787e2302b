import { describe, expect, test } from 'vitest';
import { loadYardFile } from '../../db/stores/yard-store.ts';
import { screensOver, type TestScreens, textOf } from '../support/screens.ts';
import { sentAsShown } from '../support/sent-as-shown.ts';
import { smallYard } from '../support/small-yard.ts';

const NOW = smallYard().yard.now;
const yardOf = ({ database }: TestScreens) => database.read((tx) => loadYardFile(tx, NOW));
const seenIn = (html: string) => /name="seen" value="([^"]*)"/.exec(html)?.[1] ?? '';

const wednesdays = {
  ...{ 'days:WE': 'yes', everyWeeks: '1', start: '18:00', end: '21:00', crew: '1', may: 'strip' },
  ...{ from: '8 Apr', until: '', rule: '' },
};

describe('hours that repeat', () => {
  test('draws who is there in the next seven days, and says the same: a day off is empty, a single day is in it', async () => {
    const yard = smallYard({
      closed: ['2027-04-10'],
      extra: [{ date: '2027-04-10', start: '09:00', end: '10:00', crew: 2, allows: ['strip', 'pack'] }],
    });
    const text = await textOf(await (await screensOver(yard)).get('/yard/hours'));
    expect(text).toContain('Who is there in the next seven days');
    expect(text).toContain('Fri 9 Apr: nobody. Sat 10 Apr: 9:00 to 10:00, 2 people, only stripping and packing.');
    const usual = await textOf(await (await screensOver()).get('/yard/hours'));
    expect(usual).toContain('Sat 10 Apr: 8:00 to 12:00, 1 person.');
  });

  test('are told in sentences, and added by days', async () => {
    const screens = await screensOver();
    expect(await textOf(await screens.get('/yard/hours'))).toMatch(
      /^The next session is on Saturday, 8:00 to 12:00\..*Saturdays 8:00 to 12:00, 1 person\./,
    );
    const text = await screens.textAfter(await screens.post('/yard/hours/new', wednesdays));
    expect(text).toContain('Hours added.');
    expect(text).toContain('Wednesdays 18:00 to 21:00, 1 person, only stripping and packing.');
    expect((await yardOf(screens)).work[1]).toEqual({
      ...{ rule: 'FREQ=WEEKLY;BYDAY=WE', from: '2027-04-08', start: '18:00', end: '21:00', crew: 1 },
      allows: ['strip', 'pack'],
    });
  });

  test('too short for anything are said to be so, and what waits for them', async () => {
    const yard = { ...smallYard().yard, setUpMinutes: 10, clearUpMinutes: 15 };
    const work = [{ rule: 'FREQ=WEEKLY;BYDAY=SA', from: '2027-01-02', start: '08:00', end: '08:20' }];
    const screens = await screensOver(smallYard({ yard, work }));
    const short = '20 minutes: setting up and clearing up take 25. Nothing can be done in them.';
    expect(await textOf(await screens.get('/yard/hours'))).toContain(`Saturdays 8:00 to 8:20, 1 person. ${short}`);
    expect(await textOf(await screens.get('/orders/27-001'))).toContain(
      'every session is too short: setting it up and clearing up take 25 minutes',
    );
    // Hours that they touch are one session with them.
    const day = { date: '2027-04-10', start: '08:20', end: '12:00', crew: '1', may: 'all' };
    const form = { ...day, seen: '27-001 2027-04-10' };
    const text = await screens.textAfter(await screens.post('/yard/hours/day/new', form));
    expect(text).toContain('Hours on');
    expect(text).not.toContain('Nothing can be done');
  });

  test('every second week, to midnight, until a day', async () => {
    const screens = await screensOver();
    const form = { ...wednesdays, 'days:FR': 'yes', everyWeeks: '2', end: '00:00', crew: '2', until: '1 June 2027' };
    expect(await screens.textAfter(await screens.post('/yard/hours/new', form))).toContain(
      'Every second Wednesday and Friday 18:00 to 24:00, 2 people, only stripping and packing, from Thu 8 Apr, until Tue 1 Jun.',
    );
    expect((await yardOf(screens)).work[1]).toMatchObject({
      ...{ rule: 'FREQ=WEEKLY;INTERVAL=2;BYDAY=WE,FR', end: '24:00', until: '2027-06-01' },
    });
  });

  test('are refused with each fault at its field and everything typed', async () => {
    const { post } = await screensOver();
    const { 'days:WE': _none, ...noDay } = wednesdays;
    const answer = await post('/yard/hours/new', { ...noDay, end: '17:00', crew: '0', from: '31 Apr', until: 'soon' });
    expect(answer.status).toBe(422);
    const text = await textOf(answer.clone());
    expect(text).toContain('Tick at least one day.');
    expect(text).toContain('That is not after the start. Hours past midnight are hours of the next day.');
    expect(text).toContain('How many people? Write a whole number, 1 to 50.');
    expect(text).toContain('31 Apr does not exist');
    expect(text).toContain('"soon" is no day.');
    expect(await answer.text()).toContain('value="31 Apr"');
  });

  test('show what a change moves, keep what was typed, and are saved with that in sight', async () => {
    const screens = await screensOver();
    const sundays = { ...wednesdays, 'days:SU': 'yes', may: 'all', start: '8:00', end: '12:00', from: '2027-01-02' };
    const { 'days:WE': _none, ...form } = sundays;
    const answer = await screens.post('/yard/hours/1', form);
    expect(answer.status).toBe(200);
    const html = await answer.clone().text();
    expect(await textOf(answer)).toMatch(
      /^This moves one promise\. Nothing has been saved yet\. School garden: Sat 10 Apr to Sat 17 Apr, 7 days later.*Save anyway Cancel/,
    );
    expect(html).toContain('name="days:SU" value="yes" checked');
    expect((await yardOf(screens)).work[0]?.rule).toBe('FREQ=WEEKLY;BYDAY=SA');
    // Typed otherwise meanwhile: what was seen is another effect.
    const later = await screens.post('/yard/hours/1', { ...form, from: '1 May 2027', seen: seenIn(html) });
    expect(await textOf(later)).toContain('Nothing has been saved yet.');
    expect(await screens.textAfter(await screens.post('/yard/hours/1', { ...form, seen: seenIn(html) }))).toMatch(
      /Hours changed\..*Sundays 8:00 to 12:00, 1 person\./,
    );
  });

  test('that only make an order ready sooner need no second thought to save', async () => {
    const order = { id: '27-001', customer: 'School garden', lines: [{ kit: 'pair', quantity: 12 }] };
    const screens = await screensOver(smallYard({ orders: [order] }));
    const shown = sentAsShown(await (await screens.get('/yard/hours/1')).text());
    const text = await textOf(await screens.post('/yard/hours/1', { ...shown, end: '20:00' }));
    expect(text).toMatch(/^This moves the day by plan of one order, and no date given\..* weeks sooner\. Save Cancel/);
    expect(text).not.toContain('anyway');
  });

  test('are removed with what that moves in sight', async () => {
    const screens = await screensOver();
    const first = await screens.post('/yard/hours/1/remove', {});
    const html = await first.clone().text();
    expect(await textOf(first)).toMatch(/^This moves one promise\..*can't be made now.*Remove anyway/);
    expect(await screens.textAfter(await screens.post('/yard/hours/1/remove', { seen: seenIn(html) }))).toMatch(
      /Hours removed\..*Nobody works in the days that are planned\./,
    );
    expect((await screens.post('/yard/hours/1/remove', {})).status).toBe(422);
    expect((await screens.get('/yard/hours/1')).status).toBe(404);
  });
});

describe('a rule', () => {
  const rule = { ...wednesdays, rule: 'freq=monthly; byday=1SA' };

  test('is taken in place of the days, and shown with its next five dates', async () => {
    const screens = await screensOver();
    const { 'days:WE': _none, ...form } = rule;
    const text = await screens.textAfter(await screens.post('/yard/hours/new', form));
    expect(text).toContain('By the rule FREQ=MONTHLY;BYDAY=1SA 18:00 to 21:00');
    // The first Saturdays of May to September 2027.
    expect(text).toContain('Next: Sat 1 May, Sat 5 Jun, Sat 3 Jul, Sat 7 Aug and Sat 4 Sep.');
    const html = await (await screens.get('/yard/hours/2')).text();
    expect(html).toContain('value="FREQ=MONTHLY;BYDAY=1SA"');
  });

  test.each([
    ['FREQ=YEARLY', 'This rule has to repeat DAILY, WEEKLY or MONTHLY.'],
    ['FREQ=WEEKLY;BYDAY=SA;BYDAY=SU', 'This rule has BYDAY twice.'],
    ['every Saturday', 'This rule is no recurrence rule (RFC 5545 RRULE).'],
    ['FREQ=MONTHLY', 'This rule does not do: MONTHLY needs BYDAY or BYMONTHDAY.'],
  ])('%s is refused at its field', async (text, message) => {
    const { post, get } = await screensOver();
    const answer = await post('/yard/hours/new', { ...rule, rule: text });
    expect(answer.status).toBe(422);
    expect(await textOf(answer)).toContain(message);
    const live = await get(`/yard/hours/dates?${new URLSearchParams({ rule: text })}`, {
      'HX-Request-Type': 'partial',
    });
    expect(await live.text()).toContain(message);
  });

  test('tells its dates while it is typed', async () => {
    const { get } = await screensOver();
    const query = new URLSearchParams({ rule: 'FREQ=WEEKLY;INTERVAL=2;BYDAY=SA', from: '24 Apr' });
    expect(await (await get(`/yard/hours/dates?${query}`, { 'HX-Request-Type': 'partial' })).text()).toBe(
      'It gives Sat 24 Apr, Sat 8 May, Sat 22 May, Sat 5 Jun and Sat 19 Jun.',
    );
  });
});

describe('single days and days off', () => {
  const friday = { date: 'Fri 9 Apr', start: '9:00', end: '12:00', crew: '1', may: 'all' };

  test('a day is added beside the usual hours, or in their place', async () => {
    const screens = await screensOver(smallYard({ orders: [] }));
    expect(await screens.textAfter(await screens.post('/yard/hours/day/new', friday))).toContain(
      'Fri 9 Apr 9:00 to 12:00, 1 person.',
    );
    const saturday = { ...friday, date: '10 Apr', instead: 'yes' };
    expect(await screens.textAfter(await screens.post('/yard/hours/day/new', saturday))).toContain(
      'Sat 10 Apr 9:00 to 12:00, 1 person, instead of the usual hours.',
    );
    expect(await yardOf(screens)).toMatchObject({
      ...{ closed: ['2027-04-10'], extra: [{ date: '2027-04-09' }, { date: '2027-04-10' }] },
    });
    await screens.post('/yard/hours/day/2/remove', {});
    expect((await yardOf(screens)).closed).toEqual([]);
  });

  test('a day is moved, and its old date is as usual again', async () => {
    const screens = await screensOver(smallYard({ orders: [] }));
    await screens.post('/yard/hours/day/new', { ...friday, date: '10 Apr', instead: 'yes' });
    await screens.post('/yard/hours/day/1', { ...friday, date: '17 Apr', instead: 'yes' });
    expect(await yardOf(screens)).toMatchObject({ closed: ['2027-04-17'], extra: [{ date: '2027-04-17' }] });
  });

  test('a day that has passed is refused', async () => {
    const { post } = await screensOver();
    const answer = await post('/yard/hours/day/new', { ...friday, date: '2027-04-01' });
    expect(await textOf(answer)).toContain('That day has passed.');
  });

  test('a holiday is one span, and worked as usual again', async () => {
    const screens = await screensOver(smallYard({ orders: [] }));
    const off = { from: '2 Aug', to: '15 Aug' };
    const text = await screens.textAfter(await screens.post('/yard/hours/off/new', off));
    expect(text).toContain('Mon 2 Aug to Sun 15 Aug off.');
    expect((await yardOf(screens)).closed).toHaveLength(14);
    await screens.post('/yard/hours/off/new', { from: '16 Aug', to: '' });
    const html = await (await screens.get('/yard/hours')).text();
    expect(html).toContain('Mon 2 Aug to Mon 16 Aug.');
    await screens.post('/yard/hours/off/2027-08-02/2027-08-16/remove', {});
    expect((await yardOf(screens)).closed).toEqual([]);
  });

  test('a holiday that ends before it begins, or is far too long, is refused', async () => {
    const { post } = await screensOver();
    const back = await post('/yard/hours/off/new', { from: '15 Aug 2027', to: '2 Aug 2027' });
    expect(await textOf(back)).toContain('That is before the first day off.');
    const long = await post('/yard/hours/off/new', { from: '15 Aug 2027', to: '15 Aug 2040' });
    expect(await textOf(long)).toContain('That is more than a year.');
  });
});
