import { describe, expect, test } from 'vitest';
import { behindDoor, OWNER } from '../support/behind-door.ts';
import { anyValue, otherThan, type Schema, type Schemas } from '../support/described.ts';
import { diceOf } from '../support/random-yard/dice.ts';
import { DEMO_NOW, demoScreens, screensOver } from '../support/screens.ts';
import { smallYard } from '../support/small-yard.ts';

const API = '/api/v1';
const read = async <T>(answer: Response): Promise<T> => (await answer.json()) as T;
interface Taken {
  change: number;
}

interface OrderPage {
  items: { id: string; customer: string | null }[];
  next: string | null;
}
type App = Awaited<ReturnType<typeof demoScreens>>['app'];

const sent = (body: unknown, headers: Record<string, string> = {}): RequestInit => ({
  ...{ method: 'POST', body: JSON.stringify(body) },
  headers: { 'Content-Type': 'application/json', ...headers },
});

interface Described {
  parameters: { name: string; in: string; schema: Schema }[];
  requestBody?: { content: { 'application/json': { schema: Schema } } };
  responses: Record<string, { content?: Record<string, { schema: Schema }> }>;
}

const descriptionOf = async (app: App) =>
  (await (await app.request(`${API}/openapi.json`)).json()) as {
    openapi: string;
    paths: Record<string, Record<string, Described>>;
    components: { schemas: Schemas };
  };

describe('the JSON interface', () => {
  test('says when an order could be ready, and takes it once, however often it is sent', async () => {
    const { app } = await screensOver(smallYard());
    const lines = [{ what: 'kit:pair', quantity: 1 }];
    const ready = await read<Record<'earliestOn' | 'promiseOn', string>>(
      await app.request(`${API}/ready`, sent({ lines })),
    );
    expect(ready.earliestOn).toMatch(/^2027-04-\d\d$/);
    const order = { lines, customer: 'Brid Casey', promisedOn: ready.promiseOn ?? ready.earliestOn };
    const key = { 'Idempotency-Key': 'shop 17' };
    const taken = await app.request(`${API}/orders`, sent(order, key));
    expect(taken.status).toBe(201);
    const { change } = await read<Taken>(taken);
    const again = await app.request(`${API}/orders`, sent(order, key));
    expect([again.status, (await read<Taken>(again)).change]).toEqual([201, change]);
    const other = await app.request(`${API}/orders`, sent({ ...order, customer: 'Another' }, key));
    expect((await read<Taken>(other)).change).not.toBe(change);
    const { items } = await read<OrderPage>(await app.request(`${API}/orders`));
    expect(items.filter((one) => one.customer === 'Brid Casey')).toHaveLength(1);
    expect(taken.headers.get('Location')).toBe(`${API}/orders/${items.at(-2)?.id}`);
    expect(JSON.stringify(items)).not.toContain('phone');
  });

  test('asks before a date that was given gets later, and does it once that is known', async () => {
    const { app } = await screensOver(smallYard());
    const order = { lines: [{ what: 'kit:pair', quantity: 2 }], promisedOn: '2027-04-10' };
    const asked = await app.request(`${API}/orders`, sent(order));
    expect(asked.status).toBe(409);
    const { seen } = await read<{ seen: string }>(asked);
    expect(seen).not.toBe('');
    expect((await app.request(`${API}/orders`, sent({ ...order, seen }))).status).toBe(201);
  });

  test('gives lists page by page', async () => {
    const { app } = await demoScreens();
    const all = await read<OrderPage>(await app.request(`${API}/orders?limit=200`));
    const ids: string[] = [];
    let after: string | null = '';
    while (after !== null) {
      const one: OrderPage = await read<OrderPage>(await app.request(`${API}/orders?limit=4&after=${after}`));
      ids.push(...one.items.map(({ id }) => id));
      after = one.next;
    }
    expect(ids).toEqual(all.items.map(({ id }) => id));
    expect(all.next).toBe(null);
  });

  test('knows what was seen by its ETag, and does nothing to what is another by now', async () => {
    const { app, post } = await demoScreens();
    const path = `${API}/orders/27-015`;
    const etag = (await app.request(path)).headers.get('ETag')!;
    expect((await app.request(path, { headers: { 'If-None-Match': `W/${etag}` } })).status).toBe(304);
    expect((await app.request(`${path}/cancel`, { method: 'POST' })).status).toBe(428);
    const cancel = (seen: string) => app.request(`${path}/cancel`, { method: 'POST', headers: { 'If-Match': seen } });
    expect((await cancel('"another"')).status).toBe(412);
    await post('/orders/27-015/cancel', {});
    expect((await cancel(etag)).status).toBe(412);
    expect(
      (await app.request(`${API}/orders/none/cancel`, { method: 'POST', headers: { 'If-Match': '*' } })).status,
    ).toBe(404);
  });

  test('says what is wrong as a problem, and where', async () => {
    const { app } = await demoScreens();
    const wrong = await app.request(
      `${API}/ready`,
      sent({
        lines: [
          { what: 'kit:planter', quantity: 1 },
          { what: 'kit:gone', quantity: 1 },
        ],
      }),
    );
    expect([wrong.status, wrong.headers.get('Content-Type')]).toEqual([422, 'application/problem+json']);
    expect(await wrong.json()).toMatchObject({ type: 'about:blank', status: 422, faults: [{ at: 'lines.1.what' }] });
    const cases: [RequestInit, number][] = [
      [{ method: 'POST', body: '{', headers: { 'Content-Type': 'application/json' } }, 400],
      [{ method: 'POST', body: '{}' }, 415],
      [sent({ lines: [{ what: 'x'.repeat(200_000), quantity: 1 }] }, { 'Content-Length': '200100' }), 413],
      [sent({ lines: [] }), 422],
      [sent({ lines: [] }, { 'Sec-Fetch-Site': 'cross-site' }), 403],
      [{ method: 'DELETE' }, 405],
    ];
    for (const [how, status] of cases) {
      const answer = await app.request(`${API}/ready`, how);
      expect([status, answer.status, answer.headers.get('Content-Type')]).toEqual([
        status,
        status,
        'application/problem+json',
      ]);
    }
    expect((await app.request(`${API}/nothing`)).status).toBe(404);
    expect((await app.request(`${API}/offers`, { headers: { Host: 'evil.example' } })).status).toBe(421);
  });
});

