import {
  type PackSpell,
  type PlanBatch,
  type PlanCoat,
  type PlanFile,
  type PlanOrder,
  type PlanPour,
  spellsOf,
} from '../../../shared/plan.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { type CuringTimes, curingTimesOf } from '../../engine/book/curing-times.ts';
import { goodsOfLines, packMinutesOf } from '../../engine/book/goods.ts';
import { wasCoated } from '../../engine/book/mould-state.ts';
import { type Calendar, calendarOf } from '../../engine/calendar/calendar.ts';
import type { Session } from '../../engine/calendar/sessions.ts';
import { type Climate, climateOf } from '../../engine/cure/climate.ts';
import { type LeftOver, leftOver } from '../../engine/pack/left-over.ts';
import { lengthText } from '../../engine/units/length.ts';
import { measureOutText } from '../../engine/units/measure-out.ts';
import { contentsOf, offersOf } from '../orders/order-contents.ts';
import { lateStepName } from '../plan/late-steps.ts';
import { poursWithin } from '../plan/pour-minutes.ts';
import { poursBefore } from '../plan/pours-of-mould.ts';
import { type HeaviestPiece, heavyPiece } from '../typed/heavy-piece.ts';
import { shownAmount } from '../typed/measures.ts';
import type { Waters } from '../yard/mix-water.ts';
import { coldNightsAfter } from './cold-nights.ts';
import { cutFrom } from './cut-from.ts';
import { dryingOf } from './drying.ts';
import { prepWork } from './prep-work.ts';
import {
  type AmountFacts,
  type BatchSlip,
  type BatchStep,
  type CoatStep,
  type CutFacts,
  type EdgeStep,
  type PackStep,
  type PourFacts,
  type PrepStep,
  pieceKeyOf,
  type RecipeFacts,
  type SessionStep,
  type StripStep,
} from './session-step.ts';

type Unnamed<S> = S extends unknown ? Omit<S, 'name'> : never;

/** How steps are shown: in which units, with how much water. */
export type Shown = Pick<Seen, 'system' | 'waters'>;

/** What the steps of a session are worked out from. */
interface Seen {
  plan: PlanFile;
  yard: YardFile;
  /** By order. */
  customers: ReadonlyMap<string, string | undefined>;
  calendar: Calendar;
  curing: CuringTimes;
  climate: Climate;
  system: UnitSystem;
  waters: Waters;
}

const pieceName = ({ yard }: Seen, casting: string): string =>
  yard.castings.find(({ id }) => id === casting)?.name ?? casting;

/** Whose a piece is: null stands for stock. */
const customerOf = ({ customers }: Seen, order: string | undefined): string | null =>
  order === undefined ? null : (customers.get(order) ?? `order ${order}`);

const amounts = ({ yard, system }: Seen, wanted: readonly { material: string; quantity: number }[]): AmountFacts[] =>
  yard.materials.flatMap(({ id, name, unit }) => {
    const quantity = wanted.filter(({ material }) => material === id).reduce((sum, one) => sum + one.quantity, 0);
    return quantity > 0 ? [shownAmount({ name, unit, quantity }, system)] : [];
  });

/** What is mixed into a batch, each with how it is measured out where it is weighed or poured. */
const slipOf = (
  { yard, system, waters }: Pick<Seen, 'yard' | 'system' | 'waters'>,
  mix: YardFile['mixes'][number],
  bags: number,
): BatchSlip => {
  const water = waters.get(mix.id) ?? { litres: null, note: null };
  const measured = (material: { unit: string }, quantity: number) => measureOutText(quantity, material.unit, system);
  return {
    bags,
    ingredients: yard.materials.flatMap((material) => {
      const perBag = mix.perBag.filter((one) => one.material === material.id);
      const quantity = perBag.reduce((sum, one) => sum + one.quantity, 0) * bags;
      const shown = shownAmount({ name: material.name, unit: material.unit, quantity }, system);
      return quantity > 0 ? [{ ...shown, measured: measured(material, quantity) }] : [];
    }),
    water: water.litres === null ? null : measureOutText(water.litres * bags, 'l', system),
    waterNote: water.note,
  };
};

interface Cut {
  material: string;
  lengthMm: number;
  count: number;
}

/** How many of a length are among some cuts. */
const countOf = (cuts: readonly Cut[], { material, lengthMm }: Cut): number =>
  cuts
    .filter((cut) => cut.material === material && cut.lengthMm === lengthMm)
    .reduce((sum, { count }) => sum + count, 0);

