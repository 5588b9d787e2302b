import { type Context, Hono } from 'hono';
import type { z } from 'zod';
import type { Fault } from '../../shared/fault.ts';
import { ApiPage } from '../../views/api/api-page.tsx';
import type { UseCaseContext } from '../usecases/core/context.ts';
import { openApi } from './api/openapi.ts';
import { DOINGS, type Doing, READINGS, type Reading } from './api/operations.ts';
import { API, problem } from './api/problem.ts';
import { savedOnce } from './form-route.tsx';
import { keyOf } from './once.ts';
import { page } from './page.tsx';
import type { Screens } from './screens.ts';
import { doneBy } from './this-device.ts';

type Read = { ok: true; value: unknown } | { ok: false; answer: Response };

/** Faults of forms are at "quantity2"; here that is line 2. */
const faultsOf = (faults: readonly Fault[]) =>
  faults.map(({ path, message }) => ({ at: path.replace(/^(what|quantity)(\d+)$/, 'lines.$2.$1'), message }));

const wrong = (c: Context, faults: readonly Fault[]): Response => problem(c, 422, { faults: faultsOf(faults) });

const shaped = (c: Context, shape: z.ZodType, sent: unknown): Read => {
  const read = shape.safeParse(sent);
  if (read.success) return { ok: true, value: read.data };
  const faults = read.error.issues.map(({ path, message }) => ({ path: path.map(String).join('.'), message }));
  return { ok: false, answer: wrong(c, faults) };
};

const bodySent = async (c: Context, shape: z.ZodType | undefined): Promise<Read> => {
  if (shape === undefined) return { ok: true, value: undefined };
  if (!/^application\/json\b/i.test(c.req.header('Content-Type') ?? '')) return { ok: false, answer: problem(c, 415) };
  try {
    return shaped(c, shape, JSON.parse(await c.req.text()));
  } catch (error) {
    if (error instanceof SyntaxError) return { ok: false, answer: problem(c, 400, { detail: 'That is no JSON.' }) };
    throw error;
  }
};

/** Names a state of something by what is said of it: a strong ETag (RFC 9110, 8.8.3). */
const etagOf = async (text: string): Promise<string> => {
  const hash = new Uint8Array(await crypto.subtle.digest('SHA-256', new TextEncoder().encode(text)));
  return `"${[...hash.slice(0, 12)].map((byte) => byte.toString(16).padStart(2, '0')).join('')}"`;
};

/** Whether a header names an ETag; what was coded on its way is named as weak. */
const names = (header: string, etag: string): boolean =>
  header === '*' || header.split(',').some((one) => one.trim().replace(/^W\//, '') === etag);

const jsonOf = (c: Context, text: string, status: 200 | 201 = 200): Response =>
  c.body(text, status, { 'Content-Type': 'application/json' });

const read = async (c: Context, context: UseCaseContext, operation: Reading): Promise<Response> => {
  const query = operation.query ? shaped(c, operation.query, c.req.query()) : { ok: true as const, value: {} };
  if (!query.ok) return query.answer;
  const body = await bodySent(c, operation.body);
  if (!body.ok) return body.answer;
  const found = await operation.find(context, { params: c.req.param(), query: query.value, body: body.value });
  if (found === null) return problem(c, 404);
  if (!found.ok) return wrong(c, found.faults);
  const text = JSON.stringify(found.value);
  const etag = await etagOf(text);
  c.header('ETag', etag);
  if (operation.method === 'get' && names(c.req.header('If-None-Match') ?? '', etag)) return c.body(null, 304);
  return jsonOf(c, text);
};

/** Refused where it is to be done to what was seen, and that is another by now, or nobody says what was seen. */
const otherThanSeen = async (c: Context, context: UseCaseContext, { seen }: Doing): Promise<Response | null> => {
  if (!seen) return null;
  const now = await seen(context, c.req.param());
  if (now === null) return problem(c, 404);
  const match = c.req.header('If-Match');
  if (match === undefined) return problem(c, 428, { detail: 'Send the ETag of what you saw as If-Match.' });
  return names(match, await etagOf(JSON.stringify(now))) ? null : problem(c, 412);
};

const LONGEST_KEY = 200;

/** The mark of an act: of one key, one address and one body it is always the same. */
const actOf = async (c: Context, body: unknown): Promise<{ act?: string }> => {
  const key = c.req.header('Idempotency-Key');
  return key === undefined ? {} : { act: await keyOf({ key, path: c.req.path, body: JSON.stringify(body ?? null) }) };
};

const idOf = (value: unknown): string | null =>
  typeof value === 'object' && value !== null && 'id' in value && typeof value.id === 'string' ? value.id : null;

const act = async (c: Context, context: UseCaseContext, operation: Doing): Promise<Response> => {
  if ((c.req.header('Idempotency-Key') ?? '').length > LONGEST_KEY)
    return problem(c, 400, { detail: `An Idempotency-Key has ${LONGEST_KEY} letters at most.` });
  const body = await bodySent(c, operation.body);
  if (!body.ok) return body.answer;
  const known: UseCaseContext = { ...context, ...doneBy(c), ...(await actOf(c, body.value)) };
  const saved = await savedOnce(known, async () => {
    const other = await otherThanSeen(c, context, operation);
    if (other) return { kind: 'other' as const, other };
    return operation.act(known, { params: c.req.param(), query: {}, body: body.value });
  });
  if (saved.kind === 'other') return saved.other;
  if (saved.kind === 'refused') return wrong(c, saved.faults);
  if (saved.kind === 'moves') {
    const moved = saved.effect.moved.map(({ order, from, to }) => ({ order, from, to }));
    return problem(c, 409, {
      detail: 'Send `seen` along to have it done all the same.',
      seen: saved.effect.seen,
      moved,
    });
  }
  const { change } = saved;
  if (operation.status === 200) return jsonOf(c, JSON.stringify({ change }));
  const id = idOf(saved.value);
  if (id !== null) c.header('Location', `${API}/orders/${encodeURIComponent(id)}`);
  return jsonOf(c, JSON.stringify({ id, change }), 201);
};

const honoPath = (path: string): string => API + path.replace(/\{(\w+)\}/g, ':$1');

/** The JSON interface, its description and its page of documentation. */
export const apiRoutes = ({ context, path }: Screens): Hono => {
  const routes = new Hono();
  const description = JSON.stringify(openApi(path));
  routes.get(`${API}/openapi.json`, (c) => jsonOf(c, description));
  routes.get(API, (c) => page(c, { title: 'For other programs' }, <ApiPage description={JSON.parse(description)} />));
  for (const one of READINGS) routes.on(one.method.toUpperCase(), honoPath(one.path), (c) => read(c, context(), one));
  for (const one of DOINGS) routes.post(honoPath(one.path), (c) => act(c, context(), one));
  return routes;
};
