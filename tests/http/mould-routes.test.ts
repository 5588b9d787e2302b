import { describe, expect, test } from 'vitest';
import { mouldById, updateMould } from '../../db/stores/mould-store.ts';
import { demoScreens, screensOver, textOf } from '../support/screens.ts';
import { smallYard } from '../support/small-yard.ts';

const path = (id: string, mark: string) => `/moulds/${encodeURIComponent(id)}/${mark}`;
const full = () =>
  screensOver(
    smallYard({
      inMould: [{ mould: '900 no. 1', casting: 'panel-900', filledAt: '2027-04-08T08:00:00+01:00', order: '27-001' }],
    }),
  );

describe('the moulds', () => {
  test('stand in a row per length, each with what is next', async () => {
    const { get } = await demoScreens();
    const text = await textOf(await get('/moulds'));
    expect(text).toMatch(
      /^11 of 12 moulds are in use\. Out: 900 no\. 2\. Find a mould .* 1200 no\. 1 1200 no\. 1 full School garden, until Mon 5 Apr Holds a Panel 1200 for School garden/,
    );
    expect(text).toContain('450 no. 1 450 no. 1 clean and set up next Sat 10 Apr');
  });

  test('of an empty yard say what will be here', async () => {
    const { get } = await screensOver(smallYard({ moulds: [], orders: [] }));
    expect(await textOf(await get('/moulds'))).toContain('There is no mould in use. Record the moulds at Your yard.');
  });
});

/*
 * Two moulds take both panels of the order on Saturday 10 April. In one mould the second panel could be stripped at 11:42
 * (prepared 8:12, mixed 8:22, filled 8:29, stripped 9:44 to 9:52, prepared 10:10, mixed 10:20, filled 10:27, and 75 minutes):
 * after 11:30, so it waits for the next Saturday.
 */
describe('a mould marked damaged', () => {
  test('moves a date, says which and by how much, with a message, and is undone', async () => {
    const work = [{ rule: 'FREQ=WEEKLY;BYDAY=SA', from: '2027-01-02', start: '08:00', end: '11:30' }];
    const { post, get, textAfter } = await screensOver(smallYard({ work }));
    const answer = await post(path('900 no. 2', 'damaged'), { note: 'Base split', repairedOn: '2027-05-01' });
    const text = await textAfter(answer);
    expect(text).toContain('900 no. 2 marked damaged. Undo');
    expect(text).toContain('School garden: Sat 10 Apr to Sat 17 Apr, 7 days later; 7 days after the date given.');
    expect(text).toContain(
      "Hello School garden. We had said Sat 10 Apr. By today's plan your order 27-001 will be ready Sat 17 Apr.",
    );
    expect(text).toContain('damaged until Sat 1 May Base split. Should be mended Sat 1 May.');
    const change = new URL(answer.headers.get('Location') ?? '', 'http://x').searchParams.get('done') ?? '';
    const undone = await textAfter(await post('/undo', { change, back: '/moulds' }));
    expect(undone).toContain('Undone: 900 no. 2 marked damaged.');
    expect(undone).toContain('School garden: Sat 17 Apr to Sat 10 Apr, 7 days sooner');
    expect(await textOf(await get('/moulds'))).toMatch(/^All 2 moulds are in use\./);
  });

  test('is not undone twice', async () => {
    const { post } = await screensOver();
    const answer = await post(path('900 no. 2', 'damaged'), {});
    const change = new URL(answer.headers.get('Location') ?? '', 'http://x').searchParams.get('done') ?? '';
    await post('/undo', { change, back: '/moulds' });
    const again = await post('/undo', { change, back: '/moulds' });
    expect(again.status).toBe(409);
    expect(await again.text()).toContain('That was undone already.');
  });

  test('with a piece in it asks whether that is good, keeping what was typed', async () => {
    const { post, database } = await full();
    const answer = await post(path('900 no. 1', 'damaged'), { note: 'Cracked end' });
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(html).toContain('Say whether the piece in 900 no. 1 is good.');
    expect(html).toContain('value="Cracked end"');
    expect((await database.read((tx) => mouldById(tx, '900 no. 1')))?.condition).toBe('ready');
  });

  test('keeps a good piece until it is stripped', async () => {
    const { post, textAfter } = await full();
    const text = await textAfter(await post(path('900 no. 1', 'damaged'), { cameOut: 'good' }));
    expect(text).toContain(
      '900 no. 1 damaged, with a piece in it until it is mended Holds a Panel 900 for School garden',
    );
  });

  test('keeps one aside that can be mended', async () => {
    const { post, get, database } = await full();
    await post(path('900 no. 1', 'damaged'), { cameOut: 'mend' });
    expect((await database.read((tx) => mouldById(tx, '900 no. 1')))?.piece).toBeNull();
    expect(await textOf(await get('/today'))).toContain('To mend Until it is mended');
  });

  test('gives up a bad one', async () => {
    const { post, database } = await full();
    await post(path('900 no. 1', 'damaged'), { cameOut: 'scrap' });
    expect((await database.read((tx) => mouldById(tx, '900 no. 1')))?.piece).toBeNull();
  });

  test.each([
    ['2027-04-07', 'That day has passed.'],
    ['2027-02-30', '30 Feb 2027 does not exist.'],
  ])('is not mended on %s', async (repairedOn, message) => {
    const { post } = await screensOver();
    const answer = await post(path('900 no. 1', 'damaged'), { repairedOn, note: 'Kept' });
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(html).toContain(message);
    expect(html).toContain('value="Kept"');
  });

  test('in a form that says it was what no form has is refused at its field', async () => {
    const { post } = await screensOver();
    const forged = { conditionWas: 'ready', repairedOnWas: 'never', repairedOn: 'nonsense' };
    const answer = await post(path('900 no. 1', 'damaged'), forged);
    expect([answer.status, await answer.text()]).toEqual([422, expect.stringContaining('value="nonsense"')]);
  });
});

