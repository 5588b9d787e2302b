import { median, ms, type Row } from '../table.ts';
import { lineTo, load } from './asking.ts';
import { type Served, servedBeside } from './served-beside.ts';

/** Orders and moulds of the yards whose pages are measured; 0 is the demo. */
export const PAGES_YARDS: readonly (readonly [orders: number, moulds: number])[] = [
  [0, 0],
  [120, 24],
  [1000, 200],
];

const LOAD_MS = 1_000;
const BARE_MS = 2_000;
const WARM_RUNS = 5;
/** What takes longer than this alone is not asked for at 20 at once. */
const TOO_SLOW_MS = 1_500;

const pathsOf = ({ order, mould }: Served): readonly string[] => [
  ...['/', '/today', '/orders', `/orders/${order}`, '/orders/new', '/moulds', `/mould/${encodeURIComponent(mould)}`],
  ...['/turns', '/buying', '/count', '/pieces', '/prices', '/trace', '/changes', '/today/sheet', '/today/evening'],
  ...['/going-out', '/moulds/labels', '/yard', '/yard/moulds', '/yard/stock', '/yard/hours', '/kits/by-size'],
];

const kb = (bytes: number): string => `${(bytes / 1000).toFixed(1)} kB`;

const measured = async (path: string, port: number, bare: number): Promise<Row> => {
  const line = await lineTo(port);
  const cold = await line.ask(path, 'identity');
  if (cold.status !== 200) {
    line.close();
    return { what: path, figure: `answered with ${cold.status}`, aim: '' };
  }
  const warm: number[] = [];
  for (let run = 0; run < WARM_RUNS; run += 1) warm.push((await line.ask(path, 'gzip')).ms);
  const plain = await line.ask(path, 'identity');
  const gzip = await line.ask(path, 'gzip');
  const brotli = await line.ask(path, 'br, gzip');
  line.close();
  const sizes = `${kb(plain.bytes)} plain, ${kb(gzip.bytes)} gzip, ${kb(brotli.bytes)} br`;
  const alone = `alone ${ms(cold.ms)} cold, ${ms(median(warm))} warm`;
  const figure = (...more: string[]) => ({ what: path, figure: [alone, ...more, sizes].join('; '), aim: '' });
  if (median(warm) > TOO_SLOW_MS) return figure();
  const { perSecond, p50, p99 } = await load(port, path, LOAD_MS);
  const atOnce = `${Math.round(perSecond)}/s (1/${Math.round(bare / perSecond)}), p50 ${ms(p50)}, p99 ${ms(p99)}`;
  return figure(atOnce);
};

/**
 * Every page of a yard of so many orders: alone, first and again; 20 at once for a second, beside a bare Hono in
 * the same run; and how large it is. Asked over sockets from this process, answered in another.
 */
export const pageRows = async (orders: number, moulds: number, only?: string): Promise<Row[]> => {
  const { child, ...told } = await servedBeside(orders, moulds);
  try {
    await load(told.barePort, '/', BARE_MS / 2);
    const bare = await load(told.barePort, '/', BARE_MS);
    const rows: Row[] = [
      { what: 'bare Hono', figure: `${Math.round(bare.perSecond)}/s, p99 ${ms(bare.p99)}`, aim: '' },
    ];
    for (const path of pathsOf(told).filter((one) => only === undefined || one === only))
      rows.push(await measured(path, told.port, bare.perSecond));
    return rows;
  } finally {
    child.removeAllListeners('exit');
    child.kill();
  }
};
