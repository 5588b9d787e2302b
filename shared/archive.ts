import { z } from 'zod';
import { archiveReferenceFaults } from './archive-references.ts';
import { archivedOrder } from './archived-order.ts';
import { askedFaults } from './asked-for.ts';
import { casting } from './casting.ts';
import { changeLog } from './change-log.ts';
import { customer } from './customer.ts';
import { english } from './english.ts';
import type { Fault } from './fault.ts';
import { figureOf } from './figure.ts';
import { forecastPlace } from './forecast.ts';
import { yardHabits } from './habits.ts';
import { kit } from './kit.ts';
import { kitSize } from './kit-size.ts';
import { planOfWork } from './late-work.ts';
import { incoming, material } from './material.ts';
import { mix } from './mix.ts';
import { orderMoney, yardCosts } from './money.ts';
import { finishedPieces, mould } from './mould.ts';
import { mouldPart } from './mould-part.ts';
import { amount, days, id, positive, whole, wholePositive } from './number.ts';
import { pieceToMend } from './piece-to-mend.ts';
import { shapeFaults } from './shape-faults.ts';
import { stockEntry } from './stock-entry.ts';
import { materialBuying, supplier } from './supplier.ts';
import { date, instant } from './time.ts';
import { typedLength, unitSystem } from './units.ts';
import { workRecord } from './work-record.ts';
import { yard } from './yard.ts';
import { yardFile } from './yard-file.ts';
import { referenceFaults } from './yard-references.ts';

/** The one version of archives that is written and read. A file of a later one is refused whole (`readArchive`). */
export const ARCHIVE_VERSION = 1;

const castingSize = z.strictObject({ length: typedLength, height: typedLength, thickness: typedLength });
// What went wrong is in an archive as the records themselves.
const { format: _format, version: _version, orders: _orders, record: _record, ...ofYardFile } = yardFile.shape;

/**
 * A yard file with all else that is written down about a yard: customers, past orders, notes, sizes, water, what is kept ready, pieces to mend, work done, the stock book,
 * guesses, what was typed, what was bought and has arrived, suppliers, habits, money, and the log. Of the plan there is only what is not recorded
 * yet: all else of it is made anew.
 */
export const archive = z.strictObject({
  format: z.literal('mould-rota/archive'),
  version: z.literal(ARCHIVE_VERSION),
  ...ofYardFile,
  yard: yard.extend({ fixedHours: whole }),
  units: unitSystem.optional(),
  english: english.optional(),
  habits: yardHabits
    .extend({
      floatDays: days.optional(),
      demo: z.boolean(),
      forecastLatitude: forecastPlace.shape.latitude.optional(),
      forecastLongitude: forecastPlace.shape.longitude.optional(),
      forecastContact: forecastPlace.shape.contact.optional(),
    })
    .optional(),
  materials: z.array(
    material.extend({
      ...{ openedNote: z.string().optional(), shortBy: positive.optional(), buying: materialBuying.optional() },
    }),
  ),
  suppliers: z.array(supplier).optional(),
  incoming: z.array(
    incoming.extend({
      firstOn: date.optional(),
      boughtOn: date.optional(),
      price: amount.optional(),
      arrivedOn: date.optional(),
      useBy: date.optional(),
    }),
  ),
  mixes: z.array(mix.extend({ waterLitresPerBag: positive.optional(), wetCureHours: wholePositive.optional() })),
  castings: z.array(casting.extend({ size: castingSize.optional(), keptReady: wholePositive.optional() })),
  moulds: z.array(
    mould.extend({
      ...{ note: z.string().optional(), damageNote: z.string().optional(), emptiedAt: instant.optional() },
      serviceEveryTurns: wholePositive.optional(),
      ...{ cost: amount.optional(), costTurns: wholePositive.optional() },
      parts: z.array(mouldPart).min(1).optional(),
    }),
  ),
  kits: z.array(
    kit.extend({ size: kitSize.optional(), keptReady: wholePositive.optional(), price: amount.optional() }),
  ),
  finished: z.array(finishedPieces.extend({ mould: id.optional(), filledAt: instant.optional() })),
  toMend: z.array(pieceToMend).optional(),
  /** All that was done, in the order in which it was recorded. */
  workDone: z.array(workRecord).optional(),
  /** The stock book, line by line, in the order in which it was written. */
  stockBook: z.array(stockEntry).optional(),
  customers: z.array(customer),
  orders: z.array(archivedOrder),
  /** What costs are reckoned by, and the money of orders; in the yard's own. */
  costs: yardCosts.optional(),
  orderMoney: z.array(orderMoney).optional(),
  guesses: z.array(figureOf),
  typed: z.array(figureOf.extend({ typed: z.string().min(1, 'is empty') })),
  /** What was to be done by then, or was under way, and is not recorded yet: the same is asked about where it is loaded. */
  unanswered: planOfWork.optional(),
  log: changeLog,
});
/** An archive once read: every default filled in. Instants and dates stay the texts they were. */
export type Archive = z.infer<typeof archive>;

/** True for an archive that a later version of the program wrote. */
const isLaterArchive = (input: unknown): boolean => {
  const { format, version } = Object(input) as { format?: unknown; version?: unknown };
  return format === 'mould-rota/archive' && typeof version === 'number' && version > ARCHIVE_VERSION;
};

const LATER = `was written by a later version of Mould Rota; this one reads archives of version ${ARCHIVE_VERSION}`;

/** Only what is open is planned: past orders, in their places, ask for nothing. */
const withOpenLines = ({ kits, orders }: Archive) => ({
  kits,
  orders: orders.map(({ status, lines }) => ({ lines: status === 'open' ? lines : [] })),
});

/**
 * Reads an archive: with every default filled in, or all its faults at once, each with its JSON path. Nothing is
 * repaired and nothing is thrown, whatever the input is. An archive of a later version has one fault, at `version`.
 *
 * Example: `readArchive({ format: 'mould-rota/archive', version: 99 }).faults.length` is 1.
 */
export const readArchive = (input: unknown): { ok: true; archive: Archive } | { ok: false; faults: Fault[] } => {
  // What a later version means by its fields is not known here, so nothing else is said about them.
  if (isLaterArchive(input)) return { ok: false, faults: [{ path: 'version', message: LATER }] };
  const read = archive.safeParse(input, { reportInput: true });
  const shape = read.success ? askedFaults(withOpenLines(read.data)) : shapeFaults(read.error.issues);
  const known = new Set(shape.map((fault) => fault.path));
  const references = [...referenceFaults(input), ...archiveReferenceFaults(input)];
  const faults = [...shape, ...references.filter((fault) => !known.has(fault.path))];
  return read.success && faults.length === 0 ? { ok: true, archive: read.data } : { ok: false, faults };
};
