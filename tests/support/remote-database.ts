import { createServer, type IncomingMessage } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { json } from 'node:stream/consumers';
import Database from 'libsql';
import { onTestFinished } from 'vitest';
import { temporaryFolder } from './temporary-folder.ts';

/*
 * As much of a database server as the client asks for: the pipeline of the Hrana 2 protocol over HTTP
 * (https://github.com/tursodatabase/libsql/blob/main/docs/HRANA_2_SPEC.md, from memory), over a file.
 */
type Wire = { type: string; value?: string | number };
type Step = { stmt: Statement; condition?: Condition };
type Condition = { type: string; step?: number; cond?: Condition; conds?: Condition[] };
interface Statement {
  sql?: string;
  sql_id?: number;
  args?: Wire[];
}
interface Ask {
  type: string;
  stmt?: Statement;
  batch?: { steps: Step[] };
  sql?: string;
  sql_id?: number;
}

const fromWire = ({ type, value }: Wire) => (type === 'null' ? null : type === 'integer' ? Number(value) : value);
const toWire = (value: unknown): Wire => {
  if (value === null) return { type: 'null' };
  if (typeof value !== 'number') return { type: 'text', value: String(value) };
  return Number.isInteger(value) ? { type: 'integer', value: String(value) } : { type: 'float', value };
};
const errorOf = (error: unknown) => ({ message: (error as Error).message, code: (error as { code?: string }).code });

/** One connection of a client: its transaction and the statements it has named last as long as it does. */
class Stream {
  readonly database: Database.Database;
  readonly texts = new Map<number, string>();

  constructor(path: string) {
    this.database = new Database(path, { timeout: 2000 });
  }

  execute({ sql, sql_id, args = [] }: Statement) {
    const statement = this.database.prepare(sql ?? this.texts.get(sql_id ?? -1) ?? '');
    const values = args.map(fromWire);
    if (!statement.reader) {
      const { changes, lastInsertRowid } = statement.run(values);
      return { cols: [], rows: [], affected_row_count: changes, last_insert_rowid: String(lastInsertRowid) };
    }
    const cols = statement.columns().map(({ name }) => ({ name }));
    const rows = (statement.raw(true).all(values) as unknown[][]).map((row) => row.map(toWire));
    return { cols, rows, affected_row_count: 0 };
  }

  holds(condition: Condition | undefined, errors: unknown[], results: unknown[]): boolean {
    if (!condition) return true;
    const { type, step = -1, cond, conds = [] } = condition;
    if (type === 'ok') return results[step] !== null && results[step] !== undefined;
    if (type === 'error') return errors[step] !== null && errors[step] !== undefined;
    if (type === 'not') return !this.holds(cond, errors, results);
    if (type === 'is_autocommit') return !this.database.inTransaction;
    const held = conds.map((each) => this.holds(each, errors, results));
    return type === 'and' ? held.every(Boolean) : held.some(Boolean);
  }

  batch(steps: Step[]) {
    const [results, errors]: [unknown[], unknown[]] = [[], []];
    for (const { stmt, condition } of steps) {
      const runs = this.holds(condition, errors, results);
      try {
        results.push(runs ? this.execute(stmt) : null);
        errors.push(null);
      } catch (error) {
        results.push(null);
        errors.push(errorOf(error));
      }
    }
    return { step_results: results, step_errors: errors };
  }

  answer({ type, stmt, batch, sql, sql_id }: Ask) {
    if (type === 'execute' && stmt) return { type, result: this.execute(stmt) };
    if (type === 'batch' && batch) return { type, result: this.batch(batch.steps) };
    if (type === 'store_sql') this.texts.set(sql_id ?? -1, sql ?? '');
    if (type === 'close') this.database.close();
    return { type };
  }
}

const answerAll = (stream: Stream, requests: Ask[]) =>
  requests.map((request) => {
    try {
      return { type: 'ok', response: stream.answer(request) };
    } catch (error) {
      return { type: 'error', error: errorOf(error) };
    }
  });

/** A database server at an `http:` address that asks for this token; it is gone when the test is over. */
export const remoteDatabase = async (token: string): Promise<string> => {
  const path = join(temporaryFolder(), 'remote.db');
  const streams = new Map<string, Stream>();
  const server = createServer(async (request: IncomingMessage, response) => {
    if (request.headers.authorization !== `Bearer ${token}`) return response.writeHead(401).end('{}');
    const asked = (await json(request)) as { baton?: string; requests: Ask[] };
    const baton = asked.baton ?? `stream-${streams.size}`;
    const stream = streams.get(baton) ?? new Stream(path);
    streams.set(baton, stream);
    const results = answerAll(stream, asked.requests);
    const body = { baton: stream.database.open ? baton : null, base_url: null, results };
    return response.writeHead(200, { 'content-type': 'application/json' }).end(JSON.stringify(body));
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  onTestFinished(() => void server.close());
  return `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
};
