import { describe, expect, test } from 'vitest';
import { storedPlan } from '../../db/stores/plan-store.ts';
import { loadYardFile } from '../../db/stores/yard-store.ts';
import { screensOver, textOf } from '../support/screens.ts';
import { smallYard } from '../support/small-yard.ts';

const NOW = smallYard().yard.now;
const fresh = {
  count: '4',
  kind: '1100',
  casting: 'panel-900',
  oilEveryTurns: '8',
  oilMinutes: '10',
  oilDryMinutes: '60',
};
/** One mould makes both panels one after the other: School garden's second panel is ready a week later then. */
const tight = () =>
  smallYard({ work: [{ rule: 'FREQ=WEEKLY;BYDAY=SA', from: '2027-01-02', start: '08:00', end: '11:30' }] });
const seenIn = (html: string) => /name="seen" value="([^"]*)"/.exec(html)?.[1] ?? '';
const mouldsOf = async ({ database }: Awaited<ReturnType<typeof screensOver>>) =>
  (await database.read((tx) => loadYardFile(tx, NOW))).moulds;

describe('moulds of the yard', () => {
  test('are added several at once, numbered on from those there are', async () => {
    const screens = await screensOver();
    const text = await screens.textAfter(await screens.post('/yard/moulds/new', fresh));
    expect(text).toContain('1100 no. 1 to 1100 no. 4 added.');
    expect(text).toContain('6 moulds in use: 2 of 900 and 4 of 1100.');
    await screens.post('/yard/moulds/new', { ...fresh, kind: '1100 no. 9', count: '2' });
    const moulds = await mouldsOf(screens);
    expect(moulds.map(({ id }) => id).slice(2)).toEqual([1, 2, 3, 4, 5, 6].map((n) => `1100 no. ${n}`));
    expect(moulds[7]).toMatchObject({ setFor: 'panel-900', oilEveryTurns: 8, oilMinutes: 10, condition: 'ready' });
  });

  test('that can not be read come back with everything that was typed', async () => {
    const { post } = await screensOver();
    const answer = await post('/yard/moulds/new', { ...fresh, count: 'many', kind: '', oilEveryTurns: '0' });
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(html).toContain('How many moulds? Write a whole number, 1 to 50.');
    expect(html).toContain('What is painted on them? 1100, for one.');
    expect(html).toContain('After how many turns? Leave it empty for never. Write a whole number, 1 to 1000.');
    expect(html).toContain('value="many"');
    expect(html).toContain('<option value="panel-900" selected');
  });

  test('are called otherwise, make what is ticked, and keep the piece that is in them', async () => {
    const inMould = [{ mould: '900 no. 1', casting: 'panel-900', filledAt: '2027-04-08T08:00:00+01:00' }];
    const screens = await screensOver(smallYard({ inMould }));
    const path = '/yard/moulds/900%20no.%201';
    const form = { id: '900 A', 'makes:panel-900': 'yes', 'change:panel-900': '5', oilEveryTurns: '', note: 'Heavy' };
    expect(await screens.textAfter(await screens.post(path, form))).toContain('900 no. 1 is called 900 A now.');
    const yard = await screens.database.read((tx) => loadYardFile(tx, NOW));
    expect(yard.moulds[0]).toMatchObject({ id: '900 A', makes: [{ casting: 'panel-900', changeMinutes: 5 }] });
    expect(yard.inMould).toMatchObject([{ mould: '900 A' }]);
    expect(await textOf(await screens.get('/yard/moulds'))).toContain('Heavy');
    expect((await screens.get(path)).status).toBe(404);
  });

  test('say at the field what does not go', async () => {
    const { post } = await screensOver();
    const answer = await post('/yard/moulds/900%20no.%201', { id: '900 no. 2', turnsSinceOil: '-1' });
    expect(answer.status).toBe(422);
    const text = await textOf(answer);
    expect(text).toContain('There is a mould 900 no. 2 already.');
    expect(text).toContain('Tick at least one thing that it makes.');
    expect(text).toContain('How many turns? Write a whole number, 0 to 1000.');
  });

  test('can not stop making the piece that is in them', async () => {
    const [casting] = smallYard().castings;
    const castings = [casting!, { ...casting!, id: 'panel-600', name: 'Panel 600' }];
    const inMould = [{ mould: '900 no. 1', casting: 'panel-900', filledAt: '2027-04-08T08:00:00+01:00' }];
    const { post } = await screensOver(smallYard({ castings, inMould }));
    const answer = await post('/yard/moulds/900%20no.%201', { id: '900 no. 1', 'makes:panel-600': 'yes' });
    expect(answer.status).toBe(422);
    expect(await textOf(answer)).toContain('The piece that is in it just now has to stay ticked. Strip it first.');
  });

  test('are removed once what that moves was seen, and the removal can be undone', async () => {
    const screens = await screensOver(tight());
    const path = '/yard/moulds/900%20no.%202/remove';
    const first = await screens.post(path, {});
    expect(first.status).toBe(200);
    const html = await first.clone().text();
    expect(await textOf(first)).toMatch(
      /^This moves one promise\. Nothing has been saved yet\. School garden: Sat 10 Apr to Sat 17 Apr, 7 days later; 7 days after the date given\. Remove 900 no\. 2\? Remove anyway Cancel/,
    );
    expect(await mouldsOf(screens)).toHaveLength(2);
    const seen = seenIn(html);
    expect(await screens.textAfter(await screens.post(path, { seen }))).toContain('900 no. 2 removed.');
    expect(await mouldsOf(screens)).toHaveLength(1);
  });

  test('that have been poured, or are full, are not removed, and the page says why', async () => {
    const [first, second] = smallYard().moulds;
    const inMould = [{ mould: '900 no. 2', casting: 'panel-900', filledAt: '2027-04-08T08:00:00+01:00' }];
    const { post } = await screensOver(smallYard({ moulds: [{ ...first!, turnsSinceOil: 3 }, second!], inMould }));
    const poured = await post('/yard/moulds/900%20no.%201/remove', {});
    expect(poured.status).toBe(422);
    expect(await textOf(poured)).toMatch(/^900 no\. 1 can't be removed\..*900 no\. 1 has been poured before\./);
    expect(await textOf(await post('/yard/moulds/900%20no.%202/remove', {}))).toContain(
      '900 no. 2 has a piece in it (Panel 900).',
    );
  });
});

test('a mould may be called anything: its page, its form and its removal find it', async () => {
  const [first, second] = smallYard().moulds;
  const order = [{ id: '27-001', due: '2027-04-10', lines: [{ kit: 'pair', quantity: 1 }] }];
  const yard = smallYard({ work: tight().work, orders: order, moulds: [first!, { ...second!, id: 'A/2 50% "x"?' }] });
  const screens = await screensOver(yard);
  const list = await (await screens.get('/yard/moulds')).text();
  const path = /href="(\/yard\/moulds\/A[^"]*)"/.exec(list)?.[1] ?? '';
  const edit = await (await screens.get(path)).text();
  expect(edit).toContain('value="A/2 50% &quot;x&quot;?"');
  expect(edit).toContain(`action="${path}"`);
  const effect = await (await screens.post(`${path}/remove`, {})).text();
  expect(effect).toContain(`action="${path}/remove"`);
  const seen = seenIn(effect);
  expect(await screens.textAfter(await screens.post(`${path}/remove`, { seen }))).toContain('A/2 50% "x"? removed.');
});

