import type { OrderLine } from '../../../shared/order.ts';
import { quoted } from '../../../shared/said-back.ts';
import { numberOfCell } from '../../engine/csv/cells.ts';
import type { Dialect } from '../../engine/csv/dialect.ts';
import { type Reading, read, unread } from '../../engine/units/reading.ts';
import { lineOf, whatOf } from '../typed/what-ordered.ts';
import type { Offer } from './order-contents.ts';
import { mostOfLine } from './order-draft.ts';

const plain = (name: string): string => name.trim().toLowerCase();

/** What is offered under a name, or why that cannot be told. */
export type OfferFinder = (name: string) => Reading<Offer>;

/** Finds what an order can ask for by its name, or by the kind and id that tells two of one name apart ("kit:trough"). */
export const offerFinder = (offers: readonly Offer[]): OfferFinder => {
  const known = new Map<string, Offer[]>();
  for (const offer of offers)
    for (const name of new Set([plain(offer.name), plain(offer.what.slice(offer.what.indexOf(':') + 1))]))
      known.set(name, [...(known.get(name) ?? []), offer]);
  const whats = new Map(offers.map((offer) => [offer.what, offer]));
  return (name) => {
    const exact = whats.get(name);
    if (exact) return read(exact);
    const [one, ...others] = known.get(plain(name)) ?? [];
    if (!one) return unread(`nothing here is called ${quoted(name)}`);
    if (others.length === 0) return read(one);
    return unread(
      `${quoted(name)} could be several things. Write ${[one, ...others].map(({ what }) => what).join(' or ')}`,
    );
  };
};

const inCell = (name: string): string => (/[;"]|^\s|\s$|^$/.test(name) ? `"${name.replaceAll('"', '""')}"` : name);

/** "2 x Planter; 3 x Panel 900", as it can be read again. */
export const askedForText = (
  lines: readonly OrderLine[],
  offers: readonly Offer[],
  find: OfferFinder,
  { decimal }: Dialect,
): string =>
  lines
    .map((line) => {
      const what = whatOf(line);
      const offer = offers.find((one) => one.what === what);
      const found = offer && find(offer.name);
      const name = offer && found?.ok && found.value.what === what ? offer.name : what;
      return `${String(line.quantity).replace('.', decimal)} x ${inCell(name)}`;
    })
    .join('; ');

const PART = /\s*([\d.,]+)\s*[x×*]\s*(?:"((?:[^"]|"")*)"|([^;"]+?))\s*(?:;|$)/iy;

const lineRead = (count: string, name: string, find: OfferFinder, dialect: Dialect): Reading<OrderLine> => {
  const quantity = numberOfCell(count, dialect);
  if (!quantity.ok) return quantity;
  const offer = find(name);
  if (!offer.ok) return offer;
  const line = lineOf(offer.value.what, quantity.value);
  if (!line || quantity.value <= 0) return unread(`how many ${name}? It has to be more than 0`);
  const most = mostOfLine(line);
  if (quantity.value > most)
    return unread(
      `${count} x ${name}: ${most.toLocaleString('en')} is the most one line can ask for. Split it into several`,
    );
  if (line.material === undefined && !Number.isInteger(quantity.value))
    return unread(`${count} x ${name}: it has to be a whole number`);
  return read(line);
};

/** Reads "2 x Planter; 3 x Panel 900" as lines of an order. */
export const askedFor = (text: string, find: OfferFinder, dialect: Dialect): Reading<OrderLine[]> => {
  const lines: OrderLine[] = [];
  const part = new RegExp(PART);
  const whole = text.replace(/[\s;]+$/, '');
  while (part.lastIndex < whole.length) {
    const at = part.lastIndex;
    const match = part.exec(whole);
    if (!match) return unread(`${quoted(whole.slice(at))} cannot be read. Write it like 2 x Planter; 3 x Panel 900`);
    const [, count = '', inQuotes, name = ''] = match;
    const line = lineRead(count, inQuotes?.replaceAll('""', '"') ?? name, find, dialect);
    if (!line.ok) return line;
    lines.push(line.value);
  }
  return read(lines);
};
