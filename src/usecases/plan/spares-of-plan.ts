import type { PlanFile } from '../../../shared/plan.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { Session } from '../../engine/calendar/sessions.ts';
import { sparesWanted } from '../../engine/odds/spares.ts';
import type { UseCaseContext } from '../core/context.ts';
import { keptReadyOf, sparesByOf } from './kept-ready.ts';
import { poursWithin } from './pour-minutes.ts';

/** A piece that a plan has to spare. */
export interface SparePlanned {
  casting: string;
  name: string;
  /** Orders that it could serve. */
  orders: readonly string[];
  /** Its pour in the plan; null where it is poured already. */
  pour: { id: string; mould: string } | null;
  /** The date on which it comes out of its mould. */
  on: string | 'there';
}

/** So many finished pieces of a casting that the plan gives to nobody. */
const freeOf = ({ finished }: YardFile, plan: PlanFile, casting: string): number => {
  const dealt = (place: number) =>
    plan.orders
      .flatMap(({ fromFinished }) => fromFinished)
      .reduce((n, one) => n + (one.finished === place ? one.count : 0), 0);
  return finished.reduce(
    (n, lot, place) => (lot.casting === casting && lot.order === undefined ? n + lot.count - dealt(place) : n),
    0,
  );
};

/** The pieces to spare that a plan has: none where the yard has none planned. What stands ready of a casting anyway is not told as one. */
export const sparesOfPlan = async (
  { database }: UseCaseContext,
  { plan, yard }: { plan: PlanFile; yard: YardFile },
): Promise<SparePlanned[]> => {
  const { sparesBy, kept } = await database.read(async (tx) => ({
    sparesBy: await sparesByOf(tx, yard),
    kept: await keptReadyOf(tx, yard),
  }));
  if (!sparesBy) return [];
  const spares = sparesWanted(yard, plan, sparesBy).filter(
    (one) => !kept.some(({ casting }) => casting === one.casting),
  );
  return spares.flatMap(({ casting, by, orders }): SparePlanned[] => {
    const name = yard.castings.find(({ id }) => id === casting)?.name ?? casting;
    const pour = plan.pours
      .filter((one) => one.order === undefined && one.casting === casting && one.pieceReadyAt.slice(0, 10) <= by)
      .sort((a, b) => Date.parse(a.stripEnd) - Date.parse(b.stripEnd))[0];
    if (pour)
      return [{ casting, name, orders, pour: { id: pour.id, mould: pour.mould }, on: pour.stripEnd.slice(0, 10) }];
    const strip = plan.strips.find(
      ({ order, mould }) =>
        order === undefined &&
        yard.inMould.some((one) => one.mould === mould && one.casting === casting && one.order === undefined),
    );
    if (strip) return [{ casting, name, orders, pour: null, on: strip.stripEnd.slice(0, 10) }];
    return freeOf(yard, plan, casting) > 0 ? [{ casting, name, orders, pour: null, on: 'there' as const }] : [];
  });
};

/** A piece to spare that is poured in a session, in which mould. */
export interface SparePoured {
  name: string;
  mould: string;
}

/** The pieces to spare that are poured in a session. */
export const sparesPouredIn = async (
  context: UseCaseContext,
  current: { plan: PlanFile; yard: YardFile },
  session: Session,
): Promise<SparePoured[]> => {
  const forNobody = poursWithin(current.plan, 'fillStart', session).filter(({ order }) => order === undefined);
  // All that went wrong is read to know of spares: not where nothing is poured that could be one.
  if (forNobody.length === 0) return [];
  const pours = new Set(forNobody.map(({ id }) => id));
  return (await sparesOfPlan(context, current)).flatMap(({ name, pour }) =>
    pour && pours.has(pour.id) ? [{ name, mould: pour.mould }] : [],
  );
};
