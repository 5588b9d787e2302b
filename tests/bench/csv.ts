import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openDatabase } from '../../db/open.ts';
import { replaceYard } from '../../db/stores/replace-yard.ts';
import type { YardFile } from '../../shared/yard-file.ts';
import { planYard } from '../../src/engine/plan.ts';
import type { UseCaseContext } from '../../src/usecases/core/context.ts';
import { applyRows } from '../../src/usecases/files/csv-table.ts';
import { exportTable } from '../../src/usecases/files/export-table.ts';
import { loadFile, type ReadFile, readUpload } from '../../src/usecases/files/load-file.ts';
import { scaledYard } from '../support/scaled-yard.ts';
import { ms, type Row } from './table.ts';

const ROWS = 5000;
const MOULDS = 200;

const timedOnce = async <T>(work: () => T | Promise<T>): Promise<{ value: T; time: number }> => {
  const start = performance.now();
  const value = await work();
  return { value, time: performance.now() - start };
};

/** A database that holds the yard, for as long as the work lasts. */
const withYard = async <T>(yard: YardFile, work: (context: UseCaseContext) => Promise<T>): Promise<T> => {
  const folder = mkdtempSync(join(tmpdir(), 'yard-'));
  const database = await openDatabase({ url: `file:${join(folder, 'yard.db')}` });
  try {
    await database.write((tx) => replaceYard(tx, yard));
    return await work({ database, now: yard.yard.now });
  } finally {
    await database.close();
    rmSync(folder, { recursive: true });
  }
};

const read = (text: string, now: string): ReadFile => {
  const file = readUpload(new TextEncoder().encode(text), now);
  if (!file.ok) throw new Error(file.faults[0]?.message);
  return file.value;
};

/** So many new rows of stock: nothing is planned for them, so that the time is that of reading in alone. */
const stockText = (): string =>
  `material;unit;in the yard;price\r\n${Array.from({ length: ROWS }, (_, i) => `Part ${i};each;${i},5;1,25\r\n`).join('')}`;

const stockRows = (yard: YardFile): Promise<Row[]> =>
  withYard(yard, async (context) => {
    const parsed = await timedOnce(() => read(stockText(), context.now));
    const whole = await timedOnce(() => loadFile(context, parsed.value));
    if (!whole.value.ok) throw new Error(whole.value.faults[0]?.message);
    const all = parsed.time + whole.time;
    return [{ what: `${ROWS} rows of stock read in, with planning`, figure: ms(all), aim: 'under 3 s' }];
  });

const orderRows = async (orders: YardFile, bare: YardFile): Promise<Row[]> => {
  const { text } = await withYard(orders, (context) => exportTable(context, 'orders', 'points'));
  return withYard(bare, async (context) => {
    const parsed = await timedOnce(() => read(text, context.now));
    const { value: file } = parsed;
    if (file.kind !== 'orders') throw new Error('these are no orders');
    const written = await timedOnce(() => context.database.write((tx) => applyRows(tx, file, context.now)));
    if (!written.value.ok) throw new Error(written.value.faults[0]?.message);
    return [
      { what: `${ROWS} orders: the CSV is read`, figure: ms(parsed.time), aim: '' },
      { what: `${ROWS} orders: checked and written`, figure: ms(written.time), aim: '' },
      { what: `${ROWS} orders: both`, figure: ms(parsed.time + written.time), aim: 'under 3 s' },
    ];
  });
};

/** How long 5,000 rows take to be read in, part by part. */
export const csvRows = async (): Promise<Row[]> => {
  const yard = scaledYard(ROWS, MOULDS);
  const bare = { ...yard, orders: [] };
  const rows = [...(await stockRows(bare)), ...(await orderRows(yard, bare))];
  const planned = await timedOnce(() => planYard(yard, { effort: 'quick' }));
  return [...rows, { what: `${ROWS} orders, ${MOULDS} moulds: planned quickly`, figure: ms(planned.time), aim: '' }];
};
