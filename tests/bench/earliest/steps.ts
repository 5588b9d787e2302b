import { firstFit, NEVER, type Tiny } from './tiny.ts';
import { type Fill, heldFrom, type MouldState, type Piece, type WorkState } from './work-state.ts';

const replaced = <T>(list: readonly T[], at: number, by: T): T[] => list.map((x, i) => (i === at ? by : x));

const isCoatDue = ({ turns }: MouldState, every: number | undefined): boolean => every !== undefined && turns >= every;

/** Set-ups of every mould that is free, for each casting that is still wanted (R6). */
function* preps(tiny: Tiny, state: WorkState): Generator<WorkState> {
  const { yard } = tiny;
  for (const [k, mould] of state.moulds.entries()) {
    if (mould.held || isCoatDue(mould, yard.moulds[k]!.oilEveryTurns)) continue;
    if (mould.prepped >= 0 && !mould.isPreppedBefore) continue;
    for (const { casting: id, changeMinutes } of yard.moulds[k]!.makes) {
      const casting = yard.castings.findIndex((c) => c.id === id);
      if (mould.prepped === casting || state.left[casting]! <= 0) continue;
      const { prepMinutes, cleanMinutes } = yard.castings[casting]!;
      const minutes = prepMinutes + (mould.isDirty ? cleanMinutes : 0) + (mould.setFor === casting ? 0 : changeMinutes);
      const start = firstFit(tiny, 'prep', minutes, Math.max(state.at, mould.dryFrom));
      if (start >= NEVER) continue;
      const set = { prepped: casting, isPreppedBefore: false, setFor: casting, isDirty: false };
      const end = start + minutes;
      yield {
        ...state,
        at: end,
        moulds: replaced(state.moulds, k, { ...mould, ...set, prepStart: start, prepEnd: end }),
        left: replaced(state.left, casting, state.left[casting]! - 1),
      };
    }
  }
}

/** Sealing coats of moulds that had a turn since the last one (R6); an earlier one would do nothing. */
function* coats(tiny: Tiny, state: WorkState): Generator<WorkState> {
  const { yard } = tiny;
  for (const [k, mould] of state.moulds.entries()) {
    const { oilEveryTurns, oilMinutes, oilDryMinutes } = yard.moulds[k]!;
    if (oilEveryTurns === undefined || mould.held || mould.turns === 0) continue;
    if (mould.prepped >= 0 && !mould.isPreppedBefore) continue;
    const minutes = oilMinutes + (mould.isDirty ? yard.castings[mould.setFor]!.cleanMinutes : 0);
    const start = firstFit(tiny, 'prep', minutes, Math.max(state.at, mould.dryFrom));
    if (start >= NEVER) continue;
    const end = start + minutes;
    const coated = { isDirty: false, prepped: -1, isPreppedBefore: false, turns: 0, dryFrom: end + oilDryMinutes };
    yield {
      ...state,
      at: end,
      moulds: replaced(state.moulds, k, { ...mould, ...coated }),
      done: { before: state.done, task: { kind: 'coat', mould: k, start, end } },
    };
  }
}

/** Every order in which some of these can be taken, one at the least. */
function* rowsOf(items: readonly number[]): Generator<number[]> {
  for (const one of items) {
    yield [one];
    for (const more of rowsOf(items.filter((x) => x !== one))) yield [one, ...more];
  }
}

const fillsOf = (tiny: Tiny, state: WorkState, row: readonly number[], start: number): Fill[] => {
  let at = start + tiny.yard.mixes[0]!.mixMinutes;
  return row.map((k) => {
    const mould = state.moulds[k]!;
    const fillStart = at;
    at += tiny.yard.castings[mould.prepped]!.fillMinutes;
    const prep = mould.isPreppedBefore ? { prepStart: start, prepEnd: start } : mould;
    const { prepStart, prepEnd } = prep;
    return { mould: k, casting: mould.prepped, prepStart, prepEnd, fillStart, fillEnd: at };
  });
};

/** Moulds that a batch fills, with what they hold then. */
const filled = (tiny: Tiny, state: WorkState, fills: readonly Fill[], from: number): MouldState[] => {
  const moulds = [...state.moulds];
  fills.forEach(({ mould, casting, fillEnd }, i) => {
    const before = moulds[mould]!;
    const held = heldFrom(tiny, casting, fillEnd, state.pours + i, from);
    const empty = { prepped: -1, isPreppedBefore: false, setFor: casting };
    moulds[mould] = { ...before, ...empty, turns: before.turns + 1, held };
  });
  return moulds;
};

