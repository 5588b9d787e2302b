import { nextNumber } from '../../../db/stores/order-store.ts';
import type { StoreRows, WantedRows } from '../../../db/stores/store-rows.ts';
import { SLIP_WEIGHTS, SLIPS, slipOfWeight } from '../../../shared/order.ts';
import { quoted } from '../../../shared/said-back.ts';
import { LONGEST_NAME, LONGEST_NOTE } from '../../../shared/text-limits.ts';
import type { Dialect } from '../../engine/csv/dialect.ts';
import type { Cell } from '../../engine/csv/write-csv.ts';
import { read, unread } from '../../engine/units/reading.ts';
import { today } from '../core/context.ts';
import { askedFor, askedForText, type OfferFinder, offerFinder } from '../orders/asked-for.ts';
import { hasLeftStock } from '../orders/open-order.ts';
import { offersOf } from '../orders/order-contents.ts';
import { lastDay } from '../typed/last-day.ts';
import type { TableGround, TableRows } from './csv-ground.ts';
import { type RowReader, textNow } from './csv-row.ts';

type OrderRow = StoreRows['orders'][number];
type LineRow = WantedRows['orderLines'][number];
type CustomerRow = StoreRows['customers'][number];

const lineText = ({ kit, casting, material, quantity }: LineRow) => JSON.stringify([kit, casting, material, quantity]);

/** What the rows read so far have made of orders, lines and customers. */
class OrdersWritten {
  readonly orders: Map<string, OrderRow>;
  readonly customers: CustomerRow[];
  readonly seen = new Set<string>();
  private readonly lines = new Map<string, LineRow[]>();
  private readonly byNumber = new Map<number, CustomerRow>();
  private readonly byName = new Map<string, CustomerRow[]>();
  private readonly ground: TableGround;
  /** What phone customers had whom a row gave another one. */
  private readonly phoneBefore = new Map<number, string | null>();
  private number: string;
  private place: number;
  private last: number;

  constructor(ground: TableGround, named: readonly string[]) {
    const { orders, orderLines, customers } = ground.held;
    this.ground = ground;
    this.orders = new Map(orders.map((order) => [order.id, order]));
    for (const line of orderLines) this.lines.set(line.order, [...(this.lines.get(line.order) ?? []), line]);
    this.number = nextNumber([...this.orders.keys(), ...named], today(ground.yard.yard.timeZone, ground.now));
    this.customers = [...customers];
    for (const customer of customers) this.know(customer);
    this.place = Math.max(-1, ...orders.map(({ position }) => position));
    this.last = Math.max(0, ...customers.map(({ id }) => id));
  }

  customerWith(id: number | null): CustomerRow | undefined {
    return id === null ? undefined : this.byNumber.get(id);
  }

  private know(customer: CustomerRow): void {
    this.byNumber.set(customer.id, customer);
    this.byName.set(customer.name, [...(this.byName.get(customer.name) ?? []), customer]);
  }

  /** The phone of a customer is another one now. */
  private giveNewPhone(customer: CustomerRow, phone: string | null): void {
    this.phoneBefore.set(customer.id, customer.phone);
    const changed = { ...customer, phone };
    this.customers.splice(this.customers.indexOf(customer), 1, changed);
    this.byNumber.set(customer.id, changed);
    const named = this.byName.get(customer.name) ?? [];
    this.byName.set(
      customer.name,
      named.map((one) => (one.id === customer.id ? changed : one)),
    );
  }

