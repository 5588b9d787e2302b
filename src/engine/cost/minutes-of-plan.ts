import type { Casting } from '../../../shared/casting.ts';
import { type PlanFile, poursByBatch, spellsOf } from '../../../shared/plan.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';

/** Minutes of one person's work, when they begin, and whose they are; null: of nobody's piece or order. */
export interface WorkMinutes {
  at: Minute;
  owner: string | null;
  minutes: number;
}

/** What a piece of a plan is known by: that of a pour, and that which is in a mould already. */
export const pieceOwner = { ofPour: (pour: string) => `pour ${pour}`, inMould: (mould: string) => `mould ${mould}` };
/** What an order is known by as it bears the cost of its packing. */
export const orderOwner = (order: string): string => `order ${order}`;

const span = (start: string, end: string): number => minuteOf(end) - minuteOf(start);

/** Filling is each piece's own; mixing and washing out are shared by weight, as the mix is. */
const minutesOfBatches = (plan: PlanFile, yard: YardFile, castings: ReadonlyMap<string, Casting>): WorkMinutes[] => {
  const pours = poursByBatch(plan.pours);
  const crews = new Map(yard.mixes.map(({ id, crew }) => [id, crew]));
  return plan.batches.flatMap(({ id, mix, start, end }) => {
    const own = (pours.get(id) ?? []).map(({ id: pour, casting }) => ({ pour, casting: castings.get(casting)! }));
    const kg = own.reduce((sum, { casting }) => sum + casting.kg, 0);
    const filling = own.reduce((sum, { casting }) => sum + casting.fillMinutes, 0);
    const shared = span(start, end) - filling;
    return own.map(({ pour, casting }) => {
      const share = kg > 0 ? casting.kg / kg : 1 / own.length;
      const minutes = (casting.fillMinutes + shared * share) * (crews.get(mix) ?? 1);
      return { at: minuteOf(start), owner: pieceOwner.ofPour(pour), minutes };
    });
  });
};

const minutesOfPours = ({ pours }: PlanFile, castings: ReadonlyMap<string, Casting>): WorkMinutes[] =>
  pours.flatMap(({ id, casting, prepStart, prepEnd, stripStart, stripEnd }) => {
    const owner = pieceOwner.ofPour(id);
    const strip = span(stripStart, stripEnd) * castings.get(casting)!.stripCrew;
    return [
      { at: minuteOf(prepStart), owner, minutes: span(prepStart, prepEnd) },
      { at: minuteOf(stripStart), owner, minutes: strip },
    ];
  });

const minutesOfStrips = ({ strips }: PlanFile, { inMould, castings }: YardFile): WorkMinutes[] =>
  strips.map(({ mould, stripStart, stripEnd }) => {
    const casting = inMould.find((piece) => piece.mould === mould)?.casting;
    const crew = castings.find(({ id }) => id === casting)?.stripCrew ?? 1;
    return { at: minuteOf(stripStart), owner: pieceOwner.inMould(mould), minutes: span(stripStart, stripEnd) * crew };
  });

/** All work of a plan in minutes of one person; a sealing coat serves many turns and is nobody's own. */
export const minutesOfPlan = (plan: PlanFile, yard: YardFile): WorkMinutes[] => {
  const castings = new Map(yard.castings.map((one) => [one.id, one]));
  const packs = plan.orders.flatMap((order) =>
    spellsOf(order).map(({ packStart, packEnd }) => ({
      ...{ at: minuteOf(packStart), owner: orderOwner(order.id), minutes: span(packStart, packEnd) },
    })),
  );
  const coats = plan.coats.map(({ start, end }) => ({ at: minuteOf(start), owner: null, minutes: span(start, end) }));
  return [
    ...minutesOfBatches(plan, yard, castings),
    ...minutesOfPours(plan, castings),
    ...minutesOfStrips(plan, yard),
    ...packs,
    ...coats,
  ].filter(({ minutes }) => minutes > 0);
};
