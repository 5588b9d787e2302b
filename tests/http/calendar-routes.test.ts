import { sql } from 'drizzle-orm';
import ICAL from 'ical.js';
import { describe, expect, test } from 'vitest';
import { setUnits } from '../../db/stores/units-store.ts';
import { demoScreens, screensOn, screensOver, type TestScreens, textOf } from '../support/screens.ts';
import { smallYard } from '../support/small-yard.ts';

/** Makes an address through the page, and gives its path. */
const newAddress = async ({ get, post }: TestScreens, name = 'My phone'): Promise<string> => {
  const answer = await post('/yard/calendar', { name });
  const page = await textOf(await get(answer.headers.get('Location')!));
  return new URL(/https?:\S+\.ics/.exec(page)![0]).pathname;
};

const calendarAt = async ({ get }: TestScreens, path: string): Promise<string> => (await get(path)).text();

const eventsOf = (text: string): ICAL.Event[] =>
  new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent').map((event) => new ICAL.Event(event));

const named = (text: string, summary: string) => eventsOf(text).find((event) => event.summary === summary);

/** The demo with an address, and its calendar. */
const demoCalendar = async () => {
  const screens = await demoScreens();
  const path = await newAddress(screens);
  return { screens, path, text: await calendarAt(screens, path) };
};

const octets = (line: string): number => new TextEncoder().encode(line).length;

test('read by ical.js it has each date given, what to order by a day, and Saturday with every pour of it', async () => {
  const events = eventsOf((await demoCalendar()).text);
  const promised = events.filter(({ summary }) => summary.startsWith('Promised: '));
  expect(promised.length).toBeGreaterThan(1);
  for (const event of promised) {
    expect(event.startDate.isDate).toBe(true);
    // DTEND is the day after, which is no day of the event (RFC 5545, 3.6.1).
    expect(event.duration.toSeconds()).toBe(86_400);
  }
  expect(events.some(({ summary }) => summary.startsWith('Last day to order '))).toBe(true);
  const local = new Intl.DateTimeFormat('en-GB', { timeZone: 'Europe/Dublin', dateStyle: 'short', timeStyle: 'short' });
  const dayOf = (event: ICAL.Event) => local.format(event.startDate.toJSDate());
  const saturday = events.find((event) => dayOf(event).startsWith('10/04/2027'))!;
  expect(dayOf(saturday)).toMatch(/^10\/04\/2027, \d\d:\d\d$/);
  const pieces = Number(/Cast (\d+) piece/.exec(saturday.summary)![1]);
  expect(saturday.description.split('\n').filter((line) => line.includes(', for '))).toHaveLength(pieces);
});

/* Rules of RFC 5545: 3.1 (lines), 3.3.5 (times), 3.6.1 (what has to be there), 3.8.4.7 (UID). */
test('its text keeps the rules of the format, and is the same to the byte when it is read again', async () => {
  const { screens, path, text } = await demoCalendar();
  expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  for (const line of text.split('\r\n')) expect(octets(line)).toBeLessThanOrEqual(75);
  const lines = text.replaceAll('\r\n ', '').replace(/\r\n$/, '').split('\r\n');
  expect(lines.some((line) => octets(line) > 75)).toBe(true);
  expect([lines[0], lines[1], lines.at(-1)]).toEqual(['BEGIN:VCALENDAR', 'VERSION:2.0', 'END:VCALENDAR']);
  const count = (start: string) => lines.filter((line) => line.startsWith(start)).length;
  for (const name of ['UID:', 'DTSTAMP:', 'SEQUENCE:', 'STATUS:', 'DTSTART', 'SUMMARY:'])
    expect([name, count(name)]).toEqual([name, count('BEGIN:VEVENT')]);
  expect(new Set(lines.filter((line) => line.startsWith('UID:'))).size).toBe(count('BEGIN:VEVENT'));
  // In UTC it needs no table of zones.
  for (const line of lines.filter((one) => /^DT(START|END)/.test(one)))
    expect(line).toMatch(/^DT(START|END)(:\d{8}T\d{6}Z|;VALUE=DATE:\d{8})$/);
  const again = await screens.get(path);
  expect(again.headers.get('Content-Type')).toBe('text/calendar; charset=utf-8');
  expect(await again.text()).toBe(text);
});

describe('what becomes of it', () => {
  test('a name with signs that the format uses comes back as it was', async () => {
    const mine = await demoScreens();
    const odd = 'Nuts, bolts; a back\\slash: "Ångström" & more: a long name';
    const at = await newAddress(mine);
    const order = { customer: odd, what0: 'kit:planter', quantity0: '1', promisedOn: '5 June 2027' };
    expect((await mine.post('/orders', order)).status).toBe(303);
    const calendar = await calendarAt(mine, at);
    expect(eventsOf(calendar).map(({ summary }) => summary)).toContain(`Promised: ${odd}`);
  });

  test('a date that is moved keeps its UID and counts on; an order called off is cancelled', async () => {
    const mine = await demoScreens();
    const at = await newAddress(mine);
    const [before] = eventsOf(await calendarAt(mine, at)).filter(({ summary }) => summary.startsWith('Promised: '));
    const order = decodeURIComponent(/^order-(.+)@/.exec(before!.uid)![1]!);
    const later = screensOn(mine.database, '2027-04-05T09:00:00Z');
    expect((await later.post(`/orders/${order}/cancel`, {})).status).toBe(303);
    const off = named(await calendarAt(later, at), before!.summary)!;
    expect(off.uid).toBe(before!.uid);
    expect(off.sequence).toBe(before!.sequence + 1);
    expect(off.component.getFirstPropertyValue('status')).toBe('CANCELLED');
    expect(String(off.component.getFirstPropertyValue('last-modified'))).toBe('2027-04-05T09:00:00Z');
    await later.post(`/orders/${order}/take-up`, {});
  });
});