test('no mould is called "new": that is the page which adds one', async () => {
  const { post } = await screensOver();
  const answer = await post('/yard/moulds/900%20no.%201', { id: 'New', 'makes:panel-900': 'yes' });
  expect(await textOf(answer)).toContain('Call it something else.');
});

describe('what was done to moulds can be undone', () => {
  const undone = async (
    screens: Awaited<ReturnType<typeof screensOver>>,
    path: string,
    form: Record<string, string>,
  ) => {
    const before = await mouldsOf(screens);
    const answer = await screens.post(path, form);
    const change = new URL(answer.headers.get('Location') ?? '', 'http://yard').searchParams.get('done') ?? '';
    expect(await mouldsOf(screens)).not.toEqual(before);
    const text = await screens.textAfter(await screens.post('/undo', { change, back: '/yard/moulds' }));
    expect(text).toMatch(/^Undone: /);
    expect(await mouldsOf(screens)).toEqual(before);
  };

  test('adding, another name, and removal', async () => {
    const inMould = [{ mould: '900 no. 1', casting: 'panel-900', filledAt: '2027-04-08T08:00:00+01:00' }];
    const screens = await screensOver(smallYard({ inMould, orders: [] }));
    await undone(screens, '/yard/moulds/new', fresh);
    await undone(screens, '/yard/moulds/900%20no.%201', { id: '900 A', 'makes:panel-900': 'yes' });
    await undone(screens, '/yard/moulds/900%20no.%202/remove', {});
  });
});