  /**
   * The customer of that name and phone; without a word on the phone the one it was, or the only one of the name. Null where
   * another row gave the same customer another phone.
   */
  customerOf(name: string, phone: string | null | undefined, was: number | null): number | null {
    const named = this.byName.get(name) ?? [];
    const found =
      phone === undefined
        ? (named.find(({ id }) => id === was) ??
          (named.length === 1 ? named[0] : named.find((one) => one.phone === null)))
        : named.find((one) => one.phone === phone);
    if (found) return found.id;
    // The order's own customer by the same name, with another phone: that one has a new phone, and there is no second one.
    const own = named.find(({ id }) => id === was);
    if (own && phone !== undefined) {
      // Another row with the phone as it was says nothing new.
      if (!this.phoneBefore.has(own.id)) this.giveNewPhone(own, phone);
      else if (this.phoneBefore.get(own.id) !== phone) return null;
      return own.id;
    }
    this.last += 1;
    const added = { id: this.last, name, phone: phone ?? null, note: null };
    this.customers.push(added);
    this.know(added);
    return added.id;
  }

  /** The next number that neither an order nor a row of the file has. */
  nextId(): string {
    const id = this.number;
    this.number = nextNumber([id], `20${id.slice(0, 2)}`);
    return id;
  }

  blank(id: string): OrderRow {
    this.place += 1;
    return {
      ...{
        id,
        position: this.place,
        customerId: null,
        wantedOn: null,
        notBefore: null,
        promisedOn: null,
        firstPromisedOn: null,
        heldUntil: null,
      },
      ...{
        status: 'open',
        weight: SLIP_WEIGHTS['rather not'],
        note: null,
        address: null,
        takenAt: this.ground.now,
        partOf: null,
      },
      ...{ handedOverOn: null, packedAt: null, packedMinutes: null },
    };
  }

  linesOf(id: string): LineRow[] {
    return this.lines.get(id) ?? [];
  }

  setLines(id: string, lines: LineRow[]): void {
    const now = this.linesOf(id);
    const same = now.length === lines.length && now.every((line, index) => lineText(line) === lineText(lines[index]!));
    if (!same) this.lines.set(id, lines);
  }

  rows(): Pick<WantedRows, 'orders' | 'orderLines' | 'customers'> {
    return {
      orders: [...this.orders.values()],
      orderLines: [...this.lines.values()].flat(),
      customers: this.customers,
    };
  }
}

const weightOf = (row: RowReader, was: number): number => {
  if (!row.has('can it slip')) return was;
  const slip = row.read('can it slip', 'rather not', (text) => {
    const one = SLIPS.find((known) => known === text.toLowerCase());
    return one ? read(one) : unread(`${quoted(text)} is none of ${SLIPS.join(', ')}`);
  });
  return slipOfWeight(was) === slip ? was : SLIP_WEIGHTS[slip as keyof typeof SLIP_WEIGHTS];
};

const datesOf = (row: RowReader, was: OrderRow, day: string, last: string) => {
  const date = (column: string, now: string | null) => {
    const read = row.has(column) ? row.date(column, null) : now;
    if (read !== null && read > last && read !== now)
      row.wrong(column, `${read} is further off than is planned; the last day is ${last}`);
    return read;
  };
  const promisedOn = date('promised', was.promisedOn);
  const dates = {
    wantedOn: date('wanted', was.wantedOn),
    notBefore: date('not before', was.notBefore),
    promisedOn,
    firstPromisedOn: was.firstPromisedOn ?? was.promisedOn ?? promisedOn,
    heldUntil: date('held until', was.heldUntil),
  };
  if (dates.heldUntil && !dates.promisedOn && row.text('promised') === '')
    row.wrong('promised', 'say which date is held');
  if (dates.heldUntil && dates.heldUntil < day && dates.heldUntil !== was.heldUntil)
    row.wrong('held until', 'that day has passed, so the date would be free at once');
  return dates;
};

const customerOf = (row: RowReader, was: OrderRow, written: OrdersWritten): number | null => {
  const known = written.customerWith(was.customerId);
  const name = textNow(row, 'customer', known?.name ?? null, LONGEST_NAME);
  if (name === null) {
    if (row.text('phone') !== '') row.wrong('customer', 'is empty, and there is a phone');
    return null;
  }
  const phone = row.has('phone')
    ? textNow(row, 'phone', known?.name === name ? (known.phone ?? null) : null, LONGEST_NAME)
    : undefined;
  const customer = written.customerOf(name, phone, was.customerId);
  if (customer === null) row.wrong('phone', `another row has another new phone for ${quoted(name)}`);
  return customer;
};

