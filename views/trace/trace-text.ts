import { listText } from '../../shared/list-text.ts';
import { countText, plural } from '../../shared/plural.ts';
import type { BagDateFacts, TracedPieceFacts } from '../../src/usecases/trace/pieces-seen.ts';
import type { TracedOrderFacts, TraceFound } from '../../src/usecases/trace/show-trace.ts';
import { momentText } from '../parts/clock-text.ts';
import { dayText } from '../parts/day-text.ts';

/** Where pieces came from and where they went. */
export const TRACE = '/trace';

const fromUntilText = (from: string | null, until: string | null, today: string): string =>
  [from && ` from ${dayText(from, today)}`, until && ` until ${dayText(until, today)}`].filter(Boolean).join('');

/** What was asked for, in words: "bags of Sat 3 Apr (Fast-setting mortar, 25 kg)". */
const askedText = ({ asked, name }: TraceFound, today: string): string => {
  if (asked.by === 'bag') return `bags of ${dayText(asked.on, today)}${name === null ? '' : ` (${name})`}`;
  if (asked.by === 'mould') return `${asked.mould}${fromUntilText(asked.from, asked.until, today)}`;
  return `order ${asked.order}${name === null ? '' : `, ${name}`}`;
};

/** "5 pieces of bags of Sat 3 Apr (Fast-setting mortar, 25 kg): 3 went into 2 orders." */
export const traceAnswer = (found: TraceFound, today: string): string => {
  const what = askedText(found, today);
  const { pieces, orders, asked } = found;
  if (pieces.length === 0) return `No piece with a known mark is of ${what}.`;
  const count = `${countText(pieces.length, 'piece')} of ${what}`;
  if (asked.by === 'order') return `${count}, out of ${countText(found.batches, 'batch', 'batches')}.`;
  const packed = pieces.filter(({ is }) => is === 'packed').length;
  const into = new Set(pieces.flatMap(({ is, order }) => (is === 'packed' && order !== null ? [order] : []))).size;
  if (packed === 0) return `${count}: none went into an order${orders.length > 0 ? ' yet' : ''}.`;
  return `${count}: ${packed} went into ${countText(into, 'order')}.`;
};

const PLACE: Readonly<Record<TracedPieceFacts['is'], string>> = {
  ...{ 'in its mould': 'In its mould', 'in the yard': 'In the yard', 'to mend': 'Kept aside to be mended' },
  ...{ scrapped: 'Scrapped', packed: 'Packed', gone: 'In the yard no more, by a count' },
};

/** "Packed in order 27-003, School garden", "In the yard, meant for order 27-003" */
export const placeText = ({ is, order, customer }: TracedPieceFacts): string => {
  const whose = order === null ? '' : `order ${order}${customer === null ? '' : `, ${customer}`}`;
  if (is === 'packed') return `Packed in ${whose}`;
  return whose === '' ? PLACE[is] : `${PLACE[is]}, meant for ${whose}`;
};

const bagText = ({ name, on, typed, dated }: BagDateFacts, today: string): string =>
  `${name}: ${typed || dated ? 'bag of' : 'came'} ${dayText(on, today)}`;

/** "Fast-setting mortar, 25 kg: bag of Sat 3 Apr; Plasticiser: came Thu 1 Apr" */
export const bagsText = (dates: readonly BagDateFacts[], today: string): string =>
  dates.length === 0 ? 'bag date not known' : dates.map((one) => bagText(one, today)).join('; ');

/** "Stripped Sat 10 Apr, 12:30, scrapped: blowholes"; nothing of a piece that is still in its mould. */
export const cameOutText = ({ strippedAt, cameOut, reason }: TracedPieceFacts, today: string): string | null => {
  if (cameOut === null) return null;
  const how = { good: 'good', mend: 'to be mended', scrap: 'scrapped' }[cameOut];
  const when = strippedAt === null ? '' : ` ${momentText(strippedAt, today)}`;
  return `Stripped${when}, ${how}${reason === null ? '' : `: ${reason}`}`;
};

/** "3 pieces, handed over Sat 10 Apr, 01632 960 001" */
export const orderText = ({ pieces, has, handedOverOn, status, phone }: TracedOrderFacts, today: string): string =>
  [
    `${countText(pieces, 'piece')}${has ? '' : ', meant for it'}`,
    handedOverOn !== null && `handed over ${dayText(handedOverOn, today)}`,
    handedOverOn === null && status === 'open' && has && 'in the yard',
    phone,
  ]
    .filter(Boolean)
    .join(', ');

/** What is not known, and may belong to what was asked for; a sentence each. */
export const unknownSentences = ({ perhaps, undated, thrown }: TraceFound): string[] => [
  ...(thrown > 0
    ? [`${countText(thrown, 'batch', 'batches')} of it ${plural(thrown, 'was', 'were')} thrown away.`]
    : []),
  ...(undated > 0
    ? [`Of ${countText(undated, 'batch', 'batches')} of the same mix nobody knows the bag date: they may be of it too.`]
    : []),
  ...(perhaps.length > 0
    ? [
        `Of pieces without a known mark some may be of it: ${listText(
          perhaps.map(
            ({ order, customer, count }) => `${count} in order ${order}${customer === null ? '' : `, ${customer}`}`,
          ),
        )}.`,
      ]
    : []),
];
