import { type PlanFile, poursByBatch } from '../../../shared/plan.ts';
import { type DayNumber, type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { goodsOfOrder, linesLeft } from '../book/goods.ts';
import { chargeAllGoods, chargeBatch } from './charge-batch.ts';
import { type Bearer, Charges } from './charges.ts';
import { type Cost, CostSum } from './cost.ts';
import { type CutsFor, chargeCuts, cutsOfPlan, mm2Of, mmOf } from './cuts-of-plan.ts';
import { type CostFigures, type TakeGoods, takingGoods } from './figures.ts';
import { halfEven } from './minor-units.ts';
import { minutesOfPlan, orderOwner, pieceOwner, type WorkMinutes } from './minutes-of-plan.ts';
import { commonMinutes, type WorkTime, workTimes } from './session-groups.ts';

/** What a session costs, and who bears it. */
export interface SessionCost {
  day: DayNumber;
  start: Minute;
  /** False where goods leave the stock on a day without a session: an order that is not packed is handed over. */
  isWorked: boolean;
  /** By owner (`pieceOwner`, `orderOwner`): what of each is done in this session. */
  owners: ReadonlyMap<string, Cost>;
  /** What nobody's piece or order bears: of a session in which nothing is made. */
  rest: Cost;
  /** All of it in minor units: what the owners bear, and the rest. */
  total: number;
  /** Minutes of one person's work on pieces and orders. */
  minutes: number;
}

interface Group extends WorkTime {
  charges: Charges;
  work: WorkMinutes[];
}

const REST = 'rest';

/** What happens in a plan and takes goods, or wears a mould, in order of time. */
interface Event {
  at: Minute;
  charge: (charges: Charges) => void;
}

const batchEvents = (
  plan: PlanFile,
  yard: YardFile,
  take: TakeGoods,
  { cuts, figures }: { cuts: CutsFor; figures: CostFigures },
): Event[] => {
  const pours = poursByBatch(plan.pours);
  const castings = new Map(yard.castings.map((one) => [one.id, one]));
  const mixes = new Map(yard.mixes.map((one) => [one.id, one]));
  return plan.batches.map(({ id, mix, bags, start }) => {
    const pieces = (pours.get(id) ?? []).map((pour) => ({
      owner: pieceOwner.ofPour(pour.id),
      casting: castings.get(pour.casting)!,
    }));
    const charge = (charges: Charges) => {
      chargeBatch(charges, { mix: mixes.get(mix)!, bags, pieces }, take, figures);
      for (const [material, used] of cuts.get(id) ?? []) {
        const bearers = pieces.map(({ owner, casting }) => ({
          ...{ owner, weight: mmOf(casting.cuts, material) || mm2Of(casting.sheets ?? [], material) },
        }));
        chargeCuts(charges, take, { material, ...used }, bearers);
      }
    };
    return { at: minuteOf(start), charge };
  });
};

const orderEvents = (plan: PlanFile, yard: YardFile, take: TakeGoods, cuts: CutsFor): Event[] => {
  const orders = new Map(yard.orders.map((one) => [one.id, one]));
  return plan.orders.map(({ id, packStart, completesAt }) => {
    const order = orders.get(id);
    const bearers: Bearer[] = [{ owner: orderOwner(id), weight: 1 }];
    const charge = (charges: Charges) => {
      const { goods } = goodsOfOrder(order ? linesLeft(order) : [], yard);
      const wanted = goods.filter(({ quantity }) => quantity > 0);
      const own = wanted.map(({ material, quantity }): [string, Bearer[]] => [
        material,
        [{ owner: orderOwner(id), weight: quantity }],
      ]);
      chargeAllGoods(charges, take, new Map(own));
      for (const [material, used] of cuts.get(id) ?? []) chargeCuts(charges, take, { material, ...used }, bearers);
    };
    return { at: minuteOf(packStart ?? completesAt), charge };
  });
};

/** A turn costs its share of the mould: so many turns come to all that it cost, whatever the single ones are rounded to. */
const mouldEvents = ({ pours }: PlanFile, { moulds }: Pick<CostFigures, 'moulds'>): Event[] => {
  const turns = new Map<string, number>();
  return [...pours]
    .sort((a, b) => minuteOf(a.fillStart) - minuteOf(b.fillStart))
    .map(({ id, mould, fillStart }) => {
      const bearers = [{ owner: pieceOwner.ofPour(id), weight: 1 }];
      const known = moulds.get(mould);
      const before = turns.get(mould) ?? 0;
      turns.set(mould, before + 1);
      const charge = (charges: Charges) => {
        if (!known) return charges.lack({ what: 'mould', id: mould }, bearers);
        const upTo = (n: number) => halfEven((known.cost * n) / known.turns);
        charges.share('mould', upTo(before + 1) - upTo(before), bearers);
      };
      return { at: minuteOf(fillStart), charge };
    });
};

const bearersOf = (work: readonly WorkMinutes[]): Bearer[] => {
  const minutes = new Map<string, number>();
  for (const { owner, minutes: own } of work) if (owner !== null) minutes.set(owner, (minutes.get(owner) ?? 0) + own);
  return [...minutes].map(([owner, weight]) => ({ owner, weight }));
};

/** Work at the wage; getting going, coats and what a session costs anyway are shared by minutes of work. */
const chargeWork = ({ charges, work, session }: Group, figures: CostFigures, yard: YardFile): void => {
  const bearers = bearersOf(work);
  const all = bearers.length > 0 ? bearers : [{ owner: REST, weight: 1 }];
  const coats = work.reduce((sum, { owner, minutes }) => (owner === null ? sum + minutes : sum), 0);
  const common = coats + (session ? commonMinutes(session, yard.yard) : 0);
  const own = bearers.reduce((sum, { weight }) => sum + weight, 0);
  const upTo = (minutes: number) => halfEven(((figures.wageHour ?? 0) * minutes) / 60);
  charges.share('work', upTo(own), bearers);
  charges.share('session', upTo(own + common) - upTo(own) + (session ? (figures.sessionFixed ?? 0) : 0), all);
  if (figures.wageHour === null) charges.lack({ what: 'wage', id: '' }, all);
  if (figures.sessionFixed === null) charges.lack({ what: 'session', id: '' }, all);
};

const costOf = ({ charges, day, start, work, session }: Group): SessionCost => {
  const owners = new Map([...charges.owners].filter(([owner]) => owner !== REST).map(([id, sum]) => [id, sum.cost]));
  const rest = charges.owners.get(REST)?.cost ?? new CostSum().cost;
  const minutes = work.reduce((sum, one) => (one.owner === null ? sum : sum + one.minutes), 0);
  return { ...{ day, start, isWorked: session !== null, owners, rest, minutes }, total: charges.charged };
};

/**
 * What each session of a plan costs, in order of time, and who bears it: every piece that is set up, poured or stripped in it,
 * every order that is packed in it, and for all else the rest. Materials cost what was paid for the bags that are used
 * then (`takingFrom`). The shares come to all of a session to the minor unit.
 */
export const sessionCosts = (yard: YardFile, plan: PlanFile, figures: CostFigures): SessionCost[] => {
  const timeOf = workTimes(yard);
  const groups = new Map<Minute, Group>();
  const groupAt = (at: Minute): Group => {
    const time = timeOf(at);
    const group = groups.get(time.start) ?? { ...time, charges: new Charges(), work: [] };
    groups.set(time.start, group);
    return group;
  };
  const take = takingGoods(figures);
  const cuts = cutsOfPlan(plan, yard);
  const events = [
    ...batchEvents(plan, yard, take, { cuts, figures }),
    ...orderEvents(plan, yard, take, cuts),
    ...mouldEvents(plan, figures),
  ];
  for (const { at, charge } of events.sort((a, b) => a.at - b.at)) charge(groupAt(at).charges);
  for (const work of minutesOfPlan(plan, yard)) groupAt(work.at).work.push(work);
  const worked = [...groups.values()].filter(({ work }) => work.length > 0);
  for (const group of worked) chargeWork(group, figures, yard);
  // Where an order of pieces alone goes out nothing is taken: that is no session.
  const something = [...groups.values()].filter(({ work, charges }) => work.length > 0 || charges.owners.size > 0);
  return something.sort((a, b) => a.start - b.start).map(costOf);
};

/** What each piece and each packing of a plan costs over all its sessions, by owner. */
export const ownersCosts = (sessions: readonly SessionCost[]): ReadonlyMap<string, Cost> => {
  const sums = new Map<string, CostSum>();
  for (const { owners } of sessions)
    for (const [owner, cost] of owners) sums.set(owner, (sums.get(owner) ?? new CostSum()).addCost(cost));
  return new Map([...sums].map(([owner, sum]) => [owner, sum.cost]));
};
