import { z } from 'zod';
import { askedFaults } from './asked-for.ts';
import { casting } from './casting.ts';
import type { Fault } from './fault.ts';
import { kit } from './kit.ts';
import { incoming, material } from './material.ts';
import { mix } from './mix.ts';
import { finishedPieces, mould, pieceInMould } from './mould.ts';
import { order } from './order.ts';
import { begun, keep } from './plan.ts';
import { shapeFaults } from './shape-faults.ts';
import { supplierInFile } from './supplier.ts';
import { temperatureStep, weather } from './temperature.ts';
import { date, dateIn, isDate, isInstant, isTimeZone } from './time.ts';
import { extraWindow, workWindow } from './work.ts';
import { yard } from './yard.ts';
import { yardRecord } from './yard-record.ts';
import { referenceFaults } from './yard-references.ts';

/** Version 1 had less in it; what it has means the same but for the sealing coat, so that a file of it is one of version 2. */
const versionRead = z.union([z.literal(1), z.literal(2)], 'has to be 1 or 2').transform(() => 2 as const);

/** Everything a plan depends on. The store loads into it, the engine reads nothing else. */
export const yardFile = z.strictObject({
  format: z.literal('mould-rota/yard'),
  version: versionRead,
  yard,
  work: z.array(workWindow),
  closed: z.array(date),
  extra: z.array(extraWindow),
  temperatures: z.array(temperatureStep),
  weather: weather.optional(),
  materials: z.array(material),
  suppliers: z.array(supplierInFile).optional(),
  incoming: z.array(incoming),
  mixes: z.array(mix),
  castings: z.array(casting),
  moulds: z.array(mould),
  kits: z.array(kit),
  finished: z.array(finishedPieces),
  inMould: z.array(pieceInMould),
  orders: z.array(order),
  keep: keep.optional(),
  begun: begun.optional(),
  record: yardRecord.optional(),
});
/** A yard file once read: every default filled in. Only what `readYardFile` passed also holds together. */
export type YardFile = z.infer<typeof yardFile>;
/** A yard file as written, before defaults are filled in. */
export type YardFileInput = z.input<typeof yardFile>;

const isRecord = (x: unknown): x is Record<string, unknown> => typeof x === 'object' && x !== null && !Array.isArray(x);

/** A set-up of version 1 held the sealing coat as well, and said so; now that is a task of its own. */
const withoutCoats = (pour: unknown): unknown => {
  if (!isRecord(pour)) return pour;
  const { oiled: _oiled, ...rest } = pour;
  return rest;
};

/** The date in the yard's zone at `now`; null where the file does not say either. */
const todayOf = (yard: unknown): string | null => {
  if (!isRecord(yard) || typeof yard.timeZone !== 'string' || typeof yard.now !== 'string') return null;
  if (!isTimeZone(yard.timeZone) || !isInstant(yard.now)) return null;
  return dateIn(yard.timeZone, yard.now);
};

/** In version 1 what was to have come before today was there today; now it is overdue. */
const withoutOverdue = (goods: unknown, today: string | null): unknown =>
  isRecord(goods) && typeof goods.on === 'string' && isDate(goods.on) && today !== null && goods.on < today
    ? { ...goods, on: today }
    : goods;

/** A file of version 1 as one of version 2; a firm batch that was to be coated then no longer holds, and is dropped (R13). */
const asVersion2 = (input: unknown): unknown => {
  if (!isRecord(input) || input.version !== 1) return input;
  const { keep, incoming } = input;
  const today = todayOf(input.yard);
  return {
    ...input,
    ...(Array.isArray(incoming) && { incoming: incoming.map((goods) => withoutOverdue(goods, today)) }),
    ...(isRecord(keep) && Array.isArray(keep.pours) && { keep: { ...keep, pours: keep.pours.map(withoutCoats) } }),
  };
};

/**
 * Reads a yard file: the file with every default filled in, or all its faults at once, each with its JSON path.
 * Nothing is repaired and nothing thrown, whatever the input is.
 *
 * Example: a file that was read is a file: `readYardFile(yard).ok` is true. `readYardFile({}).faults[0]` is `{ path:
 * 'format', message: 'has to be "mould-rota/yard"' }`, and every missing field has one.
 */
export const readYardFile = (input: unknown): { ok: true; yard: YardFile } | { ok: false; faults: Fault[] } => {
  const read = yardFile.safeParse(asVersion2(input), { reportInput: true });
  const shape = read.success ? askedFaults(read.data) : shapeFaults(read.error.issues);
  const known = new Set(shape.map((fault) => fault.path));
  const faults = [...shape, ...referenceFaults(input).filter((fault) => !known.has(fault.path))];
  return read.success && faults.length === 0 ? { ok: true, yard: read.data } : { ok: false, faults };
};
