import { readFileSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { Writable } from 'node:stream';
import { parseArgs } from 'node:util';
import { ENGLISHES, type English } from '../shared/english.ts';
import { type Fault, faultText } from '../shared/fault.ts';
import { readOrderFor } from '../shared/order-file.ts';
import { readYardFile, type YardFile } from '../shared/yard-file.ts';
import { quoteOrder } from './engine/quote/quote.ts';
import { readEnvironment } from './environment.ts';
import type { OwnYard } from './file-commands.ts';
import { besidePlan, type PlanBeside, planInFile, readPlanBeside, readReady } from './plan-beside.ts';
import { sentencesSaid } from './sentences-said.ts';

const EFFORTS = ['quick', 'normal', 'thorough'] as const;
type Effort = (typeof EFFORTS)[number];
type Read<T> = { ok: true; value: T } | { ok: false; faults: Fault[] };

/** A quote searches for some seconds, as a page does in the background. */
const USAGE = [
  'plan [YARD.json] [--effort quick|normal|thorough] [--ready kit:ID=COUNT …] [--english British|US]',
  'quote YARD.json --order ORDER.json [--beside PLAN.json | --effort …] [--pairs] [--english …]',
  'owner NAME',
  'backup [FILE]',
  'verify FILE',
  'restore FILE [--yes]',
  'export [--archive | --csv orders|moulds|stock [--commas]]',
  'import FILE [--try]',
];

const wrong = (path: string, message: string): { ok: false; faults: Fault[] } => ({
  ok: false,
  faults: [{ path, message }],
});
const wrongUse = (message: string) =>
  wrong('command', `${message}. Use: ${USAGE.map((line) => `rota ${line}`).join(', or ')}`);

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

const planned = (
  yard: YardFile,
  effort: Effort,
  asked: readonly string[],
  english: English,
  { ready: kept, ...behind }: Pick<OwnYard, 'ready' | 'sparesBy'> = { ready: [] },
): Read<unknown> => {
  const read = readReady(yard, asked);
  if (!read.ok) return read;
  const ready = [...kept, ...read.value];
  return { ok: true, value: sentencesSaid(planInFile(yard, effort, { ...behind, ready }), english, yard) };
};

const plan = (yardName: string, effort: Effort, asked: readonly string[], english: English): Read<unknown> => {
  const json = readJson(yardName);
  if (!json.ok) return json;
  const read = readYardFile(json.value);
  return read.ok ? planned(read.yard, effort, asked, english) : read;
};

/** The yard of the database, with what is to stand ready in it, in the English it is written in unless another is asked for. */
const planOwn = async ({ effort = 'normal', ready = [], english, ...others }: Options): Promise<Read<unknown>> => {
  if (others.order !== undefined) return wrongUse('plan takes no --order');
  if (!isEffort(effort)) return wrongUse(`no effort "${effort}"`);
  if (english !== undefined && !isEnglish(english)) return wrongUse(`no English "${english}"`);
  const { ownYard } = await import('./file-commands.ts');
  const own = await ownYard();
  return own.ok ? planned(own.value.yard, effort, ready, english ?? own.value.english, own.value) : own;
};

interface Question {
  order: string;
  /** A plan file; without one the question is asked beside the plan that `plan` gives with this effort. */
  beside: string | undefined;
  effort: Effort;
  pairs: boolean;
  english: English;
}

const quote = (yardName: string, { order: orderName, beside, effort, pairs, english }: Question): Read<unknown> => {
  const files = [yardName, orderName, ...(beside === undefined ? [] : [beside])].map(readJson);
  const unread = files.flatMap((json) => (json.ok ? [] : json.faults));
  if (unread.length > 0) return { ok: false, faults: unread };
  const [yardJson, orderJson, planJson] = files.map((json) => (json.ok ? json.value : undefined));
  const yard = readYardFile(yardJson);
  if (!yard.ok) return yard;
  const order = readOrderFor(yard.yard, orderJson);
  if (!order.ok) return order;
  const plan: Read<PlanBeside> =
    beside === undefined
      ? { ok: true, value: besidePlan(planInFile(yard.yard, effort)) }
      : readPlanBeside(yard.yard, planJson);
  if (!plan.ok) return plan;
  const answer = quoteOrder(yard.yard, order.order, { limits: true, pairs, longer: 'look', ...plan.value });
  return { ok: true, value: sentencesSaid(answer, english, [yard.yard, order.order]) };
};

const isEnglish = (text: string): text is English => ENGLISHES.some((english) => english === text);

const isEffort = (text: string): text is Effort => EFFORTS.some((effort) => effort === text);

/** The options each command takes, by name. */
const OPTIONS_OF: Readonly<Record<string, readonly string[]>> = {
  plan: ['effort', 'ready', 'english'],
  quote: ['order', 'beside', 'effort', 'pairs', 'english'],
  export: ['archive', 'csv', 'commas'],
  import: ['try'],
  backup: [],
  owner: [],
  verify: [],
  restore: ['yes'],
};

interface Options {
  effort?: string | undefined;
  order?: string | undefined;
  beside?: string | undefined;
  pairs?: boolean | undefined;
  archive?: boolean | undefined;
  csv?: string | undefined;
  commas?: boolean | undefined;
  try?: boolean | undefined;
  yes?: boolean | undefined;
  ready?: string[] | undefined;
  english?: string | undefined;
}

const asJson = (read: Read<unknown>): Read<string> =>
  read.ok ? { ok: true, value: `${JSON.stringify(read.value, null, 2)}\n` } : read;

/** The commands that work on the database. They are loaded only when they are asked for. */
const files = async (command: string, rest: string[], options: Options): Promise<Read<string>> => {
  const { exportFrom, importInto } = await import('./file-commands.ts');
  const [name, ...others] = rest;
  if (command === 'export') return name === undefined ? exportFrom(options) : wrongUse('export takes no file');
  return name !== undefined && others.length === 0
    ? importInto(name, options.try ?? false)
    : wrongUse('name one file to import');
};

/** The commands that look after the file of the database. */
const whole = async (command: string, [name, ...others]: string[], { yes = false }: Options): Promise<Read<string>> => {
  const { backUp, restore, verify } = await import('./backup-commands.ts');
  if (others.length > 0 || (name === undefined && command !== 'backup')) return wrongUse(`name one file to ${command}`);
  if (command === 'verify') return verify(name ?? '');
  const read = readEnvironment(process.env);
  if (!read.ok) return { ok: false, faults: read.faults.map((message) => ({ path: 'environment', message })) };
  const { databaseUrl } = read.environment;
  return command === 'backup' ? backUp(databaseUrl, name) : restore(databaseUrl, name ?? '', yes);
};

/** Takes what a terminal would show of what is typed, and shows none of it. */
const nowhere = () => new Writable({ write: (_chunk, _encoding, taken) => taken() });

/** The first line of what is typed or put in. A terminal does not show it. */
const firstLine = async (): Promise<string> => {
  const isTyped = process.stdin.isTTY;
  if (isTyped) process.stderr.write('A password for this owner (12 letters or more; it is not shown), then Enter:\n');
  const lines = createInterface({ input: process.stdin, ...(isTyped ? { output: nowhere(), terminal: true } : {}) });
  lines.once('SIGINT', () => process.exit(130));
  for await (const line of lines) return line;
  return '';
};

const makeOwner = async ([name, ...others]: string[]): Promise<Read<string>> => {
  if (name === undefined || others.length > 0) return wrongUse('name one owner, such as "Anna"');
  const { owner } = await import('./file-commands.ts');
  return owner(name, await firstLine());
};

const WHOLE = ['backup', 'verify', 'restore'];

const run = async (positionals: string[], options: Options): Promise<Read<string>> => {
  const [command, ...rest] = positionals;
  const strange = Object.keys(options).find((name) => command && !(OPTIONS_OF[command] ?? [name]).includes(name));
  if (strange) return wrongUse(`${command} takes no --${strange}`);
  if (command === 'owner') return makeOwner(rest);
  if (command === 'plan' && rest.length === 0) return asJson(await planOwn(options));
  if (command && WHOLE.includes(command)) return whole(command, rest, options);
  return command === 'export' || command === 'import'
    ? files(command, rest, options)
    : asJson(runOnFile(positionals, options));
};

const runOnFile = (
  [command, yardName, ...rest]: string[],
  { effort = 'normal', order, beside, pairs = false, ready = [], english = 'British' }: Options,
): Read<unknown> => {
  if (command !== 'plan' && command !== 'quote') return wrongUse(command ? `no command "${command}"` : 'no command');
  if (yardName === undefined || rest.length > 0) return wrongUse('name one yard file');
  if (!isEffort(effort)) return wrongUse(`no effort "${effort}"`);
  if (!isEnglish(english)) return wrongUse(`no English "${english}"`);
  if (command === 'plan')
    return order === undefined ? plan(yardName, effort, ready, english) : wrongUse('plan takes no --order');
  return order === undefined
    ? wrongUse('quote needs --order')
    : quote(yardName, { order, beside, effort, pairs, english });
};

const OPTIONS = {
  effort: { type: 'string' },
  order: { type: 'string' },
  beside: { type: 'string' },
  pairs: { type: 'boolean' },
  archive: { type: 'boolean' },
  csv: { type: 'string' },
  commas: { type: 'boolean' },
  try: { type: 'boolean' },
  yes: { type: 'boolean' },
  ready: { type: 'string', multiple: true },
  english: { type: 'string' },
  help: { type: 'boolean', short: 'h' },
} as const;

/** All commands, one a line. */
const HELP = `${USAGE.map((line) => `rota ${line}`).join('\n')}\n`;

const read = async (args: string[]): Promise<Read<string>> => {
  try {
    const { positionals, values } = parseArgs({ args, options: OPTIONS, allowPositionals: true });
    const { help, ...options } = values;
    return help || positionals[0] === 'help' ? { ok: true, value: HELP } : await run(positionals, options);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code?.startsWith('ERR_PARSE_ARGS')) return wrongUse((error as Error).message);
    throw error;
  }
};

const result = await read(process.argv.slice(2));
if (result.ok) process.stdout.write(result.value);
else {
  for (const fault of result.faults) process.stderr.write(`${faultText(fault).replaceAll(/\s+/g, ' ')}\n`);
  process.exitCode = 2;
}