describe('a token', () => {
  const opened = async () => {
    const { database } = await demoScreens();
    const door = await behindDoor(database, { now: DEMO_NOW });
    const owner = await door.signedIn(OWNER);
    const make = async (scope: string) => {
      const html = await (await door.post('/people/tokens', { program: `A ${scope}`, scope }, owner)).text();
      return { Authorization: `Bearer ${/<textarea id="token"[^>]*>([\w-]+)</.exec(html)?.[1]}` };
    };
    return { ...door, owner, make, database };
  };

  test('opens what it is for and nothing else, to whoever has it', async () => {
    const { app, get, make } = await opened();
    const [read, yard, office] = [await make('read'), await make('yard'), await make('office')];
    const none = await get(`${API}/orders`);
    expect([none.status, none.headers.get('WWW-Authenticate')]).toEqual([401, 'Bearer']);
    expect((await get(`${API}/orders`, { Authorization: 'Bearer wrong' })).status).toBe(401);
    const statuses = async (token: Record<string, string>) => [
      (await get(`${API}/orders`, token)).status,
      (await get(`${API}/moulds`, token)).status,
      (await app.request(`${API}/ready`, sent({ lines: [{ what: 'kit:planter', quantity: 1 }] }, token))).status,
      (await app.request(`${API}/today/coated`, sent({ mould: 'none' }, token))).status,
      (await app.request(`${API}/orders`, sent({ lines: [] }, token))).status,
    ];
    expect(await statuses(read)).toEqual([200, 200, 200, 403, 403]);
    expect(await statuses(yard)).toEqual([403, 200, 403, 422, 403]);
    expect(await statuses(office)).toEqual([200, 200, 200, 422, 422]);
    // Pages are for people.
    expect((await get('/orders', office)).status).toBe(401);
    expect((await get('/people', office)).status).toBe(401);
  });

  test('is kept by its hash, shown once, and lets nobody in once it is withdrawn', async () => {
    const { get, post, owner, make, database } = await opened();
    const token = await make('office');
    const secret = token.Authorization.slice('Bearer '.length);
    const rows = await database.read(async (tx) => JSON.stringify(await tx.all('select * from apiTokens')));
    expect(rows).toContain('A office');
    expect(rows).not.toContain(secret);
    const page = await (await get('/people', owner)).text();
    expect(page).not.toContain(secret);
    const id = /name="token" value="(\d+)"/.exec(page)?.[1] ?? '';
    await post('/people/tokens/withdrawn', { token: id }, owner);
    expect((await get(`${API}/offers`, token)).status).toBe(401);
  });
});

