import { createServer, type IncomingMessage, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { forecastClient } from '../src/forecast-client.ts';
import { dayOf, forecastOf } from './support/forecast-answer.ts';

const PLACE = { latitude: 53.349, longitude: -6.2603, contact: 'yard@example.org' };
const BODY = JSON.stringify(forecastOf(dayOf('2027-04-09', 4, 16)));
const AT = Date.parse('2027-04-09T06:00:00Z');

let server: Server;
let address = '';
let asked: IncomingMessage[] = [];
let answer: { status: number; headers?: Record<string, string>; body?: string };

beforeAll(async () => {
  server = createServer((request, response) => {
    asked.push(request);
    response.writeHead(answer.status, answer.headers ?? {});
    response.end(answer.body ?? '');
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  address = `http://127.0.0.1:${(server.address() as AddressInfo).port}/complete`;
});
afterAll(() => new Promise((resolve) => server.close(resolve)));
beforeEach(() => {
  asked = [];
  answer = { status: 200, body: BODY };
});

test('asks for the place to a kilometre and says who asks; the answer is read', async () => {
  const found = await forecastClient(address)(PLACE);
  expect(found?.properties.timeseries).toHaveLength(24);
  expect(asked[0]?.url).toBe('/complete?lat=53.35&lon=-6.26');
  expect(asked[0]?.headers['user-agent']).toBe('mould-rota (yard@example.org)');
});

test('is not asked again before its answer ends, and then only for what changed', async () => {
  let now = AT;
  const ask = forecastClient(address, () => now);
  const modified = 'Fri, 09 Apr 2027 05:50:00 GMT';
  answer.headers = { expires: new Date(AT + 60_000).toUTCString(), 'last-modified': modified };
  const first = await ask(PLACE);
  expect(await ask(PLACE)).toBe(first);
  expect(asked).toHaveLength(1);
  now += 60_000;
  answer = { status: 304, headers: { expires: new Date(now + 60_000).toUTCString() } };
  expect(await ask(PLACE)).toBe(first);
  expect(asked[1]?.headers['if-modified-since']).toBe(modified);
  expect(await ask(PLACE)).toBe(first);
  expect(asked).toHaveLength(2);
});

test.each([
  [{ status: 503 }],
  [{ status: 403, body: 'Forbidden' }],
  [{ status: 200, body: '<html>' }],
  [{ status: 200, body: '{"properties":{}}' }],
])('what is no forecast is none: %j', async (said) => {
  answer = said;
  expect(await forecastClient(address)(PLACE)).toBeNull();
});

test('a service that is away is none', async () => {
  expect(await forecastClient('http://127.0.0.1:9/complete')(PLACE)).toBeNull();
});
