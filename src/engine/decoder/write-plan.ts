import type { PlanFile, PlanOrder, PlanPour, PlanSheet, PlanStick, UnplannedOrder } from '../../../shared/plan.ts';
import { dateOfDay, dayNumber } from '../../../shared/time.ts';
import { buysOf } from '../buy/buys.ts';
import { onItsWay } from '../buy/there-at.ts';
import { type CutDemand, cutPlan } from '../cut/cut-plan.ts';
import { cutSheets, type SheetDemand } from '../cut/mesh/cut-sheets.ts';
import { begunIn } from './begun.ts';
import { bagsOf, type DecoderState } from './decoder-state.ts';
import { droppedBy } from './dropped-by.ts';
import type { SheetCuts } from './open-sheets.ts';
import { NONE, type Problem } from './problem.ts';
import { spellsPlaced } from './spells.ts';

interface Use {
  at: number;
  quantity: number;
}

/** What a plan uses of each material, and what it cuts, in the order of `problem.materials`. */
interface Uses {
  quantities: Use[][];
  cuts: CutDemand[][];
  sheets: SheetDemand[][];
}

/** Ids of batches and pours: fixed ones keep theirs, the others are numbered past them and past those that are dropped. */
interface Names {
  batches: string[];
  pours: string[];
}

const numbered = (prefix: string, count: number, given: (string | undefined)[], fixed: { id: string }[]): string[] => {
  const taken = new Set(fixed.map(({ id }) => id));
  let n = 0;
  return Array.from({ length: count }, (_, i) => {
    if (given[i] !== undefined) return given[i]!;
    do n++;
    while (taken.has(`${prefix}${n}`));
    return `${prefix}${n}`;
  });
};

const namesOf = ({ placed, problem }: DecoderState): Names => {
  const fixedBatch = (b: number) => problem.fixed.batches[placed.batchFixed[b]!];
  const batches = Array.from({ length: placed.batches }, (_, b) => fixedBatch(b)?.id);
  const pours = Array.from(
    { length: placed.pours },
    (_, p) => fixedBatch(placed.pourBatch[p]!)?.pours.find((x) => x.mould === placed.pourMould[p])?.id,
  );
  const { keep } = problem.yard;
  const begun = begunIn(problem.yard);
  return {
    batches: numbered('B', placed.batches, batches, [...begun.batches, ...(keep?.batches ?? [])]),
    pours: numbered('P', placed.pours, pours, [...begun.pours, ...(keep?.pours ?? [])]),
  };
};

/** What is being packed, or mixed, has been taken out of the stock. */
const isPackBegun = ({ problem }: DecoderState, order: number): boolean =>
  problem.begun.packs.some((pack) => pack.order === order);

const isBatchBegun = ({ placed, problem }: DecoderState, batch: number): boolean =>
  problem.fixed.batches[placed.batchFixed[batch]!]?.isBegun === true;

/** Orders' own uses: parts and cuts when it is packed, or when it is complete where nothing is packed. */
const addOrderUses = (state: DecoderState, uses: Uses): void => {
  state.problem.orders.forEach((order, o) => {
    const completesAt = state.orders.completesAt[o]!;
    if (completesAt === NONE || isPackBegun(state, o)) return;
    const when = state.orders.packStart[o]! === NONE ? completesAt : state.orders.packStart[o]!;
    for (const x of order.parts) uses.quantities[x.material]!.push({ at: when, quantity: x.quantity });
    for (const x of order.cuts)
      uses.cuts[x.material]!.push({
        lengthMm: x.lengthMm,
        count: x.count,
        at: when,
        for: state.problem.yard.orders[o]!.id,
      });
  });
};

/** What is cut from sheets for a batch is cut at once. */
const addSheetUses = (state: DecoderState, names: Names, uses: Uses): void => {
  const { problem, placed } = state;
  if (problem.materials.every(({ sheets }) => sheets === null)) return;
  const pieces: SheetCuts[][] = Array.from({ length: placed.batches }, () => []);
  for (let p = 0; p < placed.pours; p++)
    pieces[placed.pourBatch[p]!]!.push(...problem.castings[placed.pourCasting[p]!]!.sheets);
  pieces.forEach((all, b) => {
    if (isBatchBegun(state, b)) return;
    for (const material of new Set(all.map((one) => one.material)))
      uses.sheets[material]!.push({
        ...{ at: placed.batchStart[b]!, for: names.batches[b]! },
        pieces: all.filter((one) => one.material === material),
      });
  });
};