/** Lengths to cut for a batch or an order, equal ones counted together; of a part of one, those `earlier` come before it. */
const cutLengths = (
  { plan, yard, system }: Seen,
  cutFor: string,
  cuts: readonly Cut[],
  earlier?: readonly Cut[],
): CutFacts[] => {
  const counted = new Map<string, CutFacts>();
  for (const cut of cuts) {
    const { material, lengthMm, count } = cut;
    const key = `${material} ${lengthMm}`;
    const part = earlier && { before: countOf(earlier, cut), count: countOf(cuts, cut) };
    const name = yard.materials.find(({ id }) => id === material)?.name ?? material;
    const before = counted.get(key);
    const from = before?.from ?? cutFrom({ plan, yard, system }, { material, lengthMm, cutFor }, part);
    counted.set(key, { name, length: lengthText(lengthMm, system), count: count + (before?.count ?? 0), from });
  }
  return [...counted.values()].filter(({ count }) => count > 0);
};

/** A turn comes before it: a piece is in the mould still, or is to be poured first. */
const waitsForTurn = ({ plan, yard }: Seen, { mould, prepStart }: Pick<PlanPour, 'mould' | 'prepStart'>): boolean =>
  yard.inMould.some((piece) => piece.mould === mould) || poursBefore(plan, { mould, prepStart }).length > 0;

const coatStep = (seen: Seen, coat: PlanCoat): Unnamed<CoatStep> => {
  const mould = seen.yard.moulds.find(({ id }) => id === coat.mould);
  const waits = waitsForTurn(seen, { mould: coat.mould, prepStart: coat.start });
  return {
    ...{ kind: 'coat', at: coat.start, until: coat.end, mould: coat.mould, waits },
    clean: waits || mould?.condition === 'dirty',
    dryFrom: seen.calendar.instantText(minuteOf(coat.end) + (mould?.oilDryMinutes ?? 0)),
  };
};

/** What is cut for one piece of a batch: pieces take their sticks in the order in which they are filled. */
const cutsOfPiece = (seen: Seen, pour: PlanPour): CutFacts[] => {
  const { plan, yard } = seen;
  const cutsOf = (casting: string) => yard.castings.find(({ id }) => id === casting)?.cuts ?? [];
  const ids = plan.batches.find(({ id }) => id === pour.batch)?.pours ?? [];
  const earlier = ids.slice(0, Math.max(0, ids.indexOf(pour.id))).flatMap((id) => {
    const casting = plan.pours.find((one) => one.id === id)?.casting;
    return casting === undefined ? [] : cutsOf(casting);
  });
  return cutLengths(seen, pour.batch, cutsOf(pour.casting), earlier);
};

const prepStep = (seen: Seen, pour: PlanPour): Unnamed<PrepStep> => {
  const work = prepWork(pour, seen.plan, seen.yard);
  const casting = seen.yard.castings.find(({ id }) => id === pour.casting);
  return {
    kind: 'prep',
    at: pour.prepStart,
    until: pour.prepEnd,
    ...{
      mould: pour.mould,
      casting: pour.casting,
      piece: pieceName(seen, pour.casting),
      clean: work.clean,
      sealed: work.sealed,
    },
    changeFrom: work.changeFrom === null ? null : pieceName(seen, work.changeFrom),
    fittings: amounts(seen, casting?.perPiece ?? []),
    cuts: cutsOfPiece(seen, pour),
    waits: waitsForTurn(seen, pour),
  };
};

/** It gets its sealing coat before this pour; a plan made while it was being set up no longer says so. */
const isSealed = ({ plan, yard }: Seen, pour: PlanPour): boolean => {
  const mould = yard.moulds.find(({ id }) => id === pour.mould);
  const unwritten = mould !== undefined && wasCoated(mould);
  return prepWork(pour, plan, yard).sealed || (unwritten && pour.prepStart === pour.prepEnd);
};

const pourFacts = (seen: Seen, pour: PlanPour): PourFacts => ({
  ...{ mould: pour.mould, casting: pour.casting, piece: pieceName(seen, pour.casting), sealed: isSealed(seen, pour) },
  ...{ order: pour.order ?? null, customer: customerOf(seen, pour.order), at: pour.fillStart, until: pour.fillEnd },
});

const leftOf = (
  { yard, curing }: Seen,
  batch: PlanBatch,
  mix: YardFile['mixes'][number],
  castings: YardFile['castings'],
): LeftOver | null => {
  const mixed = minuteOf(batch.mixEnd);
  const workingMinutes = curing.workableUntil(mix, mixed) - mixed;
  const others = yard.castings.filter((one) => one.mix === mix.id);
  return leftOver({ bags: batch.bags, kg: batch.kg, castings, workingMinutes }, mix, others);
};