test('everything is answered as the description has it, whatever is asked', { timeout: 300_000 }, async () => {
  const { app } = await demoScreens();
  const description = await descriptionOf(app);
  const { schemas } = description.components;
  const dice = diceOf(Number(process.env.PROPERTY_SEED ?? 1));
  const days = ['2027-04-10', '2027-05-08', '2027-09-30'];
  const words = {
    ...{ '': ['27-015', 'A word', 'Panel'], what: ['kit:planter', 'kit:herb-square', 'casting:panel-900', 'kit:none'] },
    ...{
      wantedOn: days,
      notBefore: days,
      promisedOn: days,
      heldUntil: days,
      at: ['2027-04-05T07:00:00Z', '2027-04-06T07:00:00Z'],
    },
    ...{
      mould: ['1200 no. 1', '900 no. 1', 'Coping no. 1'],
      casting: ['panel-900', 'panel-1200'],
      order: ['27-015', '27-011'],
    },
    ...{ limit: ['1', '50', '0'], after: ['27-012', ''] },
  };
  const operations = Object.entries(description.paths).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, described]) => ({ path, method, described })),
  );
  const statuses = new Map<number, number>();
  const faults: string[] = [];
  for (let i = 0; i < 160; i += 1) {
    const { path, method, described } = dice.pick(operations);
    const known = { dice, words };
    const of = (where: string) => described.parameters.filter((one) => one.in === where && dice.chance(0.6));
    const inPath = path.replace(/\{\w+\}/g, () =>
      encodeURIComponent(dice.pick(['27-015', '27-011', 'none', '%', '..x'])),
    );
    const query = new URLSearchParams(
      of('query').map(({ name, schema }): [string, string] => [name, String(anyValue(schema, schemas, known, name))]),
    );
    const headers = Object.fromEntries(
      of('header').map(({ name }) => [name, dice.pick(['*', '"x"', 'key 1', 'k'.repeat(250)])]),
    );
    const schema = described.requestBody?.content['application/json'].schema;
    const body = schema && (dice.chance(0.03) ? '{' : JSON.stringify(anyValue(schema, schemas, known)));
    const answer = await app.request(`${API}${inPath}?${query}`, {
      ...{ method: method.toUpperCase() },
      headers: { ...headers, ...(body === undefined ? {} : { 'Content-Type': 'application/json' }) },
      ...(body === undefined ? {} : { body }),
    });
    statuses.set(answer.status, (statuses.get(answer.status) ?? 0) + 1);
    const asked = `${method} ${inPath}?${query} ${body}`;
    const as = described.responses[answer.status];
    if (!as || answer.status >= 500) faults.push(`${answer.status} of ${asked}`);
    const type = answer.headers.get('Content-Type');
    const content = type === null ? undefined : as?.content?.[type];
    if (content)
      faults.push(...otherThan(content.schema, await answer.json(), schemas).map((one) => `${one}, of ${asked}`));
    else if (as?.content) faults.push(`${type} of ${asked}`);
  }
  expect(faults).toEqual([]);
  // Chance got past the first checks, and was refused as well.
  for (const status of [200, 201, 404, 422]) expect([status, (statuses.get(status) ?? 0) > 0]).toEqual([status, true]);
});

test('the checker of the description bites', () => {
  const schema: Schema = {
    type: 'object',
    properties: { a: { type: 'string' } },
    required: ['a'],
    additionalProperties: false,
  };
  expect(otherThan(schema, { a: 'x' }, {})).toEqual([]);
  for (const value of [{}, { a: 1 }, { a: 'x', b: 1 }, [], null]) expect(otherThan(schema, value, {})).not.toEqual([]);
});

test('the description is OpenAPI 3.1, and its page names everything that can be asked', async () => {
  const { app, get } = await demoScreens();
  const { openapi, paths } = await descriptionOf(app);
  expect(openapi).toBe('3.1.0');
  const html = await (await get(API)).text();
  for (const [path, methods] of Object.entries(paths))
    for (const method of Object.keys(methods)) expect(html).toContain(`${method.toUpperCase()} ${API}${path}`);
});
