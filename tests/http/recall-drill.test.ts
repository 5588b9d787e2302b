import { parse } from 'csv-parse/sync';
import { expect, test } from 'vitest';
import type { ShownStep } from '../bench/season/today-page.ts';
import {
  boxesIn,
  type HandPiece,
  look,
  nextStep,
  pieceOnLabel,
  type RecallYard,
  recallYard,
  send,
  takeIn,
} from '../support/recall-yard.ts';

const PRINTED = '2027-02-03';

/** What happened in all, so that the drill is known to have had all of it. */
interface Happened {
  scrapped: number;
  undone: number;
  printed: number;
  swapped: number;
}

const pour = async (yard: RecallYard, { done }: ShownStep, happened: Happened): Promise<void> => {
  const moulds = Object.keys(done!.fields)
    .filter((name) => /^filled\d+$/.test(name))
    .map((name) => done!.fields[name.replace('filled', 'mould')]!);
  const isPrinted = happened.undone === 1 && happened.printed === 0;
  const change = await send(yard, done!, isPrinted ? { bagDates: '3 Feb' } : {});
  if (change === null) return;
  if (happened.undone === 0 && yard.log.length > 3) {
    // It was a slip: undone, and said again later.
    await yard.app.request('/undo', { method: 'POST', body: new URLSearchParams({ change, back: '/today' }) });
    happened.undone += 1;
    return;
  }
  const opened = yard.bags.shift() ?? null;
  if (isPrinted) happened.printed += 1;
  for (const mould of moulds)
    yard.log.push({ mould, at: yard.clock.minute, bag: isPrinted ? PRINTED : opened, is: 'in its mould', order: null });
};

const strip = async (yard: RecallYard, { done }: ShownStep, happened: Happened): Promise<void> => {
  const piece = yard.log.find(({ mould, is }) => mould === done!.fields.mould && is === 'in its mould')!;
  const isBad = yard.log.filter(({ is }) => is !== 'in its mould').length % 5 === 3;
  const typed: Record<string, string> = isBad ? { cameOut: 'scrap', reason: 'a crack' } : { cameOut: 'good' };
  if ((await send(yard, done!, { ...typed, sure: 'early' })) === null) return;
  piece.is = isBad ? 'scrapped' : 'on the rack';
  happened.scrapped += Number(isBad);
};

/** Of an order every second packing takes another piece than the plan has for it. */
const pack = async (yard: RecallYard, { done }: ShownStep, html: string, happened: Happened): Promise<void> => {
  const order = done!.fields.order!;
  const boxes = boxesIn(html, order);
  const [given, others] = [boxes.filter(({ ticked }) => ticked), boxes.filter(({ ticked }) => !ticked)];
  const swap = others.length > 0 && given.length > 0;
  const taken = swap ? [...given.slice(1), others.at(-1)!] : given;
  const typed = Object.fromEntries([...given.map(({ name }) => [name, '']), ...taken.map(({ name }) => [name, 'yes'])]);
  const pieces = taken.map(({ label }) => pieceOnLabel(yard, label)!);
  if ((await send(yard, done!, typed)) === null) return;
  happened.swapped += Number(swap);
  for (const piece of pieces) Object.assign(piece, { is: 'packed', order });
};

const work = async (yard: RecallYard, happened: Happened): Promise<void> => {
  for (let taps = 0; taps < 40; taps++) {
    const next = await nextStep(yard);
    if (!next) return;
    const { step, html } = next;
    yard.clock.setOn(step.end);
    if (step.kind === 'batch') await pour(yard, step, happened);
    else if (step.kind === 'strip') await strip(yard, step, happened);
    else if (step.kind === 'pack') await pack(yard, step, html, happened);
    else await send(yard, step.done!);
  }
};

/** Which piece it is for the hands: the so-and-so-many-th out of its mould, and the order it went into. */
const namesOf = (pieces: readonly HandPiece[], log: readonly HandPiece[]): string[] =>
  pieces
    .map((piece) => {
      const turn = log.filter((one) => one.mould === piece.mould && one.at <= piece.at).length;
      return `${piece.mould} turn ${turn} ${piece.is === 'packed' ? piece.order : piece.is}`;
    })
    .sort();

interface Row {
  mould: string;
  poured: string;
  order: string;
  'where it is': string;
}

const rowsOf = async (yard: RecallYard, query: Record<string, string>): Promise<Row[]> =>
  parse(await look(yard, `/trace.csv?${new URLSearchParams(query)}`), { columns: true, bom: true });

const WHERE: Readonly<Record<string, HandPiece['is']>> = { 'in the yard': 'on the rack', packed: 'packed' };

/** The same names, out of the program's list; turns are counted over all that it has of the mould. */
const namesIn = async (yard: RecallYard, query: Record<string, string>): Promise<string[]> => {
  const rows = await rowsOf(yard, query);
  const turns = new Map<string, Row[]>();
  for (const { mould } of rows) if (!turns.has(mould)) turns.set(mould, await rowsOf(yard, { mould }));
  return rows
    .map(({ mould, poured, order, 'where it is': place }) => {
      const turn = turns.get(mould)!.findIndex((one) => one.poured === poured) + 1;
      const is = WHERE[place] ?? (place as HandPiece['is']);
      return `${mould} turn ${turn} ${is === 'packed' ? order : is}`;
    })
    .sort();
};

test('a bag date, a mould and an order lead to the pieces and orders which the log of the hands names, and to no other', async () => {
  const yard = await recallYard();
  const happened: Happened = { scrapped: 0, undone: 0, printed: 0, swapped: 0 };
  for (const [day, came, date] of [
    ['2027-04-09', 3, null],
    ['2027-04-10', 3, '2027-07-15'],
    // These go off sooner, and so are opened before those that came a day before.
    ['2027-04-11', 6, '2027-06-30'],
    ['2027-04-12', 0, null],
  ] as const) {
    yard.clock.setOn(yard.clock.at(day, '07:55'));
    if (came > 0) await takeIn(yard, came, date);
    await work(yard, happened);
    // One customer will have none after all: what was meant for him goes to others.
    if (day === '2027-04-09')
      await yard.app.request('/orders/27-004/cancel', { method: 'POST', body: new URLSearchParams() });
  }
  expect(yard.refused).toEqual([]);
  expect(happened).toMatchObject({ undone: 1, printed: 1 });
  expect(happened.scrapped).toBeGreaterThan(0);
  expect(happened.swapped).toBeGreaterThan(0);
  const bags = [...new Set(yard.log.flatMap(({ bag }) => bag ?? []))];
  expect(bags.length).toBeGreaterThan(2);
  expect(bags.filter((bag) => yard.dates.has(bag)).length).toBeGreaterThan(0);
  for (const bag of bags) {
    const mine = namesOf(
      yard.log.filter((piece) => piece.bag === bag),
      yard.log,
    );
    expect([bag, ...(await namesIn(yard, { bag: `${bag} mortar` }))]).toEqual([bag, ...mine]);
  }
  for (const mould of ['900 no. 1', '900 no. 2', '900 no. 3'])
    expect(await namesIn(yard, { mould })).toEqual(
      namesOf(
        yard.log.filter((piece) => piece.mould === mould),
        yard.log,
      ),
    );
  const orders = [...new Set(yard.log.flatMap(({ is, order }) => (is === 'packed' && order ? [order] : [])))];
  expect(orders.length).toBeGreaterThan(3);
  for (const order of orders)
    expect(await namesIn(yard, { order })).toEqual(
      namesOf(
        yard.log.filter((piece) => piece.order === order),
        yard.log,
      ),
    );
});
