import type { FC } from 'hono/jsx';
import { Answer } from '../parts/answer.tsx';

interface Described {
  summary: string;
  requestBody?: { content: { 'application/json': { schema: { $ref: string } } } };
  responses: Record<string, { description: string; content?: Record<string, { schema: { $ref: string } }> }>;
}

/** What the page needs of the description of the JSON interface. */
export interface ApiDescription {
  servers: readonly { url: string }[];
  paths: Record<string, Record<string, Described>>;
  components: { schemas: Record<string, unknown> };
}

const nameOf = ({ $ref }: { $ref: string }): string => $ref.slice($ref.lastIndexOf('/') + 1);

const Shape: FC<{ what: string; name: string; schemas: ApiDescription['components']['schemas'] }> = ({
  what,
  name,
  schemas,
}) => (
  <details>
    <summary>{`${what}: ${name}`}</summary>
    <pre class="api-shape">{JSON.stringify(schemas[name], null, 2)}</pre>
  </details>
);

const Operation: FC<{ at: string; described: Described; schemas: ApiDescription['components']['schemas'] }> = ({
  at,
  described: { summary, requestBody, responses },
  schemas,
}) => {
  const good = Object.entries(responses).find(([status]) => status.startsWith('2'));
  const gives = good?.[1].content?.['application/json']?.schema;
  return (
    <section>
      <h2 class="api-at">
        <code>{at}</code>
      </h2>
      <p>{`${summary}.`}</p>
      {requestBody && (
        <Shape what="Takes" name={nameOf(requestBody.content['application/json'].schema)} schemas={schemas} />
      )}
      {gives && <Shape what="Gives" name={nameOf(gives)} schemas={schemas} />}
    </section>
  );
};

/** How other programs ask and record, made of the description that they read themselves. */
export const ApiPage: FC<{ description: ApiDescription }> = ({ description: { servers, paths, components } }) => {
  const server = servers[0]?.url ?? '';
  return (
    <>
      <Answer note="The owner makes tokens at Who may come in; at the one desk none is needed.">
        Other programs can ask and record here.
      </Answer>
      <p>
        Send <code>Authorization: Bearer …</code>. What is recorded takes an <code>Idempotency-Key</code>, so that it
        can be sent again. The same in a form for programs (OpenAPI 3.1):{' '}
        <a href="/api/v1/openapi.json">openapi.json</a>.
      </p>
      {Object.entries(paths).flatMap(([path, methods]) =>
        Object.entries(methods).map(([method, described]) => (
          <Operation
            at={`${method.toUpperCase()} ${server}${path}`}
            described={described}
            schemas={components.schemas}
          />
        )),
      )}
    </>
  );
};
