import { randomUUID } from 'node:crypto';
import { expect, test } from 'vitest';
import { recentChanges } from '../../db/stores/change-store.ts';
import { mouldById } from '../../db/stores/mould-store.ts';
import { DEMO_NOW, demoScreens, screensOn, type TestScreens, textOf } from '../support/screens.ts';

const CLEANED = '/moulds/600%20no.%202/cleaned';
const MOULD = '600 no. 2';

const kinds = async ({ database }: Pick<TestScreens, 'database'>) =>
  (await database.read((tx) => recentChanges(tx, 20))).map(({ kind }) => kind);
const condition = ({ database }: Pick<TestScreens, 'database'>) =>
  database.read(async (tx) => (await mouldById(tx, MOULD))?.condition);
const placeOf = (answer: Response) => [answer.status, answer.headers.get('Location')];

test('a form that is sent twice with one key is done once, and leads to the same page', async () => {
  const screens = await demoScreens();
  const act = randomUUID();
  const first = await screens.post(CLEANED, { act });
  expect(first.status).toBe(303);
  const done = await kinds(screens);
  expect(placeOf(await screens.post(CLEANED, { act }))).toEqual(placeOf(first));
  expect(await kinds(screens)).toEqual(done);
});

test('the key is known to whatever serves the data next', async () => {
  const { post, database } = await demoScreens();
  const act = randomUUID();
  const first = await post(CLEANED, { act });
  expect(placeOf(await screensOn(database, DEMO_NOW).post(CLEANED, { act }))).toEqual(placeOf(first));
});

test('sent twice at once, it is done once', async () => {
  const screens = await demoScreens();
  const act = randomUUID();
  const before = await kinds(screens);
  const answers = await Promise.all([1, 2, 3].map(() => screens.post(CLEANED, { act })));
  expect(new Set(answers.map((answer) => String(placeOf(answer)))).size).toBe(1);
  expect(answers[0]?.status).toBe(303);
  expect(await kinds(screens)).toHaveLength(before.length + 1);
});

const orderForm = async ({ get }: TestScreens) => ({
  once: /name="once" value="([^"]+)"/.exec(await (await get('/orders/new')).text())?.[1] ?? '',
  what0: 'kit:planter',
  quantity0: '1',
});

test('the form of an order is taken once, however often it is sent, and again where it says something else or is drawn anew', async () => {
  const screens = await demoScreens();
  const before = (await kinds(screens)).length;
  const form = { ...(await orderForm(screens)), customer: 'Anna' };
  expect(form.once).not.toBe('');
  const answers = await Promise.all([1, 2, 3].map(() => screens.post('/orders', form)));
  expect(answers.map(({ status }) => status)).toEqual([303, 303, 303]);
  expect(await kinds(screens)).toHaveLength(before + 1);
  expect((await screens.post('/orders', { ...form, customer: 'Ben' })).status).toBe(303);
  expect((await screens.post('/orders', { ...(await orderForm(screens)), customer: 'Anna' })).status).toBe(303);
  expect(await kinds(screens)).toHaveLength(before + 3);
});

test('what was undone is not done again by the same act, but by another', async () => {
  const screens = await demoScreens();
  const act = randomUUID();
  const first = await screens.post(CLEANED, { act });
  const change = new URL(first.headers.get('Location') ?? '', 'http://x').searchParams.get('done') ?? '';
  expect((await screens.post('/undo', { change, back: '/moulds', act: randomUUID() })).status).toBe(303);
  expect(placeOf(await screens.post(CLEANED, { act }))).toEqual(placeOf(first));
  expect(await condition(screens)).toBe('dirty');
  await screens.post(CLEANED, { act: randomUUID() });
  expect(await condition(screens)).toBe('ready');
});

test('what was refused may be sent again with its key', async () => {
  const screens = await demoScreens();
  const act = randomUUID();
  const sent = { repairedOn: 'no day', act };
  expect((await screens.post('/moulds/600%20no.%202/damaged', sent)).status).toBe(422);
  expect((await screens.post('/moulds/600%20no.%202/damaged', { act })).status).toBe(303);
  expect(await condition(screens)).toBe('damaged');
});

test('a key that is none is refused, and nothing is done', async () => {
  const screens = await demoScreens();
  for (const act of ['', 'again', `${randomUUID()}0`, 'x'.repeat(5000)]) {
    const answer = await screens.post(CLEANED, { act });
    expect(answer.status).toBe(422);
    await textOf(answer);
  }
  expect(await condition(screens)).toBe('dirty');
});
