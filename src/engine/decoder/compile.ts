import type { Casting } from '../../../shared/casting.ts';
import type { Material } from '../../../shared/material.ts';
import type { Order } from '../../../shared/order.ts';
import type { Keep } from '../../../shared/plan.ts';
import { dayNumber, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { isOutForGood } from '../book/mould-state.ts';
import { usableMm } from '../book/offcuts.ts';
import { type ComingDays, comingDaysOf } from '../buy/coming-days.ts';
import { gapsOf } from '../buy/coming-gaps.ts';
import { isDated, lastDayOf, lotsOnHand, useByOf } from '../buy/dated-lots.ts';
import { type Coming, thereAt } from '../buy/there-at.ts';
import { type Calendar, calendarOf } from '../calendar/calendar.ts';
import { type Ageing, ageingOf } from '../cure/age.ts';
import { climateOf } from '../cure/climate.ts';
import { sheetStockOf } from '../cut/mesh/sheet-stock.ts';
import { countedOnHand, offcutsOneByOne } from '../cut/offcuts.ts';
import { begunIn, begunWorkOf, occupyForBegun } from './begun.ts';
import type { BegunWork } from './begun-work.ts';
import { compileOrder, ordersTogether } from './compile-order.ts';
import { fixedWorkOf } from './fixed.ts';
import type { FixedWork } from './fixed-batch.ts';
import { hoursOf } from './hours-of.ts';
import { cutsOf, type Index, indexOf, quantities } from './indices.ts';
import type { SheetCuts } from './open-sheets.ts';
import {
  type CompiledDates,
  type CompiledMaterial,
  type CompiledMix,
  type CompiledMould,
  NEVER,
  NONE,
  type Problem,
} from './problem.ts';
import { lotDays, piecesThere } from './there.ts';

/** What is cut for a casting from sheets of materials that are in sheets. */
const sheetsOf = ({ sheets = [] }: Casting, compiled: readonly CompiledMaterial[], materials: Index): SheetCuts[] =>
  sheets.flatMap((cut) => {
    const material = materials.get(cut.material)!;
    const piece = compiled[material]!.sheets?.pieceOf(cut);
    return piece && cut.count > 0 ? [{ material, piece, count: cut.count }] : [];
  });

/** Of one material; more than anybody keeps, and so that a slip of the hand costs no time. */
const MOST_OFFCUTS = 200;

/** From then on nothing has to be asked of it: where there are gaps in which it cannot be had, that is never. */
const scarceUntil = ({ plentyFrom, dates }: CompiledMaterial): number =>
  dates && dates.gaps.length > 0 ? NEVER : plentyFrom;

/** By what dates a material goes; null where none of it does before more can be bought, or before the plan is over. */
const datesOf = (
  yard: YardFile,
  m: Material,
  comes: ComingDays | null,
  { calendar, today, coming }: { calendar: Calendar; today: number; coming: Coming },
): CompiledDates | null => {
  const { shelfLifeDays, opensBy, openedDays } = m;
  const gaps = comes ? gapsOf(comes, coming, calendar) : [];
  if (!isDated(m) || (comes?.soonest === today && gaps.length === 0)) return null;
  const lastDay = comes?.soonest ?? today + yard.yard.horizonDays;
  const dates = { opensBy, openedDays, shelfLifeDays, gaps, dayOf: calendar.dayOf };
  const lots = lotsOnHand(m, (instant) => calendar.dayOf(minuteOf(instant)));
  const onItsWay = yard.incoming.filter(({ material }) => material === m.id);
  const isNever = openedDays === undefined && lots.every((lot) => lastDayOf(lot, dates) >= lastDay);
  const keeps = onItsWay.every(({ on }) => (useByOf(Math.max(today, dayNumber(on)), m) ?? lastDay) >= lastDay);
  return isNever && keeps && gaps.length === 0 ? null : { ...dates, lots };
};

const compileMaterials = (yard: YardFile, calendar: Calendar, now: number, today: number, index: Index) => {
  const coming = ({ leadDays }: Material) => ({ leadDays, deliveredBy: yard.yard.deliveredBy });
  const materials = yard.materials.map((m) => {
    const comes = comingDaysOf(yard, m);
    return {
      comes,
      onHand: countedOnHand(m),
      arrivals: [] as { at: number; quantity: number }[],
      plentyFrom: comes === null ? NEVER : thereAt(comes.soonest, coming(m), calendar),
      stickMm: m.stickMm ?? 0,
      kerfMm: m.kerfMm,
      offcuts: offcutsOneByOne(m.offcuts ?? [], MOST_OFFCUTS),
      usableMm: usableMm(yard, m.id),
      sheets: sheetStockOf(m, yard.castings),
      dates: datesOf(yard, m, comes, { calendar, today, coming: coming(m) }),
    };
  });
  for (const x of yard.incoming) {
    const i = index.get(x.material)!;
    const day = dayNumber(x.on);
    if (day < today) continue;
    materials[i]!.arrivals.push({
      at: Math.max(now, thereAt(day, coming(yard.materials[i]!), calendar)),
      quantity: x.quantity,
    });
  }
  for (const m of materials) m.arrivals.sort((a, b) => a.at - b.at);
  return materials;
};

/** Where it is so cold that an age is never reached, that is NEVER: these times go into arrays of whole numbers. */
const bounded = ({ ageBetween, whenAged }: Ageing): Ageing => ({
  ageBetween,
  whenAged: (from, age) => Math.min(NEVER, whenAged(from, age)),
});

const compileMixes = (
  yard: YardFile,
  problem: Pick<Problem, 'climate' | 'materials'>,
  materials: Index,
): CompiledMix[] =>
  yard.mixes.map((x) => {
    const castings = yard.castings.flatMap((c, i) => (c.mix === x.id ? [i] : []));
    const used = [
      ...x.perBag.map((q) => q.material),
      ...castings.flatMap((c) => yard.castings[c]!.perPiece.map((q) => q.material)),
      ...castings.flatMap((c) => yard.castings[c]!.cuts.map((q) => q.material)),
    ].map((id) => materials.get(id)!);
    const cutUp = castings.flatMap((c) => sheetsOf(yard.castings[c]!, problem.materials, materials));
    return {
      ageing: bounded(ageingOf(x, problem.climate)),
      crew: x.crew,
      mixMinutes: x.mixMinutes,
      washMinutes: x.washMinutes,
      attendMinutes: x.attendMinutes,
      workingMinutes: x.workingMinutes,
      demouldMinutes: x.demouldMinutes,
      cureMinutes: x.cureHours * 60,
      mostKg: x.maxBags * x.yieldKgPerBag,
      yieldKgPerBag: x.yieldKgPerBag,
      bagStep: x.bagStep,
      maxBags: x.maxBags,
      castings,
      perBag: quantities(x.perBag, materials),
      scarceUntil: [...used, ...cutUp.map(({ material }) => material)].reduce(
        (t, i) => Math.max(t, scarceUntil(problem.materials[i]!)),
        0,
      ),
      minCelsius: x.minCelsius ?? -Infinity,
      maxCelsius: x.maxCelsius ?? Infinity,
      protectMinutes: x.protectHours * 60,
    };
  });

const compileMoulds = (yard: YardFile, calendar: Calendar, now: number, castings: Index): CompiledMould[] =>
  yard.moulds.map((m) => {
    const change = new Int32Array(yard.castings.length).fill(NONE);
    const makes = m.makes.map((x) => ({ casting: castings.get(x.casting)!, changeMinutes: x.changeMinutes }));
    for (const x of makes) change[x.casting] = x.changeMinutes;
    const out = isOutForGood(m);
    const mended = m.condition === 'damaged' && m.repairedOn ? calendar.midnightOf(dayNumber(m.repairedOn)) : now;
    return {
      makes,
      change,
      setFor: castings.get(m.setFor)!,
      dirty: m.condition === 'dirty',
      prepped: m.condition === 'ready' && m.prepped,
      usableFrom: out ? NEVER : Math.max(now, mended, m.dryFrom ? minuteOf(m.dryFrom) : now),
      turnsSinceOil: m.turnsSinceOil,
      oilEveryTurns: m.oilEveryTurns ?? NEVER,
      oilMinutes: m.oilMinutes,
      oilDryMinutes: m.oilDryMinutes,
    };
  });

/** A mould that is being set up counts as set up from the end of that on. */
const withBegunPreps = (moulds: CompiledMould[], { preps }: BegunWork): void => {
  for (const { mould: k, casting, end } of preps) {
    const mould = moulds[k]!;
    const usableFrom = Math.max(mould.usableFrom, end);
    moulds[k] = { ...mould, setFor: casting, dirty: false, prepped: true, usableFrom };
  }
};

/** A mould that is being coated counts as coated, and is free when that is dry. */
const withBegunCoats = (moulds: CompiledMould[], { coats }: BegunWork): void => {
  for (const { mould: k, end } of coats) {
    const mould = moulds[k]!;
    const usableFrom = Math.max(mould.usableFrom, end + mould.oilDryMinutes);
    moulds[k] = { ...mould, dirty: false, prepped: false, turnsSinceOil: 0, usableFrom };
  }
};

/** Pieces in moulds, those that a batch under way is filling among them. */
const piecesInMoulds = (
  yard: YardFile,
  moulds: Index,
  castings: Index,
  orderOf: (id?: string) => number,
): Problem['inMould'] => {
  const { pours } = begunIn(yard);
  const filled = pours.map(({ mould, casting, fillEnd }) => ({ mould, casting, filledAt: fillEnd, order: undefined }));
  return [...yard.inMould, ...filled].map((piece, i) => ({
    mould: moulds.get(piece.mould)!,
    casting: castings.get(piece.casting)!,
    filledAt: minuteOf(piece.filledAt),
    order: orderOf(piece.order),
    isBegun: i >= yard.inMould.length,
  }));
};

const NOTHING_FIXED: FixedWork = {
  ...{ batches: [], strips: [], packs: [], preps: [], coats: [], rack: [], dropped: [] },
  stripNow: new Map(),
};

/**
 * Makes a yard file ready for the decoder. `order` indices follow the file. Takes about a millisecond; everything in it is
 * worked out once and shared by all plans of the same file.
 *
 * `stands`: what is to be kept is a plan that stands, of which only so much is fixed.
 */
export const compile = (yard: YardFile, stands?: { firm: Keep | undefined }): Problem => {
  const calendar = calendarOf(yard.yard.timeZone);
  const { now, today, horizonEnd, handover, shifts: open, packing } = hoursOf(yard);
  // Work under way takes people out of its hours.
  const shifts = yard.begun ? { ...open, people: open.people.slice(), mixing: open.mixing.slice() } : open;
  const climate = climateOf(yard, calendar);
  const [materialIndex, castingIndex] = [indexOf(yard.materials), indexOf(yard.castings)];
  const [mouldIndex, mixIndex, orderIndex] = [indexOf(yard.moulds), indexOf(yard.mixes), indexOf(yard.orders)];
  const materials = compileMaterials(yard, calendar, now, today, materialIndex);
  const moulds = compileMoulds(yard, calendar, now, castingIndex);
  const begun = begunWorkOf(yard);
  withBegunPreps(moulds, begun);
  withBegunCoats(moulds, begun);
  const orderOf = (id: string | undefined) => (id === undefined ? NONE : orderIndex.get(id)!);
  const orders = yard.orders.map((o) => compileOrder(yard, o, calendar, packing));
  const problem: Problem = {
    yard,
    calendar,
    climate,
    now,
    today,
    horizonEnd,
    mixers: yard.yard.mixers,
    rackSpaces: yard.yard.rackSpaces ?? NEVER,
    shifts,
    packing,
    materials,
    mixes: compileMixes(yard, { climate, materials }, materialIndex),
    castings: yard.castings.map((c, i) => ({
      mix: mixIndex.get(c.mix)!,
      kg: c.kg,
      fillMinutes: c.fillMinutes,
      stripMinutes: c.stripMinutes,
      stripCrew: c.stripCrew,
      cleanMinutes: c.cleanMinutes,
      prepMinutes: c.prepMinutes,
      rackSpaces: c.rackSpaces,
      perPiece: quantities(c.perPiece, materialIndex),
      cuts: cutsOf(c.cuts, materialIndex).filter((x) => x.count > 0),
      sheets: sheetsOf(c, materials, materialIndex),
      moulds: moulds.flatMap((m, k) => (m.usableFrom < NEVER && m.change[i] !== NONE ? [k] : [])),
    })),
    moulds,
    ...ordersTogether(orders, { calendar, shifts, now }),
    finished: yard.finished.map((f) => {
      const readyAt = f.readyAt === undefined ? now : Math.max(now, minuteOf(f.readyAt));
      return {
        casting: castingIndex.get(f.casting)!,
        count: f.count,
        readyAt,
        order: orderOf(f.order),
        ...lotDays({ calendar, handover, shifts, today, horizonEnd }, readyAt),
      };
    }),
    inMould: piecesInMoulds(yard, mouldIndex, castingIndex, orderOf),
    there: { byCasting: [], lateLots: [] },
    begun,
    handover,
    batchWorthDays: yard.yard.batchWorthDays,
    fixed: NOTHING_FIXED,
    ...(stands ? { isStanding: true } : {}),
    bagWorthDays: yard.yard.bagWorthDays,
  };
  problem.there = piecesThere(problem);
  occupyForBegun(problem);
  problem.fixed = fixedWorkOf(problem, stands);
  return problem;
};

/**
 * The problem of the same yard with one more order, which comes last: as `compile` has it, without working out again what
 * no order has a say in.
 */
export const withOneMore = (problem: Problem, order: Order): Problem => {
  const { calendar, packing } = problem;
  const yard: YardFile = { ...problem.yard, orders: [...problem.yard.orders, order] };
  const orders = [...problem.orders, compileOrder(yard, order, calendar, packing)];
  return { ...problem, yard, ...ordersTogether(orders, problem) };
};

/** The problem of the same yard in which something else is fixed: as `compile` has it, with nothing else worked out again. */
export const keeping = (problem: Problem, keep: Keep | undefined): Problem => {
  const other: Problem = { ...problem, yard: { ...problem.yard, keep }, fixed: NOTHING_FIXED };
  return { ...other, fixed: fixedWorkOf(other) };
};