const linesRead = (
  row: RowReader,
  was: OrderRow,
  isNew: boolean,
  find: OfferFinder,
  written: OrdersWritten,
  dialect: Dialect,
) => {
  if (!row.has('asked for') || row.text('asked for') === '') {
    if (isNew || (row.has('asked for') && written.linesOf(was.id).length > 0))
      row.wrong('asked for', 'say how many of what, as in 2 x Planter');
    return;
  }
  const lines = row.read('asked for', null, (text) => askedFor(text, find, dialect));
  if (lines === null) return;
  const rows = lines.map(({ kit = null, casting = null, material = null, quantity }, position) => ({
    ...{ order: was.id, position, kit, casting, material, quantity },
  }));
  const before = written.linesOf(was.id);
  written.setLines(was.id, rows);
  if (hasLeftStock(was) && written.linesOf(was.id) !== before)
    row.wrong('asked for', `order ${was.id} is packed${was.packedAt === null ? ' in part' : ''}. Unpack it first`);
};

/** The order of a row as it is now, or blank; null when it may not be changed. */
const orderOf = (row: RowReader, written: OrdersWritten): { was: OrderRow; isNew: boolean } | null => {
  const id = row.text('order') || written.nextId();
  if (written.seen.has(id)) {
    row.wrong('order', `${id} is there twice`);
    return null;
  }
  written.seen.add(id);
  const was = written.orders.get(id);
  if (was && was.status !== 'open') {
    row.wrong('order', `${id} is ${was.status}. Only open orders are changed`);
    return null;
  }
  return was ? { was, isNew: false } : { was: written.blank(id), isNew: true };
};

export const orderRowsOf: TableRows = (rows, ground) => {
  const { yard, now, dialect } = ground;
  const written = new OrdersWritten(
    ground,
    rows.map((row) => row.text('order')),
  );
  const find = offerFinder(offersOf(yard, 'metric'));
  const day = today(yard.yard.timeZone, now);
  for (const row of rows) {
    const found = orderOf(row, written);
    if (!found) continue;
    const { was, isNew } = found;
    linesRead(row, was, isNew, find, written, dialect);
    written.orders.set(was.id, {
      ...was,
      ...datesOf(row, was, day, lastDay(yard)),
      customerId: customerOf(row, was, written),
      weight: weightOf(row, was.weight),
      note: textNow(row, 'note', was.note, LONGEST_NOTE),
    });
  }
  return written.rows();
};

/** The open orders, a row each. */
export const orderCells = ({ held, yard, dialect }: Omit<TableGround, 'now'>): Cell[][] => {
  const offers = offersOf(yard, 'metric');
  const find = offerFinder(offers);
  const customers = new Map(held.customers.map((one) => [one.id, one]));
  const lines = new Map<string, StoreRows['orderLines']>();
  for (const line of held.orderLines) lines.set(line.order, [...(lines.get(line.order) ?? []), line]);
  const asked = (id: string) =>
    (lines.get(id) ?? []).map(({ kit, casting, material, quantity }) => ({
      ...(kit === null ? {} : { kit }),
      ...(casting === null ? {} : { casting }),
      ...(material === null ? {} : { material }),
      quantity,
    }));
  return held.orders
    .filter(({ status }) => status === 'open')
    .map((order) => {
      const customer = order.customerId === null ? undefined : customers.get(order.customerId);
      return [
        order.id,
        customer?.name ?? null,
        customer?.phone ?? null,
        askedForText(asked(order.id), offers, find, dialect),
        ...[order.wantedOn, order.notBefore, order.promisedOn, order.heldUntil],
        slipOfWeight(order.weight),
        order.note,
      ];
    });
};