/** Batches of any of the moulds that are set up, not before any of the first days of orders (R3, R4, R10, R11). */
function* batches(tiny: Tiny, state: WorkState): Generator<WorkState> {
  const { castings, mixes } = tiny.yard;
  const { yieldKgPerBag, maxBags, mixMinutes, workingMinutes, washMinutes, attendMinutes } = mixes[0]!;
  const ready = state.moulds.flatMap((mould, k) => (mould.prepped >= 0 ? [k] : []));
  const starts = [...new Set([0, ...tiny.orders.map(({ from }) => from)])];
  for (const row of rowsOf(ready)) {
    const of = row.map((k) => castings[state.moulds[k]!.prepped]!);
    const fill = of.reduce((n, { fillMinutes }) => n + fillMinutes, 0);
    const bags = Math.ceil(of.reduce((n, { kg }) => n + kg, 0) / yieldKgPerBag - 1e-9);
    const before = row.filter((k) => state.moulds[k]!.isPreppedBefore).map((k) => state.moulds[k]!.prepped);
    const fits = castings.every((_, c) => before.filter((x) => x === c).length <= state.left[c]!);
    if (fill > workingMinutes || bags > maxBags || !fits) continue;
    const there = tiny.bagsFrom[state.bags + bags - 1] ?? NEVER;
    const dry = Math.max(...row.map((k) => state.moulds[k]!.dryFrom));
    const minutes = mixMinutes + fill + washMinutes;
    const stays = { lastFill: mixMinutes + fill, attend: attendMinutes };
    for (const from of starts) {
      const start = firstFit(tiny, 'batch', minutes, Math.max(state.at, there, dry, from), stays);
      if (start >= NEVER) continue;
      const fills = fillsOf(tiny, state, row, start);
      const end = start + minutes;
      yield {
        ...state,
        at: end,
        moulds: filled(tiny, state, fills, from),
        bags: state.bags + bags,
        pours: state.pours + row.length,
        left: state.left.map((n, c) => n - before.filter((x) => x === c).length),
        done: { before: state.done, task: { kind: 'batch', start, end, mixEnd: start + mixMinutes, fills } },
      };
    }
  }
}

/** Strips of what is in moulds, as soon as it may come out (R7). */
function* strips(tiny: Tiny, state: WorkState): Generator<WorkState> {
  for (const [k, mould] of state.moulds.entries()) {
    if (!mould.held) continue;
    const { casting, outAt, curedAt, pour, from } = mould.held;
    const { stripMinutes } = tiny.yard.castings[casting]!;
    const start = firstFit(tiny, 'strip', stripMinutes, Math.max(state.at, outAt));
    if (start >= NEVER) continue;
    const end = start + stripMinutes;
    const readyAt = Math.max(end, curedAt);
    const inIt =
      pour < 0 ? tiny.yard.inMould.find(({ mould: id }) => id === tiny.yard.moulds[k]!.id)!.order : undefined;
    const aside = inIt === undefined ? null : tiny.orders.findIndex(({ id }) => id === inIt);
    const source = pour < 0 ? { mould: k } : { pour };
    yield {
      ...state,
      at: end,
      moulds: replaced(state.moulds, k, { ...mould, held: null, isDirty: true }),
      pieces: [...state.pieces, { casting, readyAt, strippedAt: end, aside, from, usedBy: -1, source }],
      done: { before: state.done, task: { kind: 'strip', mould: k, pour, start, end, readyAt } },
    };
  }
}

/** Whether an order may have a piece at all. */
const mayHave = (tiny: Tiny, order: number, { aside, from, usedBy }: Piece): boolean =>
  usedBy < 0 && (aside === null || aside === order) && tiny.orders[order]!.from <= from;

/** Every choice of so many of some pieces, each sort once. */
function* choicesOf(pieces: readonly Piece[], among: readonly number[], count: number): Generator<number[]> {
  if (count === 0) yield [];
  else
    for (const [i, one] of among.entries()) {
      const is = (other: number) =>
        pieces[other]!.readyAt === pieces[one]!.readyAt &&
        pieces[other]!.strippedAt === pieces[one]!.strippedAt &&
        pieces[other]!.aside === pieces[one]!.aside &&
        pieces[other]!.from === pieces[one]!.from;
      if (among.slice(0, i).some(is)) continue;
      for (const more of choicesOf(pieces, among.slice(i + 1), count - 1)) yield [one, ...more];
    }
}

/** Every choice of pieces for an order, out of those there are. */
export function* piecesFor(tiny: Tiny, pieces: readonly Piece[], order: number, casting = 0): Generator<number[]> {
  const { needs } = tiny.orders[order]!;
  if (casting === needs.length) {
    yield [];
    return;
  }
  const among = pieces.flatMap((piece, i) => (piece.casting === casting && mayHave(tiny, order, piece) ? [i] : []));
  for (const chosen of choicesOf(pieces, among, needs[casting]!))
    for (const others of piecesFor(tiny, pieces, order, casting + 1)) yield [...chosen, ...others];
}

/** Packings of any order whose pieces are out of their moulds, with any of them (R11). */
function* packings(tiny: Tiny, state: WorkState): Generator<WorkState> {
  for (const [o, order] of tiny.orders.entries()) {
    if (order.packMinutes === 0 || state.packedAt[o]! >= 0) continue;
    for (const chosen of piecesFor(tiny, state.pieces, o)) {
      const ready = Math.max(order.from, ...chosen.map((i) => state.pieces[i]!.readyAt));
      const start = firstFit(tiny, 'pack', order.packMinutes, Math.max(state.at, ready));
      if (start >= NEVER) continue;
      const end = start + order.packMinutes;
      yield {
        ...state,
        at: end,
        pieces: state.pieces.map((piece, i) => (chosen.includes(i) ? { ...piece, usedBy: o } : piece)),
        packedAt: replaced(state.packedAt, o, end),
        done: { before: state.done, task: { kind: 'pack', order: o, start, end } },
      };
    }
  }
}

/**
 * Every task that the one person could do next, at the earliest minute at which it may begin. To begin later is never
 * better: hours, drying, curing, deliveries and first days all let a task that could begin at a minute begin as soon or
 * sooner after one that ended sooner.
 */
export function* stepsFrom(tiny: Tiny, state: WorkState): Generator<WorkState> {
  yield* strips(tiny, state);
  yield* packings(tiny, state);
  yield* batches(tiny, state);
  yield* preps(tiny, state);
  yield* coats(tiny, state);
}
