import { sizesOfCastings } from '../../../db/stores/casting-size-store.ts';
import { mouldsInOrder } from '../../../db/stores/mould-store.ts';
import { workRecords } from '../../../db/stores/work-record-store.ts';
import { minuteOf } from '../../../shared/time.ts';
import { mouldKind } from '../../engine/book/mould-kind.ts';
import { isRetired } from '../../engine/book/mould-state.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import { customersByOrder } from '../core/customers-by-order.ts';
import type { PageHead } from '../core/page-parts.ts';
import { currentPlan } from '../plan/make-plan.ts';
import { foundMoulds, type MouldSearch } from './find-moulds.ts';
import { lengthsOf, type MouldFacts, type MouldsSeen, mouldFacts } from './mould-facts.ts';
import { turnsSinceService } from './mould-history.ts';

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
  const { stored, records, lengths } = await context.database.read(async (tx) => {
    const moulds = await mouldsInOrder(tx);
    // All that was ever done is read only where somebody wants turns counted.
    const isCounted = moulds.some(({ serviceEveryTurns }) => serviceEveryTurns !== null);
    const sizes = await sizesOfCastings(tx);
    return { stored: moulds, records: isCounted ? await workRecords(tx) : [], lengths: lengthsOf(sizes) };
  });
  const seen: MouldsSeen = {
    plan,
    calendar: calendarOf(yard.yard.timeZone),
    customers: customersByOrder(yard),
    castings: new Map(yard.castings.map(({ id, name }) => [id, name])),
    lengths,
    now: minuteOf(context.now),
    turns: turnsSinceService(records),
  };
  const all = stored.map((mould) => mouldFacts(mould, seen));
  const facts = foundMoulds(all, search);
  return {
    yardName: yard.yard.name,
    today: today(yard.yard.timeZone, context.now),
    search,
    all,
    found: facts.length,
    kinds: byKind(facts.filter((mould) => !isRetired(mould))),
    scrapped: facts.filter(isRetired),
  };
};