describe('who may read it', () => {
  test('nobody who does not have the secret, nor once it is withdrawn', async () => {
    const mine = await demoScreens();
    const [first, second] = [await newAddress(mine, 'My phone'), await newAddress(mine, 'Helper')];
    expect(first).not.toBe(second);
    expect((await mine.get(`/calendar/${'A'.repeat(32)}.ics`)).status).toBe(404);
    expect((await mine.get('/calendar/..%2Fyard.ics')).status).toBe(404);
    const page = await (await mine.get('/yard/calendar')).text();
    expect(page).not.toContain('.ics');
    const id = /name="id" value="(\d+)"/.exec(page)![1]!;
    await mine.post('/yard/calendar/withdraw', { id });
    expect([(await mine.get(first)).status, (await mine.get(second)).status]).toEqual([404, 200]);
    expect(await textOf(await mine.get('/yard/calendar'))).not.toContain('My phone, since');
  });

  test('the secret is shown once, and stands nowhere in the database', async () => {
    const screens = await demoScreens();
    const answer = await screens.post('/yard/calendar', { name: 'Once' });
    const shown = answer.headers.get('Location')!;
    const secret = /\/calendar\/([\w-]+)\.ics/.exec(await textOf(await screens.get(shown)))![1]!;
    expect(await textOf(await screens.get(shown))).not.toContain(secret);
    const rows = await screens.database.read((tx) => tx.all(sql`select * from "calendarAddresses"`));
    expect(rows.length).toBeGreaterThan(0);
    expect(JSON.stringify(rows)).not.toContain(secret);
  });

  test('a reader without a name is asked for one, and nothing is made', async () => {
    const screens = await demoScreens();
    const answer = await screens.post('/yard/calendar', { name: ' ' });
    expect(answer.status).toBe(422);
    expect(await textOf(answer)).toContain('Say who or what reads it, such as My phone.');
  });

  test('reading it changes no plan, no work and no log', async () => {
    const screens = await demoScreens();
    const path = await newAddress(screens);
    const counted = () =>
      screens.database.read((tx) =>
        tx.all(
          sql`select (select count(*) from "changes") as changes, (select "revision" from "revisions") as revision`,
        ),
      );
    const before = await counted();
    await calendarAt(screens, path);
    expect(await counted()).toEqual(before);
  });
});

test('of a US yard it is in its English, and names stay as they were typed', async () => {
  const screens = await demoScreens();
  await screens.database.write(async (tx) => {
    await setUnits(tx, 'US');
    await tx.run(sql`update customers set name = 'Mould makers, 8 May' where name = 'School garden'`);
  });
  const text = (await calendarAt(screens, await newAddress(screens))).replaceAll('\r\n ', '');
  const said = text.split('\r\n').filter((line) => /^(SUMMARY|DESCRIPTION):/.test(line));
  expect(said.some((line) => line.includes('Mould makers\\, 8 May'))).toBe(true);
  const own = said.join('\n').replaceAll('Mould makers\\, 8 May', '');
  expect(own).not.toMatch(/mould|\b\d{1,2} (Apr|May)\b|\b1[3-9]:\d\d/i);
  expect(own).toMatch(/\b(Apr|May) \d/);
});

interface Item {
  id: string;
  title: string;
  content_text: string;
  date_published: string;
}

/* JSON Feed 1.1 (jsonfeed.org/version/1.1): version, title and items with an id and a content of their own are required. */
test('the same address with .json has each change that moved a date given, and nothing else', async () => {
  const screens = await screensOver(
    smallYard({
      orders: [{ id: '27-001', customer: 'School garden', due: '2027-04-17', lines: [{ kit: 'pair', quantity: 2 }] }],
    }),
  );
  const feed = (await newAddress(screens)).replace(/ics$/, 'json');
  const items = async () => {
    const answer = await screens.get(feed);
    expect([answer.status, answer.headers.get('Content-Type')]).toEqual([200, 'application/feed+json']);
    const read = (await answer.json()) as { version: string; language: string; items: Item[] };
    expect([read.version, read.language]).toEqual(['https://jsonfeed.org/version/1.1', 'en-GB']);
    return read.items;
  };
  const before = await items();
  await screens.post('/moulds/900%20no.%201/cleaned', {});
  expect(await items()).toEqual(before);
  await screens.post('/moulds/900%20no.%202/damaged', {});
  const [first, ...rest] = await items();
  expect(rest).toEqual(before);
  expect(first!.title).toBe('900 no. 2 marked damaged');
  expect(first!.content_text).toMatch(
    /^School garden: Sat 17 Apr to Sat 24 Apr, 7 days later; 7 days after the date given\./,
  );
  expect(Date.parse(first!.date_published)).toBeGreaterThan(0);
  expect(new Set([first!, ...rest].map(({ id }) => id)).size).toBe(rest.length + 1);
  expect((await screens.get(`/calendar/${'A'.repeat(32)}.json`)).status).toBe(404);
});