test('a mould with another name stays where the plan has it', async () => {
  const screens = await screensOver();
  const text = await screens.textAfter(
    await screens.post('/yard/moulds/900%20no.%201', { id: 'Long one', 'makes:panel-900': 'yes' }),
  );
  expect(text).not.toContain('was fixed');
  expect(text).toContain('No date moved.');
  const plan = await screens.database.read(storedPlan);
  expect(plan?.plan.pours.map(({ mould }) => mould).sort()).toEqual(['900 no. 2', 'Long one']);
});

describe('the yard as a whole', () => {
  const form = {
    ...{ name: 'Hill yard', timeZone: 'Europe/Dublin', system: 'US', currency: 'gbp', weekStart: 'SU', mixers: '1' },
    ...{ 'handoverDays:SA': 'yes', sessionsInHand: '0', fixedHours: '24', horizonDays: '60', rackSpaces: '' },
    ...{ setUpMinutes: '0', clearUpMinutes: '0', batchWorthDays: '5', bagWorthDays: '0,5', deliveryDaysInHand: '7' },
    deliveredBy: '17:00',
  };

  test('is changed at once where no date moves, and shown so from then on', async () => {
    const screens = await screensOver();
    const text = await screens.textAfter(await screens.post('/yard/about', form));
    expect(text).toContain('Yard changed.');
    expect(text).toContain(
      'Hill yard, in Europe/Dublin time. Sizes in feet, inches and pounds, money in GBP, weeks from Sunday.',
    );
    expect(await (await screens.get('/yard/about')).text()).toMatch(/name="deliveryDaysInHand"[^>]*value="7"/);
  });

  test('is refused with each fault at its field, and everything typed', async () => {
    const { post } = await screensOver();
    const answer = await post('/yard/about', { ...form, timeZone: 'Europe/Nowhere', currency: 'XYW', mixers: 'two' });
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(html).toContain('Which currency? Its three letters, as in EUR, GBP or USD.');
    expect(html).toContain('How many mixers? Write a whole number, 0 to 50.');
    expect(html).toContain('value="Europe/Nowhere"');
    const zone = await post('/yard/about', { ...form, timeZone: 'Europe/Nowhere' });
    expect(await textOf(zone)).toContain('Choose a time zone from the list, such as Europe/Dublin.');
  });

  test('shows what would move before it is saved', async () => {
    const screens = await screensOver();
    const { 'handoverDays:SA': _saturday, ...rest } = form;
    const wednesday = { ...rest, 'handoverDays:WE': 'yes' };
    const answer = await screens.post('/yard/about', wednesday);
    const html = await answer.clone().text();
    expect(await textOf(answer)).toMatch(/^This moves one promise\..*Sat 10 Apr to Wed 14 Apr.*Save anyway/);
    expect(html).toContain('name="handoverDays:WE" value="yes" checked');
    const seen = seenIn(html);
    expect(await screens.textAfter(await screens.post('/yard/about', { ...wednesday, seen }))).toContain(
      'Yard changed.',
    );
  });
});

test('the page of the yard says what a first date lacks', async () => {
  const { get } = await screensOver();
  expect(await textOf(await get('/yard'))).toMatch(/^Your yard is ready to give dates\./);
  const bare = { materials: [], mixes: [], castings: [], moulds: [], kits: [], orders: [], work: [] };
  const empty = await screensOver(smallYard(bare));
  expect(await textOf(await empty.get('/yard'))).toMatch(
    /^Four things are missing for a first date: something you cast, a mould for it, a mix, and hours\./,
  );
});
