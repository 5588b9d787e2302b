import type { StoredOrder } from '../../../db/stores/order-store.ts';
import { isBatch } from '../../../shared/batch-record.ts';
import { minuteOf } from '../../../shared/time.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import type { Named, PageHead } from '../core/page-parts.ts';
import { dateReading } from '../plan/date-reading.ts';
import { type TraceAsked, type TraceTyped, traceTyped } from '../typed/trace-form.ts';
import type { TracedPiece } from './piece-ledger.ts';
import { materialName, nameOf, pieceFacts, type Seen, seePieces, type TracedPieceFacts } from './pieces-seen.ts';
import { trace } from './trace.ts';

/** An order with some of the pieces that were asked for; `has`: they went into it, else it is to get them. */
export interface TracedOrderFacts {
  id: string;
  customer: string | null;
  phone: string | null;
  status: StoredOrder['status'];
  handedOverOn: string | null;
  pieces: number;
  has: boolean;
}

/** What was found. */
export interface TraceFound {
  asked: TraceAsked;
  /** What was asked for, by its name: of bags the material, null for any. */
  name: string | null;
  pieces: readonly TracedPieceFacts[];
  orders: readonly TracedOrderFacts[];
  batches: number;
  thrown: number;
  perhaps: readonly { order: string; customer: string | null; count: number }[];
  undated: number;
}

/** Where pieces came from and where they went. */
export interface TraceModel extends PageHead {
  /** Bags that were used, the newest first; `id` is how the form names them. */
  bags: readonly (Named & { on: string })[];
  moulds: readonly string[];
  /** Null where nothing was asked yet, or it could not be read. */
  found: TraceFound | null;
  /** By field, what could not be read. */
  errors: Readonly<Record<string, string>>;
}

/** Bags of batches, each date of a material once, the newest first. */
const bagsOf = ({ yard, records }: Seen): TraceModel['bags'] => {
  const dates = records.flatMap((record) => (isBatch(record) ? (record.bagDates ?? []) : []));
  const known = new Map(dates.map(({ material, on }) => [`${on} ${material}`, { material, on }]));
  return [...known]
    .sort(([a], [b]) => b.localeCompare(a))
    .map(([id, { material, on }]) => ({ id, on, name: materialName(yard, material) }));
};

const orderFacts = (seen: Seen, pieces: readonly TracedPiece[]): TracedOrderFacts[] => {
  const counts = new Map<string, { pieces: number; has: boolean }>();
  for (const { order, is } of pieces) {
    if (order === null) continue;
    const before = counts.get(order) ?? { pieces: 0, has: false };
    counts.set(order, { pieces: before.pieces + 1, has: before.has || is === 'packed' });
  }
  return [...counts].map(([id, counted]) => {
    const order = seen.orders.get(id);
    const { status = 'cancelled', handedOverOn = null } = order ?? {};
    return { id, customer: nameOf(seen, id), phone: order?.customer?.phone ?? null, status, handedOverOn, ...counted };
  });
};

/** What of an order went out before the rest. */
const partsOf = ({ orders }: Seen, asked: TraceAsked): string[] =>
  asked.by === 'order' ? [...orders.values()].filter(({ partOf }) => partOf === asked.order).map(({ id }) => id) : [];

const found = (seen: Seen, asked: TraceAsked): TraceFound => {
  const { instantText } = calendarOf(seen.yard.yard.timeZone);
  const dayOf = (instant: string) => instantText(minuteOf(instant)).slice(0, 10);
  const { pieces, perhaps, ...counted } = trace({ ...seen, dayOf, parts: partsOf(seen, asked) }, asked);
  const material = asked.by === 'bag' && asked.material !== null ? materialName(seen.yard, asked.material) : null;
  return {
    ...{ asked, ...counted },
    name: asked.by === 'bag' ? material : asked.by === 'mould' ? asked.mould : nameOf(seen, asked.order),
    pieces: pieces.map((piece) => pieceFacts(seen, piece)),
    orders: orderFacts(seen, pieces),
    batches: new Set(pieces.flatMap(({ batch }) => batch ?? [])).size,
    perhaps: perhaps.map((one) => ({ ...one, customer: nameOf(seen, one.order) })),
  };
};

/** Where pieces came from and where they went: of an order, of bags of one date, or of a mould. */
export const showTrace = async (context: UseCaseContext, typed: TraceTyped): Promise<TraceModel> => {
  const asked = traceTyped(typed, await dateReading(context));
  const seen = await seePieces(context);
  const { yard, ledger } = seen;
  return {
    ...{ yardName: yard.yard.name, today: today(yard.yard.timeZone, context.now) },
    bags: bagsOf(seen),
    moulds: [...new Set([...yard.moulds.map(({ id }) => id), ...ledger.map(({ mould }) => mould)])],
    found: asked.ok && asked.value ? found(seen, asked.value) : null,
    errors: asked.ok ? {} : Object.fromEntries(asked.faults.map(({ path, message }) => [path, message])),
  };
};