const usesOf = (state: DecoderState, names: Names): Uses => {
  const { problem, placed } = state;
  const none = () => problem.materials.map(() => []);
  const uses: Uses = { quantities: none(), cuts: none(), sheets: none() };
  for (let b = 0; b < placed.batches; b++) {
    if (isBatchBegun(state, b)) continue;
    for (const x of problem.mixes[placed.batchMix[b]!]!.perBag)
      uses.quantities[x.material]!.push({ at: placed.batchStart[b]!, quantity: x.quantity * placed.batchBags[b]! });
  }
  for (let p = 0; p < placed.pours; p++) {
    if (isBatchBegun(state, placed.pourBatch[p]!)) continue;
    const casting = problem.castings[placed.pourCasting[p]!]!;
    const when = placed.batchStart[placed.pourBatch[p]!]!;
    for (const x of casting.perPiece) uses.quantities[x.material]!.push({ at: when, quantity: x.quantity });
    for (const x of casting.cuts)
      uses.cuts[x.material]!.push({
        lengthMm: x.lengthMm,
        count: x.count,
        at: when,
        for: names.batches[placed.pourBatch[p]!]!,
      });
  }
  addSheetUses(state, names, uses);
  addOrderUses(state, uses);
  return uses;
};

/** How many whole sticks or sheets may be open by a minute: what is there, until more can be bought. */
const sticksBy =
  (problem: Problem, material: number, used: Use[]) =>
  (minute: number): number => {
    const m = problem.materials[material]!;
    if (minute >= m.plentyFrom) return Infinity;
    const arrived = m.arrivals.reduce((n, x) => (x.at <= minute ? n + x.quantity : n), m.onHand);
    return used.reduce((n, x) => (x.at <= minute ? n - x.quantity : n), arrived);
  };

/** Sticks of each material; the index of a material whose cuts do not fit its sticks where that cannot be done. */
const cutSticks = (problem: Problem, uses: Uses): { sticks: PlanStick[]; failed: number } => {
  const sticks: PlanStick[] = [];
  for (let i = 0; i < problem.materials.length; i++) {
    if (uses.cuts[i]!.length === 0) continue;
    const scarce = problem.materials[i]!.plentyFrom > problem.now;
    const opened = cutPlan(
      problem.materials[i]!,
      uses.cuts[i]!,
      scarce ? sticksBy(problem, i, uses.quantities[i]!) : undefined,
    );
    if (!opened) return { sticks, failed: i };
    for (const stick of opened) {
      sticks.push({
        material: problem.yard.materials[i]!.id,
        openedAt: problem.calendar.instantText(stick.openedAt),
        ...(stick.offcutMm === undefined ? {} : { offcutMm: stick.offcutMm }),
        cuts: stick.cuts,
      });
      if (stick.offcutMm === undefined) uses.quantities[i]!.push({ at: stick.openedAt, quantity: 1 });
    }
  }
  return { sticks, failed: NONE };
};

/** The same of sheets: what is cut is cut in rows, so that the rests are those the decoder had. */
const cutAllSheets = (problem: Problem, uses: Uses): { sheets: PlanSheet[]; failed: number } => {
  const sheets: PlanSheet[] = [];
  for (const [i, { sheets: stock, plentyFrom }] of problem.materials.entries()) {
    if (!stock || uses.sheets[i]!.length === 0) continue;
    const by = plentyFrom > problem.now ? sticksBy(problem, i, uses.quantities[i]!) : undefined;
    const cuts = cutSheets(stock, uses.sheets[i]!, by);
    if (!cuts) return { sheets, failed: i };
    for (const { at, ...cut } of cuts) {
      sheets.push({ material: problem.yard.materials[i]!.id, ...cut });
      if (cut.rest === undefined) uses.quantities[i]!.push({ at, quantity: 1 });
    }
  }
  return { sheets, failed: NONE };
};

/** When a pour is stripped. One under way that no session strips keeps the times it came with (R14). */
const stripTimes = (
  { placed, problem }: DecoderState,
  id: string,
  p: number,
): Pick<PlanPour, 'stripStart' | 'stripEnd' | 'pieceReadyAt'> => {
  const text = problem.calendar.instantText;
  const stripStart = placed.pourStripStart[p]!;
  const came = stripStart === NONE && begunIn(problem.yard).pours.find((pour) => pour.id === id);
  if (came) return { stripStart: came.stripStart, stripEnd: came.stripEnd, pieceReadyAt: came.pieceReadyAt };
  const { stripMinutes } = problem.castings[placed.pourCasting[p]!]!;
  return {
    stripStart: text(stripStart),
    stripEnd: text(stripStart + stripMinutes),
    pieceReadyAt: text(placed.pourReadyAt[p]!),
  };
};