describe('the other marks', () => {
  const condition = async (mark: string, before: Parameters<typeof updateMould>[2]) => {
    const { post, database } = await screensOver();
    await database.write((tx) => updateMould(tx, '900 no. 1', before));
    const answer = await post(path('900 no. 1', mark), {});
    return { status: answer.status, mould: await database.read((tx) => mouldById(tx, '900 no. 1')) };
  };

  test('cleaned', async () => {
    expect(await condition('cleaned', { condition: 'dirty' })).toMatchObject({
      status: 303,
      mould: { condition: 'ready' },
    });
    expect(await condition('cleaned', { condition: 'ready' })).toMatchObject({ status: 422 });
  });

  test('mended', async () => {
    const mended = await condition('mended', { condition: 'damaged', repairedOn: '2027-05-01', damageNote: 'Split' });
    expect(mended).toMatchObject({ status: 303, mould: { condition: 'ready', repairedOn: null, damageNote: null } });
    expect(await condition('mended', { condition: 'ready' })).toMatchObject({ status: 422 });
  });

  test('sealed starts the count of turns anew, and leaves a damaged one damaged', async () => {
    const dirty = await condition('sealed', { condition: 'dirty', turnsSinceOil: 7 });
    expect(dirty).toMatchObject({ status: 303, mould: { condition: 'ready', turnsSinceOil: 0 } });
    expect(await condition('sealed', { condition: 'damaged', turnsSinceOil: 7 })).toMatchObject({
      mould: { condition: 'damaged' },
    });
  });

  test('scrapped takes it out for good', async () => {
    expect(await condition('scrapped', { condition: 'dirty' })).toMatchObject({
      status: 303,
      mould: { condition: 'retired' },
    });
  });

  test('none of them while there is a piece in it that has to come out first', async () => {
    const { post } = await full();
    for (const mark of ['cleaned', 'sealed']) {
      const answer = await post(path('900 no. 1', mark), {});
      expect(answer.status).toBe(422);
      expect(await answer.text()).toContain('900 no. 1 has a piece in it. Strip it first');
    }
  });

  test('of a mould or a kind that is not there', async () => {
    const { post } = await screensOver();
    expect((await post(path('900 no. 9', 'cleaned'), {})).status).toBe(422);
    expect((await post(path('900 no. 1', 'painted'), {})).status).toBe(404);
  });
});

describe('which mould to build next', () => {
  const owing = (due: string) =>
    smallYard({
      orders: [
        { id: '27-001', customer: 'School garden', due, lines: [{ kit: 'pair', quantity: 12 }] },
        { id: '27-002', due, lines: [{ kit: 'pair', quantity: 4 }] },
      ],
    });

  test('is found out when asked, in days of each order that is late', async () => {
    const { get } = await screensOver(owing('2027-04-17'));
    expect(await textOf(await get('/moulds'))).toContain('Which mould to build next Find out');
    const sentence =
      /One more 900 mould would take (\d+) days off what is late: School garden (\d+) days(?: and order 27-002 (\d+) days)?\./;
    const text = await textOf(await get('/moulds?next=yes'));
    const [, all, ...each] = sentence.exec(text) ?? [];
    expect(Number(all)).toBeGreaterThan(0);
    expect(each.reduce((sum, days) => sum + Number(days ?? 0), 0)).toBe(Number(all));
    expect(await textOf(await get('/moulds/next', { 'HX-Request-Type': 'partial' }))).toMatch(sentence);
  });

  test('is none when nothing is late', async () => {
    const { get } = await screensOver(owing('2027-06-26'));
    expect(await textOf(await get('/moulds?next=yes'))).toContain("Nothing is late by today's plan");
  });
});
