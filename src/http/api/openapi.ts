import { z } from 'zod';
import { DOINGS, type Doing, READINGS, type Reading } from './operations.ts';
import { API } from './problem.ts';
import * as shapes from './shapes.ts';

type Json = Record<string, unknown>;

const schemaOf = (shape: z.ZodType, io: 'input' | 'output'): Json => {
  const { $schema: _draft, ...schema } = z.toJSONSchema(shape, { io, unrepresentable: 'any' }) as Json;
  return schema;
};

const json = (schema: Json): Json => ({ 'application/json': { schema } });

const nameOf = (shape: z.ZodType): string => {
  const found = Object.entries(shapes).find(([, one]) => one === shape);
  if (!found) throw new Error('A shape of the interface has no name.');
  return found[0];
};

const reference = (shape: z.ZodType): Json => ({ $ref: `#/components/schemas/${nameOf(shape)}` });

const problems = (statuses: readonly number[]): Json =>
  Object.fromEntries(
    statuses.map((status) => [
      String(status),
      {
        description: 'A problem (RFC 9457). Nothing was changed.',
        content: { 'application/problem+json': { schema: reference(shapes.problem) } },
      },
    ]),
  );

const ETAG = { ETag: { description: 'Names this very state of it.', schema: { type: 'string' } } };

const header = (name: string, description: string, required = false): Json => ({
  ...{ name, in: 'header', description, required },
  schema: { type: 'string', minLength: 1, maxLength: 200 },
});

const parametersOf = ({ path, query }: { path: string; query?: z.ZodType | undefined }): Json[] => {
  const inPath = [...path.matchAll(/\{(\w+)\}/g)].map(([, name]) => ({
    ...{ name, in: 'path', required: true, schema: { type: 'string' } },
  }));
  const { properties = {} } = query ? (schemaOf(query, 'input') as { properties?: Json }) : {};
  return [...inPath, ...Object.entries(properties).map(([name, schema]) => ({ name, in: 'query', schema }))];
};

/** What anything may come to: no token, not enough of one, nothing of the kind, the program at fault, or another one writing. */
const ANY = [401, 403, 404, 421, 500, 503];

const bodyOf = (body: z.ZodType | undefined): Json =>
  body === undefined ? {} : { requestBody: { required: true, content: json(reference(body)) } };

const statusesOf = ({ body, query }: { body?: z.ZodType | undefined; query?: z.ZodType | undefined }): number[] => [
  ...ANY,
  ...(body ? [400, 413, 415, 422] : []),
  ...(query ? [422] : []),
];

const reading = (operation: Reading): Json => ({
  summary: operation.summary,
  parameters: [
    ...parametersOf(operation),
    ...(operation.method === 'get' ? [header('If-None-Match', 'Answered with 304 where it is still so.')] : []),
  ],
  ...bodyOf(operation.body),
  responses: {
    200: { description: 'That is how it is.', headers: ETAG, content: json(reference(operation.answer)) },
    ...(operation.method === 'get' ? { 304: { description: 'It is still so.' } } : {}),
    ...problems(statusesOf(operation)),
  },
});

const doing = (operation: Doing): Json => ({
  summary: operation.summary,
  parameters: [
    ...parametersOf(operation),
    header('Idempotency-Key', 'What comes again under the same key, saying the same, is done once.'),
    ...(operation.seen ? [header('If-Match', 'The ETag of what was seen.', true)] : []),
  ],
  ...bodyOf(operation.body),
  responses: {
    [operation.status]: { description: 'Done, or done before.', content: json(reference(operation.answer)) },
    ...problems([...statusesOf(operation), 400, 409, 413, 422, ...(operation.seen ? [412, 428] : [])]),
  },
});

const inputs = new Set([...READINGS, ...DOINGS].flatMap(({ body }) => body ?? []));

/** The description of the JSON interface (OpenAPI 3.1), made of the shapes that check what comes and type what goes out. */
export const openApi = (path: string): Json => {
  const paths: Record<string, Json> = {};
  for (const one of READINGS) paths[one.path] = { ...paths[one.path], [one.method]: reading(one) };
  for (const one of DOINGS) paths[one.path] = { ...paths[one.path], [one.method]: doing(one) };
  return {
    openapi: '3.1.0',
    info: { title: 'Mould Rota', version: '1', description: 'Amounts in the unit a material is kept in.' },
    servers: [{ url: path + API }],
    security: [{ token: [] }, {}],
    paths,
    components: {
      securitySchemes: { token: { type: 'http', scheme: 'bearer' } },
      schemas: Object.fromEntries(
        Object.entries(shapes).map(([name, shape]) => [name, schemaOf(shape, inputs.has(shape) ? 'input' : 'output')]),
      ),
    },
  };
};