const batchStep = (seen: Seen, batch: PlanBatch, pours: readonly PlanPour[]): Unnamed<BatchStep> => {
  const mix = seen.yard.mixes.find(({ id }) => id === batch.mix)!;
  const castings = pours.flatMap(({ casting }) => seen.yard.castings.filter(({ id }) => id === casting));
  const lastFill = Math.max(...pours.map(({ fillEnd }) => minuteOf(fillEnd)));
  const text = (minute: Minute) => seen.calendar.instantText(minute);
  return {
    kind: 'batch',
    at: batch.start,
    until: batch.end,
    mixEnd: batch.mixEnd,
    mix: mix.name,
    ...slipOf(seen, mix, batch.bags),
    fittings: amounts(
      seen,
      castings.flatMap(({ perPiece }) => perPiece),
    ),
    cuts: cutLengths(
      seen,
      batch.id,
      castings.flatMap(({ cuts }) => cuts),
    ),
    usableUntil: text(seen.curing.workableUntil(mix, minuteOf(batch.mixEnd))),
    wetUntil: mix.attendMinutes > 0 ? text(lastFill + mix.attendMinutes) : null,
    pours: pours.map((pour) => pourFacts(seen, pour)),
    ...{ people: mix.crew, leftOver: leftOf(seen, batch, mix, castings) },
    coldNights: coldNightsAfter({ mix, lastFill }, seen.climate, seen.system),
    drying: dryingOf(
      { weather: seen.yard.weather, filled: { from: minuteOf(batch.mixEnd), to: lastFill } },
      seen.climate,
      seen.calendar,
    ),
    waits: pours.some((pour) => waitsForTurn(seen, pour)),
  };
};

/** Of some kinds of pieces the one that weighs most. */
const heaviestOf = ({ yard, system }: Seen, ids: readonly string[]): HeaviestPiece | null => {
  const [most] = yard.castings.filter(({ id }) => ids.includes(id)).sort((a, b) => b.kg - a.kg);
  return most ? heavyPiece(most.name, most.kg, system) : null;
};

interface Strip {
  mould: string;
  casting: string;
  order?: string | undefined;
  filled: Minute;
  stripStart: string;
  stripEnd: string;
  inMould: boolean;
}

const stripsOf = ({ plan, yard }: Seen, session: Session): Strip[] => [
  ...poursWithin(plan, 'stripStart', session).map((pour) => ({
    ...pour,
    filled: minuteOf(pour.fillEnd),
    inMould: false,
  })),
  ...plan.strips.flatMap((strip) => {
    const at = minuteOf(strip.stripStart);
    const piece = yard.inMould.find(({ mould }) => mould === strip.mould);
    if (!piece || at < session.start || at >= session.end) return [];
    return [{ ...strip, casting: piece.casting, filled: minuteOf(piece.filledAt), inMould: true }];
  }),
];

const stripStep = (seen: Seen, strip: Strip): Unnamed<StripStep> => ({
  kind: 'strip',
  at: strip.stripStart,
  until: strip.stripEnd,
  ...{ mould: strip.mould, piece: pieceName(seen, strip.casting), customer: customerOf(seen, strip.order) },
  mayFrom: seen.calendar.instantText(seen.curing.mayStripFrom(strip.casting, strip.filled)),
  people: seen.yard.castings.find(({ id }) => id === strip.casting)?.stripCrew ?? 1,
  lift: heaviestOf(seen, [strip.casting]),
  inMould: strip.inMould,
  pieceKey: pieceKeyOf(strip.mould, strip.filled),
});

const minutesOf = ({ packStart, packEnd }: PackSpell): number => minuteOf(packEnd) - minuteOf(packStart);

/** How much of an order a packing of its does; null where that is all of it. */
const partOf = ({ yard }: Seen, planned: PlanOrder, spell: PackSpell): PackStep['part'] => {
  const order = yard.orders.find(({ id }) => id === planned.id);
  const spells = spellsOf(planned);
  if (!order || (spells.length < 2 && order.packedMinutes === undefined)) return null;
  const place = spells.findIndex(({ packStart }) => packStart === spell.packStart);
  const earlier = spells.slice(0, place).reduce((sum, one) => sum + minutesOf(one), 0);
  const before = (order.packedMinutes ?? 0) + earlier;
  const inAll = Math.max(packMinutesOf(order, yard), before + minutesOf(spell));
  return { minutes: minutesOf(spell), before, inAll, goesOn: spells[place + 1]?.packStart ?? null };
};