const pourOf = (state: DecoderState, names: Names, p: number): PlanPour => {
  const { placed, problem } = state;
  const text = problem.calendar.instantText;
  const casting = placed.pourCasting[p]!;
  const order = placed.pourOrder[p]!;
  return {
    id: names.pours[p]!,
    batch: names.batches[placed.pourBatch[p]!]!,
    mould: problem.yard.moulds[placed.pourMould[p]!]!.id,
    casting: problem.yard.castings[casting]!.id,
    ...(order === NONE ? {} : { order: problem.yard.orders[order]!.id }),
    prepStart: text(placed.pourPrepStart[p]!),
    prepEnd: text(placed.pourPrepEnd[p]!),
    fillStart: text(placed.pourFillStart[p]!),
    fillEnd: text(placed.pourFillEnd[p]!),
    ...stripTimes(state, names.pours[p]!, p),
  };
};

const batchesOf = (state: DecoderState, names: Names): PlanFile['batches'] => {
  const { placed, problem } = state;
  const text = problem.calendar.instantText;
  const pours: string[][] = Array.from({ length: placed.batches }, () => []);
  for (let p = 0; p < placed.pours; p++) pours[placed.pourBatch[p]!]!.push(names.pours[p]!);
  return pours.map((ids, b) => {
    const mix = problem.mixes[placed.batchMix[b]!]!;
    const start = placed.batchStart[b]!;
    return {
      id: names.batches[b]!,
      mix: problem.yard.mixes[placed.batchMix[b]!]!.id,
      start: text(start),
      mixEnd: text(start + mix.mixMinutes),
      end: text(placed.batchEnd[b]!),
      bags: placed.batchBags[b]!,
      kg: placed.batchKg[b]!,
      pours: ids,
    };
  });
};

/** Sealing coats as they are placed: under way, before the pours, and fixed ones. One that no pour came of is left out (R6). */
const coatsPlaced = ({ placed, problem }: DecoderState): { mould: number; start: number; end: number }[] => {
  const before = Array.from({ length: placed.pours }, (_, p) => ({
    mould: placed.pourMould[p]!,
    start: placed.pourCoatStart[p]!,
    end: placed.pourCoatEnd[p]!,
  })).filter(({ start }) => start !== NONE);
  const fixed = problem.fixed.coats.map(({ mould, start, minutes }) => ({ mould, start, end: start + minutes }));
  const isThere = ({ mould, start }: { mould: number; start: number }) =>
    before.some((coat) => coat.mould === mould && coat.start === start);
  const all = [...problem.begun.coats, ...before, ...fixed.filter((coat) => !isThere(coat))];
  return all.sort((a, b) => a.start - b.start || a.mould - b.mould);
};

const coatsOf = (state: DecoderState): PlanFile['coats'] => {
  const { yard, calendar } = state.problem;
  return coatsPlaced(state).map(({ mould, start, end }) => ({
    mould: yard.moulds[mould]!.id,
    start: calendar.instantText(start),
    end: calendar.instantText(end),
  }));
};

/** What is being poured into a mould never comes out of it: the first pour there, which is the one under way, has no strip. */
const isUnstripped = ({ placed }: DecoderState, mould: number): boolean => {
  for (let p = 0; p < placed.pours; p++) if (placed.pourMould[p] === mould) return placed.pourStripStart[p] === NONE;
  return false;
};

const stripsOf = (state: DecoderState): Pick<PlanFile, 'strips' | 'unstripped'> => {
  const { placed, problem } = state;
  const text = problem.calendar.instantText;
  const strips: PlanFile['strips'] = [];
  const unstripped: PlanFile['unstripped'] = [];
  for (const piece of problem.inMould) {
    const mould = problem.yard.moulds[piece.mould]!.id;
    const start = placed.firstStripStart[piece.mould]!;
    const order = placed.firstOrder[piece.mould]!;
    const stays = piece.isBegun ? isUnstripped(state, piece.mould) : start === NONE;
    if (stays) unstripped.push({ mould, reason: 'no session within the plan has time to strip it' });
    if (stays || piece.isBegun) continue;
    strips.push({
      mould,
      ...(order === NONE ? {} : { order: problem.yard.orders[order]!.id }),
      stripStart: text(start),
      stripEnd: text(start + problem.castings[piece.casting]!.stripMinutes),
      pieceReadyAt: text(placed.firstReadyAt[piece.mould]!),
    });
  }
  return { strips, unstripped };
};

