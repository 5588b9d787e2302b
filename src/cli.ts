import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { type Fault, faultText } from '../shared/fault.ts';
import { readOrderFor } from '../shared/order-file.ts';
import { readYardFile } from '../shared/yard-file.ts';
import { planYard } from './engine/plan.ts';
import { quoteOrder } from './engine/quote/quote.ts';

const EFFORTS = ['quick', 'normal', 'thorough'] as const;
type Effort = (typeof EFFORTS)[number];
type Read<T> = { ok: true; value: T } | { ok: false; faults: Fault[] };

const USAGE =
  'rota plan YARD.json [--effort quick|normal|thorough], or rota quote YARD.json --order ORDER.json [--pairs]';

const wrong = (path: string, message: string): { ok: false; faults: Fault[] } => ({
  ok: false,
  faults: [{ path, message }],
});
const wrongUse = (message: string) => wrong('command', `${message}. Use: ${USAGE}`);

const readJson = (name: string): Read<unknown> => {
  let text: string;
  try {
    text = readFileSync(name, 'utf8');
  } catch (error) {
    const missing = (error as NodeJS.ErrnoException).code === 'ENOENT';
    return wrong('file', missing ? `there is no file "${name}"` : `"${name}" cannot be read`);
  }
  try {
    return { ok: true, value: JSON.parse(text.replace(/^\uFEFF/, '')) };
  } catch (error) {
    return wrong('file', `"${name}" is no JSON: ${(error as Error).message.replaceAll(/\s+/g, ' ')}`);
  }
};

const plan = (yardName: string, effort: Effort): Read<unknown> => {
  const json = readJson(yardName);
  if (!json.ok) return json;
  const read = readYardFile(json.value);
  return read.ok ? { ok: true, value: planYard(read.yard, { effort }) } : read;
};

const quote = (yardName: string, orderName: string, pairs: boolean): Read<unknown> => {
  const [yardJson, orderJson] = [readJson(yardName), readJson(orderName)];
  const unread = [yardJson, orderJson].flatMap((json) => (json.ok ? [] : json.faults));
  if (!yardJson.ok || !orderJson.ok) return { ok: false, faults: unread };
  const yard = readYardFile(yardJson.value);
  if (!yard.ok) return yard;
  const order = readOrderFor(yard.yard, orderJson.value);
  return order.ok ? { ok: true, value: quoteOrder(yard.yard, order.order, { limits: true, pairs }) } : order;
};

const isEffort = (text: string): text is Effort => EFFORTS.some((effort) => effort === text);

interface Options {
  effort?: string | undefined;
  order?: string | undefined;
  pairs?: boolean | undefined;
}

const run = (
  [command, yardName, ...rest]: string[],
  { effort = 'normal', order, pairs = false }: Options,
): Read<unknown> => {
  if (command !== 'plan' && command !== 'quote') return wrongUse(command ? `no command "${command}"` : 'no command');
  if (yardName === undefined || rest.length > 0) return wrongUse('name one yard file');
  if (!isEffort(effort)) return wrongUse(`no effort "${effort}"`);
  if (command === 'plan') return order === undefined ? plan(yardName, effort) : wrongUse('plan takes no --order');
  return order === undefined ? wrongUse('quote needs --order') : quote(yardName, order, pairs);
};

const read = (args: string[]): Read<unknown> => {
  try {
    const options = { effort: { type: 'string' }, order: { type: 'string' }, pairs: { type: 'boolean' } } as const;
    const { positionals, values } = parseArgs({ args, options, allowPositionals: true });
    return run(positionals, values);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code?.startsWith('ERR_PARSE_ARGS')) return wrongUse((error as Error).message);
    throw error;
  }
};

const result = read(process.argv.slice(2));
if (result.ok) process.stdout.write(`${JSON.stringify(result.value, null, 2)}\n`);
else {
  for (const fault of result.faults) process.stderr.write(`${faultText(fault).replaceAll(/\s+/g, ' ')}\n`);
  process.exitCode = 2;
}
