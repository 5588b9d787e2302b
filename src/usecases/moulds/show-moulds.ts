import { mouldsInOrder, type StoredMould } from '../../../db/stores/mould-store.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import { type Calendar, calendarOf } from '../../engine/calendar/calendar.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import { mouldKind } from '../core/mould-kind.ts';
import type { PageHead } from '../core/page-parts.ts';
import { currentPlan } from '../plan/make-plan.ts';
import { poursOfMould } from '../plan/pours-of-mould.ts';
import { foundMoulds, type MouldSearch } from './find-moulds.ts';

/** The piece in a mould. */
interface PieceInMould {
  name: string;
  filledAt: string;
  /** Null: for stock. */
  customer: string | null;
  /** Null: by the plan it stays. */
  stripAt: string | null;
  /** Why it stays; null when it is stripped. */
  stays: string | null;
}

/** The next pour into a mould by the plan. */
interface NextPour {
  at: string;
  /** Null: for stock. */
  customer: string | null;
  /** Its time is over, and it is not written down. */
  late: boolean;
}

/** One mould with what is in it and what is next. */
export interface MouldFacts {
  id: string;
  condition: StoredMould['condition'];
  /** Set up for its next pour. */
  prepped: boolean;
  /** Names of the pieces it can make, and of the one it is set for. */
  makes: readonly string[];
  setFor: string;
  /** Null: it is empty. */
  piece: PieceInMould | null;
  /** The day it should be mended; null when nobody said. */
  repairedOn: string | null;
  note: string | null;
  damageNote: string | null;
  /** Turns left before it has to be sealed; null when it never is. */
  turnsToSealing: number | null;
  nextPour: NextPour | null;
}

/** Moulds of one kind, as the maker lists them. */
interface MouldsOfKind {
  kind: string;
  moulds: readonly MouldFacts[];
}

/** The moulds that are looked for. */
export interface MouldsModel extends PageHead {
  search: MouldSearch;
  /** Every mould, found or not. */
  all: readonly MouldFacts[];
  /** How many are as was asked for. */
  found: number;
  /** Those of them in use; scrapped ones stand apart. */
  kinds: readonly MouldsOfKind[];
  scrapped: readonly MouldFacts[];
}

interface Seen {
  plan: PlanFile;
  calendar: Calendar;
  customers: ReadonlyMap<string, string>;
  castings: ReadonlyMap<string, string>;
  now: Minute;
}

const pieceIn = ({ id, piece }: StoredMould, { plan, calendar, customers, castings }: Seen): PieceInMould | null => {
  if (!piece) return null;
  const strip = plan.strips.find(({ mould }) => mould === id);
  const order = strip?.order ?? piece.order;
  return {
    name: castings.get(piece.casting) ?? piece.casting,
    filledAt: calendar.instantText(minuteOf(piece.filledAt)),
    customer: order ? (customers.get(order) ?? null) : null,
    stripAt: strip?.stripStart ?? null,
    stays: plan.unstripped.find(({ mould }) => mould === id)?.reason ?? null,
  };
};

const nextPour = ({ id }: StoredMould, { plan, customers, now }: Seen): NextPour | null => {
  const [first] = poursOfMould(plan, id);
  if (!first) return null;
  const customer = first.order ? (customers.get(first.order) ?? null) : null;
  return { at: first.fillStart, customer, late: minuteOf(first.fillEnd) <= now };
};

const mouldFacts = (mould: StoredMould, seen: Seen): MouldFacts => ({
  id: mould.id,
  condition: mould.condition,
  prepped: mould.prepped,
  makes: mould.makes.map(({ casting }) => seen.castings.get(casting) ?? casting),
  setFor: seen.castings.get(mould.setFor) ?? mould.setFor,
  piece: pieceIn(mould, seen),
  repairedOn: mould.repairedOn,
  note: mould.note,
  damageNote: mould.damageNote,
  turnsToSealing: mould.oilEveryTurns === null ? null : Math.max(0, mould.oilEveryTurns - mould.turnsSinceOil),
  nextPour: nextPour(mould, seen),
});

const byKind = (moulds: readonly MouldFacts[]): MouldsOfKind[] => {
  const kinds = new Map<string, MouldFacts[]>();
  for (const mould of moulds) kinds.set(mouldKind(mould.id), [...(kinds.get(mouldKind(mould.id)) ?? []), mould]);
  return [...kinds].map(([kind, list]) => ({ kind, moulds: list }));
};

/** Nothing is looked for. */
const EVERY_MOULD: MouldSearch = { find: '', which: 'all' };

/** Every mould with what is in it and what is next, by length, as the maker lists them. Scrapped ones stand apart. */
export const showMoulds = async (context: UseCaseContext, search: MouldSearch = EVERY_MOULD): Promise<MouldsModel> => {
  const { plan, yard } = await currentPlan(context);
  const stored = await context.database.read((tx) => mouldsInOrder(tx));
  const seen: Seen = {
    plan,
    calendar: calendarOf(yard.yard.timeZone),
    customers: new Map(yard.orders.map(({ id, customer }) => [id, customer ?? `order ${id}`])),
    castings: new Map(yard.castings.map(({ id, name }) => [id, name])),
    now: minuteOf(context.now),
  };
  const all = stored.map((mould) => mouldFacts(mould, seen));
  const facts = foundMoulds(all, search);
  return {
    yardName: yard.yard.name,
    today: today(yard.yard.timeZone, context.now),
    search,
    all,
    found: facts.length,
    kinds: byKind(facts.filter(({ condition }) => condition !== 'retired')),
    scrapped: facts.filter(({ condition }) => condition === 'retired'),
  };
};
