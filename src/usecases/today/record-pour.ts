import type { Tx } from '../../../db/open.ts';
import { addToStock } from '../../../db/stores/material-store.ts';
import { fillMould, mouldById, updateMould } from '../../../db/stores/mould-store.ts';
import type { Fault } from '../../../shared/fault.ts';
import type { Mix } from '../../../shared/mix.ts';
import { clockMinutes, isInstant, type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { bagsFor } from '../../engine/pack/bags.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { afterPour } from '../plan/carry-on.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { goodsOfPour } from '../plan/goods-used.ts';

/** One mould that was filled. `sealed`: it got its sealing coat before this pour. */
export interface Filled {
  mould: string;
  casting: string;
  order: string | null;
  sealed: boolean;
}

export interface PourRecord {
  pours: readonly Filled[];
  /** How many bags were mixed; null: as many as the pieces need. */
  bags: number | null;
  /** When the last mould was full: an instant, or by the clock of today ("10:45"); null: just now. */
  filledAt: string | null;
}

/** "900 no. 1, 900 no. 2 and 800 no. 1" */
export const listText = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;

/** The one mix that all the pieces are of. */
const mixOf = (pours: readonly Filled[], yard: YardFile): Outcome<Mix> => {
  const mixes = new Set(pours.map(({ casting }) => yard.castings.find(({ id }) => id === casting)?.mix));
  const [mix] = [...mixes].map((id) => yard.mixes.find((one) => one.id === id));
  if (mixes.size > 1) return refuse('pours', 'These pieces are of different mixes. Write down one batch at a time.');
  return mix ? done(mix) : refuse('pours', 'Choose what was poured.');
};

/** Bags for the pieces: their kg, rounded up to what can be mixed; none for pieces without weight. */
const bagsOfPours = (pours: readonly Filled[], mix: Mix, yard: YardFile): number => {
  const kg = pours.reduce((sum, { casting }) => sum + (yard.castings.find(({ id }) => id === casting)?.kg ?? 0), 0);
  return bagsFor(kg, mix.yieldKgPerBag, mix.bagStep);
};

const fillOne = async (tx: Tx, filled: Filled, filledAt: string, yard: YardFile): Promise<Fault | null> => {
  const fault = (message: string): Fault => ({ path: 'pours', message });
  const mould = await mouldById(tx, filled.mould);
  if (!mould) return fault(`There is no mould ${filled.mould}.`);
  if (mould.piece) return fault(`${mould.id} has a piece in it already. Nothing was written down.`);
  if (mould.condition === 'retired') return fault(`${mould.id} is scrapped. Nothing was written down.`);
  if (!mould.makes.some(({ casting }) => casting === filled.casting))
    return fault(`${mould.id} does not make that piece. Nothing was written down.`);
  // An order that is gone meanwhile (handed over on another screen) leaves the piece to stock.
  const order = yard.orders.some(({ id }) => id === filled.order) ? filled.order : null;
  await fillMould(tx, { mould: mould.id, casting: filled.casting, filledAt, order });
  await updateMould(tx, mould.id, {
    condition: mould.condition === 'damaged' ? 'damaged' : 'ready',
    prepped: false,
    setFor: filled.casting,
    turnsSinceOil: (filled.sealed ? 0 : mould.turnsSinceOil) + 1,
  });
  return null;
};

const takeMaterials = async (tx: Tx, { pours }: PourRecord, bags: number, mix: Mix, yard: YardFile): Promise<void> => {
  const castings = pours.map(({ casting }) => casting);
  for (const { material, quantity } of goodsOfPour(mix, bags, castings, yard))
    await addToStock(tx, material, -quantity);
};

const CLOCK = /^([01]\d|2[0-3]):[0-5]\d$/;

const noLater = (minute: Minute, now: Minute): Outcome<Minute> =>
  minute <= now ? done(minute) : refuse('filledAt', 'That time is still to come.');

/** The minute at which the moulds were full, which is no later than now. */
const filledMinute = (filledAt: string | null, now: Minute, yard: YardFile): Outcome<Minute> => {
  if (filledAt === null) return done(now);
  if (isInstant(filledAt)) return noLater(minuteOf(filledAt), now);
  if (!CLOCK.test(filledAt)) return refuse('filledAt', 'When? Write a time of today such as 10:45.');
  const calendar = calendarOf(yard.yard.timeZone);
  return noLater(calendar.minuteAt(calendar.dayOf(now), clockMinutes(filledAt)), now);
};

const recordFaults = ({ pours, bags }: PourRecord, mix: Mix, needed: number): Fault[] => [
  ...(pours.length === new Set(pours.map(({ mould }) => mould)).size
    ? []
    : [{ path: 'pours', message: 'A mould is in it twice.' }]),
  ...(bags === null || (bags === 0 && needed === 0) || (bags > 0 && bags <= mix.maxBags)
    ? []
    : [{ path: 'bags', message: `How many bags? Above 0, up to ${mix.maxBags} at once.` }]),
];

export interface Poured {
  bags: number;
  filled: Minute;
  /** When, in the words of the change: " at 9:05"; nothing for just now. */
  at: string;
}

/** "09:05" of an instant as it stands in a sentence. */
const clockWords = (instant: string): string => instant.slice(11, 16).replace(/^0/, '');

/** Writes a batch down inside a transaction, as of an instant. */
export const pourBatch = async (tx: Tx, yard: YardFile, record: PourRecord, now: string): Promise<Outcome<Poured>> => {
  if (record.pours.length === 0) return refuse('pours', 'Tick what was poured.');
  const mix = mixOf(record.pours, yard);
  if (!mix.ok) return mix;
  const filled = filledMinute(record.filledAt, minuteOf(now), yard);
  const needed = bagsOfPours(record.pours, mix.value, yard);
  const faults = [...recordFaults(record, mix.value, needed), ...(filled.ok ? [] : filled.faults)];
  if (!filled.ok || faults.length > 0) return { ok: false, faults };
  const filledAt = calendarOf(yard.yard.timeZone).instantText(filled.value);
  for (const pour of record.pours) {
    const fault = await fillOne(tx, pour, filledAt, yard);
    if (fault) return { ok: false, faults: [fault] };
  }
  const bags = record.bags ?? needed;
  await takeMaterials(tx, record, bags, mix.value, yard);
  const at = record.filledAt === null ? '' : ` at ${clockWords(filledAt)}`;
  return done({ bags, filled: filled.value, at });
};

/**
 * A batch is in its moulds: bags and what goes into the pieces leave the stock, and each mould holds a piece that begins
 * to set. What was poured stays written down as it was, whatever the plan had in mind.
 */
export const recordPour = (context: UseCaseContext, record: PourRecord): Promise<Outcome<Changed<Poured>>> =>
  changing(
    context,
    { kind: 'poured', words: ({ at }) => `${listText(record.pours.map(({ mould }) => mould))} poured${at}` },
    (tx, yard) => pourBatch(tx, yard, record, context.now),
    { carryOn: (plan, after, done) => afterPour({ pours: record.pours, ...done })(plan, after, done) },
  );