const packStep = (seen: Seen, planned: PlanOrder, spell: PackSpell): Unnamed<PackStep> => {
  const { id } = planned;
  const order = seen.yard.orders.find((one) => one.id === id);
  const part = partOf(seen, planned, spell);
  const lines = order?.lines ?? [];
  // What it is made of is all taken with the first packing.
  const kits = (part && part.before > 0 ? [] : lines).flatMap(({ kit, quantity }) =>
    seen.yard.kits.filter((one) => one.id === kit).map((one) => ({ kit: one, quantity })),
  );
  return {
    kind: 'pack',
    ...{ at: spell.packStart, until: spell.packEnd, order: id, customer: customerOf(seen, id) ?? id, part },
    contents: contentsOf(lines, offersOf(seen.yard, seen.system)),
    parts: amounts(
      seen,
      kits.flatMap(({ kit, quantity }) => kit.parts.map((part) => ({ ...part, quantity: part.quantity * quantity }))),
    ),
    cuts: cutLengths(
      seen,
      id,
      kits.flatMap(({ kit, quantity }) => kit.cuts.map((cut) => ({ ...cut, count: cut.count * quantity }))),
    ),
    heaviest: heaviestOf(seen, [...goodsOfLines(lines, seen.yard).pieces.keys()]),
  };
};

const edgeSteps = ({ calendar }: Seen, { start, end, from, to }: Session): Unnamed<EdgeStep>[] => {
  const text = (minute: Minute) => calendar.instantText(minute);
  return [
    ...(from > start ? [{ kind: 'set up' as const, at: text(start), until: text(from) }] : []),
    ...(end > to ? [{ kind: 'clear up' as const, at: text(to), until: text(end) }] : []),
  ];
};

const RANKS: Record<SessionStep['kind'], number> = {
  'set up': 0,
  strip: 1,
  coat: 2,
  prep: 3,
  batch: 4,
  pack: 5,
  'clear up': 6,
};

const whatOf = (step: Unnamed<SessionStep>): string => {
  if (step.kind === 'batch') return step.pours[0]?.mould ?? '';
  if (step.kind === 'pack') return step.order;
  return step.kind === 'coat' || step.kind === 'prep' || step.kind === 'strip' ? step.mould : '';
};

const withName = (step: Unnamed<SessionStep>): SessionStep => ({
  ...step,
  name: lateStepName({ ...step, what: whatOf(step) }),
});

/** The recipe of each mix that is mixed in the steps, for one bag, in the order of the yard. */
export const recipesOf = (steps: readonly SessionStep[], yard: YardFile, shown: Shown): RecipeFacts[] => {
  const mixed = new Set(steps.flatMap((step) => (step.kind === 'batch' ? [step.mix] : [])));
  return yard.mixes
    .filter(({ name }) => mixed.has(name))
    .map((mix) => ({ mix: mix.name, perBag: slipOf({ yard, ...shown }, mix, 1) }));
};

/** Everything the plan has for one session, in order of time: what to do at what minute, and with what. */
export const sessionSteps = (
  plan: PlanFile,
  yard: YardFile,
  session: Session,
  { system, waters }: Shown,
): SessionStep[] => {
  const customers = new Map(yard.orders.map(({ id, customer }) => [id, customer]));
  const calendar = calendarOf(yard.yard.timeZone);
  const named = { calendar, curing: curingTimesOf(yard), climate: climateOf(yard, calendar), customers };
  const seen: Seen = { plan, yard, ...named, system, waters };
  const isIn = (instant: string): boolean => {
    const minute = minuteOf(instant);
    return minute >= session.start && minute < session.end;
  };
  const batches = plan.batches.filter(({ start }) => isIn(start));
  const mixed = new Set(batches.map(({ id }) => id));
  const pours = new Map(plan.pours.filter(({ batch }) => mixed.has(batch)).map((pour) => [pour.id, pour]));
  const steps: Unnamed<SessionStep>[] = [
    ...edgeSteps(seen, session),
    ...plan.coats.filter(({ start }) => isIn(start)).map((coat) => coatStep(seen, coat)),
    ...poursWithin(plan, 'prepStart', session)
      .filter(({ prepStart, prepEnd }) => prepStart !== prepEnd)
      .map((pour) => prepStep(seen, pour)),
    ...batches.map((batch) =>
      batchStep(
        seen,
        batch,
        batch.pours.flatMap((id) => pours.get(id) ?? []),
      ),
    ),
    ...stripsOf(seen, session).map((strip) => stripStep(seen, strip)),
    ...plan.orders.flatMap((order) =>
      spellsOf(order)
        .filter(({ packStart }) => isIn(packStart))
        .map((spell) => packStep(seen, order, spell)),
    ),
  ];
  return steps.map(withName).sort((a, b) => minuteOf(a.at) - minuteOf(b.at) || RANKS[a.kind] - RANKS[b.kind]);
};