/** What an order gets of finished pieces, a lot once each. */
const fromFinished = ({ placed }: DecoderState, order: number): PlanOrder['fromFinished'] => {
  const counts = new Map<number, number>();
  for (let i = 0; i < placed.deals; i++)
    if (placed.dealOrder[i] === order)
      counts.set(placed.dealLot[i]!, (counts.get(placed.dealLot[i]!) ?? 0) + placed.dealCount[i]!);
  return [...counts].map(([finished, count]) => ({ finished, count }));
};

/** When an order is packed: from the first minute to the last, and its spells where there is more than one. */
const packTimes = (state: DecoderState, o: number): Pick<PlanOrder, 'packStart' | 'packEnd' | 'packs'> => {
  const { problem, orders } = state;
  const text = problem.calendar.instantText;
  if (orders.packStart[o] === NONE) return {};
  const spells = spellsPlaced(state, o);
  return {
    ...{ packStart: text(orders.packStart[o]!), packEnd: text(orders.completesAt[o]!) },
    ...(spells.length > 1
      ? { packs: spells.map(({ start, minutes }) => ({ packStart: text(start), packEnd: text(start + minutes) })) }
      : {}),
  };
};

const orderOf = (state: DecoderState, o: number): PlanOrder => {
  const { problem, orders } = state;
  const text = problem.calendar.instantText;
  const completesAt = orders.completesAt[o]!;
  const on = problem.handover[problem.calendar.dayOf(completesAt) - problem.today]!;
  const { due } = problem.yard.orders[o]!;
  return {
    id: problem.yard.orders[o]!.id,
    ...packTimes(state, o),
    completesAt: text(completesAt),
    completesOn: dateOfDay(on),
    daysLate: due === undefined ? 0 : Math.max(0, on - dayNumber(due)),
    fromFinished: fromFinished(state, o),
  };
};

/**
 * What a plan scores, by the contract: the sums a maker never sees, and everything is compared by. Days are hand-over
 * days.
 *
 * Example: one order of weight 3, two days late, ten days from today on: 6 weighted days late, 30 weighted days to
 * completion.
 */
export const scoreOf = (state: DecoderState): PlanFile['score'] => {
  const { problem, orders, placed } = state;
  const score = {
    unplannedWeight: 0,
    weightedDaysLate: 0,
    weightedDaysAfterWanted: 0,
    batches: placed.batches,
    bags: bagsOf(placed),
    weightedCompletionDays: 0,
  };
  problem.orders.forEach((order, o) => {
    if (orders.completesAt[o] === NONE) {
      score.unplannedWeight += order.weight;
      return;
    }
    const on = problem.handover[problem.calendar.dayOf(orders.completesAt[o]!) - problem.today]!;
    score.weightedDaysLate += order.weight * Math.max(0, on - order.dueDay);
    score.weightedDaysAfterWanted += order.weight * Math.max(0, on - order.wantedDay);
    score.weightedCompletionDays += order.weight * (on - problem.today);
  });
  return score;
};

const compareStarts = (a: { start: string }, b: { start: string }): number => Date.parse(a.start) - Date.parse(b.start);

/**
 * The plan file of what has been placed; or the material whose cuts cannot be had from the sticks that are there, so that
 * it can be placed again with one stick less to count on.
 */
export const writePlan = (
  state: DecoderState,
  unplanned: UnplannedOrder[],
): { plan: PlanFile } | { shortOf: number } => {
  const { problem } = state;
  const names = namesOf(state);
  const uses = usesOf(state, names);
  const { sticks, failed } = cutSticks(problem, uses);
  if (failed !== NONE) return { shortOf: failed };
  const { sheets, failed: shortOf } = cutAllSheets(problem, uses);
  if (shortOf !== NONE) return { shortOf };
  const buys = problem.yard.materials.flatMap((material, i) =>
    buysOf(material, uses.quantities[i]!, onItsWay(problem.yard, material.id), problem.now, problem.calendar, {
      daysInHand: problem.yard.yard.deliveryDaysInHand,
      deliveredBy: problem.yard.yard.deliveredBy,
      days: problem.materials[i]!.comes,
    }),
  );
  const planned = problem.orders.flatMap((_, o) => (state.orders.completesAt[o] === NONE ? [] : [orderOf(state, o)]));
  return {
    plan: {
      format: 'mould-rota/plan',
      version: 2,
      batches: batchesOf(state, names).sort(compareStarts),
      pours: Array.from({ length: state.placed.pours }, (_, p) => pourOf(state, names, p)),
      coats: coatsOf(state),
      ...stripsOf(state),
      orders: planned,
      unplanned,
      sticks,
      ...(sheets.length > 0 ? { sheets } : {}),
      buys,
      dropped: droppedBy(state),
      score: scoreOf(state),
    },
  };
};
