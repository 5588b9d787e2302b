import { curedAt, outAt } from '../book/curing-times.ts';
import { coatMinutes, isCoatDue, setUpMinutes, turnsAfterPour } from '../book/mould-state.ts';
import { BATCH, NEVER, NONE, PREP, type Problem, STRIP } from '../decoder/problem.ts';
import { weatherFault } from '../decoder/weather.ts';

/**
 * Earliest start at or after `from` of a task in a yard where nothing else is done; NEVER when no session allows it.
 * `kind` is one bit, as in `Shifts.allow`.
 *
 * Example: on a Monday morning, the next session for pours on Wednesday from 18:00 on, ten minutes of it to set up:
 * `compile(yard).calendar.instantText(earliestAlone(compile(yard), BATCH, 30, 1, compile(yard).now))` is
 * "2027-04-07T18:10:00+01:00".
 */
export const earliestAlone = (
  problem: Problem,
  kind: number,
  minutes: number,
  people: number,
  from: number,
): number => {
  const { shifts } = problem;
  let [low, high] = [0, shifts.count];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (shifts.to[middle]! <= from) low = middle + 1;
    else high = middle;
  }
  for (let s = low; s < shifts.count; s++) {
    const base = shifts.offset[s]! - shifts.from[s]!;
    let start = Math.max(from, shifts.from[s]!);
    for (let t = start; t < start + minutes && start + minutes <= shifts.to[s]!; t++)
      if (shifts.people[base + t]! < people || (shifts.allow[base + t]! & kind) === 0) start = t + 1;
    if (start + minutes <= shifts.to[s]!) return start;
  }
  return NEVER;
};

/** A mould after its last turn, by how many pours ago its sealing coat was. */
interface Emptied {
  emptyAt: number;
  /** Minutes of setting it up before the next pour, without a coat and after one. */
  prepMinutes: number;
  prepAfterCoat: number;
  /** Minutes of a coat, cleaning included. */
  coatMinutes: number;
  turnsSinceOil: number;
  isPrepped: boolean;
}

/** One mould making one casting as fast as it could if all hands were free for it alone: when its next piece is ready, NEVER without one. */
interface Turning {
  mould: number;
  after: Emptied[];
  readyAt: number;
}

/** Earliest start of a batch of one piece that the weather allows too; a fixed pour was allowed when it was made fixed. */
export const batchAlone = (problem: Problem, casting: number, from: number): number => {
  const { mix, fillMinutes } = problem.castings[casting]!;
  const { mixMinutes, washMinutes, crew } = problem.mixes[mix]!;
  const minutes = mixMinutes + fillMinutes;
  const alone = (start: number) => earliestAlone(problem, BATCH, minutes + washMinutes, crew, start);
  let start = alone(from);
  while (start < NEVER && problem.fixed.batches.length === 0 && weatherFault(problem, mix, start, start + minutes))
    start = alone(problem.climate.nextStep(start));
  return start;
};

/**
 * Minute at which a piece that is filled by `fillEnd` leaves its mould, and at which it is ready, nothing in the way
 * (R7, R8). NEVER when no session takes it out.
 *
 * Example: 75 minutes at 20 °C are 137 at 10 °C, and it takes 8 to strip:
 * `compile(yard).calendar.instantText(outOf(compile(yard), 0, minuteOf('2027-04-10T09:00:00+01:00')).emptyAt)` is
 * "2027-04-10T11:25:00+01:00".
 */
export const outOf = (problem: Problem, casting: number, fillEnd: number): { emptyAt: number; readyAt: number } => {
  const { mix, stripMinutes, stripCrew } = problem.castings[casting]!;
  const setting = problem.mixes[mix]!;
  const strip = earliestAlone(problem, STRIP, stripMinutes, stripCrew, outAt(setting, fillEnd));
  const emptyAt = strip >= NEVER ? NEVER : strip + stripMinutes;
  return { emptyAt, readyAt: Math.max(emptyAt, curedAt(setting, fillEnd)) };
};

/**
 * The least that cleaning a mould can take: a coat cleans it as what it is set for asks, and that may be any piece it makes.
 *
 * Example: a mould of a piece that takes 6 minutes and of one that takes 9: 6.
 */
export const leastCleaning = (problem: Problem, mould: number): number =>
  problem.moulds[mould]!.makes.reduce((n, { casting }) => Math.min(n, problem.castings[casting]!.cleanMinutes), NEVER);

/** When a mould can be set up: at once, or when its coat is dry. */
const prepFrom = (problem: Problem, mould: number, last: Emptied, coated: boolean): number => {
  if (!coated || last.emptyAt >= NEVER) return last.emptyAt;
  const coat = earliestAlone(problem, PREP, last.coatMinutes, 1, last.emptyAt);
  return coat >= NEVER ? NEVER : coat + last.coatMinutes + problem.moulds[mould]!.oilDryMinutes;
};

/** One more turn of a mould, with or without a sealing coat, of a batch from a minute on; null when there is no time. */
const turnFrom = (
  problem: Problem,
  { mould, casting, from }: { mould: number; casting: number; from: number },
  last: Emptied,
  coated: boolean,
): { after: Emptied; readyAt: number } | null => {
  const { mix, fillMinutes } = problem.castings[casting]!;
  const free = prepFrom(problem, mould, last, coated);
  const minutes = coated ? last.prepAfterCoat : last.prepMinutes;
  const prep = free >= NEVER ? NEVER : earliestAlone(problem, PREP, minutes, 1, free);
  if (prep >= NEVER) return null;
  const batch = batchAlone(problem, casting, Math.max(from, prep + minutes));
  if (batch >= NEVER) return null;
  const { emptyAt, readyAt } = outOf(problem, casting, batch + problem.mixes[mix]!.mixMinutes + fillMinutes);
  if (readyAt >= NEVER) return null;
  const turnsSinceOil = turnsAfterPour(last.turnsSinceOil, coated);
  const after = {
    emptyAt,
    prepMinutes: setUpMinutes(problem.castings[casting]!, 0, true),
    prepAfterCoat: setUpMinutes(problem.castings[casting]!, 0, false),
    coatMinutes: coatMinutes(problem.moulds[mould]!.oilMinutes, { cleanMinutes: leastCleaning(problem, mould) }, true),
    turnsSinceOil,
    isPrepped: false,
  };
  return { after, readyAt };
};

/** Without those that another beats: empty as soon, with as few pours since its coat. */
const unbeaten = (after: Emptied[]): Emptied[] =>
  after.filter(
    (one, i) =>
      !after.some(
        (other, k) =>
          other.emptyAt <= one.emptyAt &&
          other.turnsSinceOil <= one.turnsSinceOil &&
          (k < i || other.emptyAt < one.emptyAt || other.turnsSinceOil < one.turnsSinceOil),
      ),
  );

/** Makes one more piece, at once; a coat is given when it is due, or sooner where that may serve later turns. */
const turnOnce = (problem: Problem, turning: Turning, casting: number, from: number): void => {
  const { mould } = turning;
  const { oilEveryTurns } = problem.moulds[mould]!;
  const turns = turning.after.flatMap((last) => {
    const isDue = !last.isPrepped && isCoatDue(last.turnsSinceOil, oilEveryTurns);
    const ways = isDue ? [true] : oilEveryTurns < NEVER ? [false, true] : [false];
    return ways.map((coated) => turnFrom(problem, { mould, casting, from }, last, coated));
  });
  const made = turns.filter((turn) => turn !== null);
  turning.readyAt = made.reduce((soonest, { readyAt }) => Math.min(soonest, readyAt), NEVER);
  turning.after = unbeaten(made.map(({ after }) => after));
};

/** A mould as it stands, before its first pour of a casting. */
const turningOf = (problem: Problem, casting: number, k: number): Turning => {
  const mould = problem.moulds[k]!;
  const { usableFrom, turnsSinceOil } = mould;
  const piece = problem.inMould.find((one) => one.mould === k);
  const held = piece?.casting ?? mould.setFor;
  const change = held === casting ? 0 : mould.change[casting]!;
  const dirty = piece !== undefined || mould.dirty;
  const emptyAt = piece ? Math.max(outOf(problem, piece.casting, piece.filledAt).emptyAt, usableFrom) : usableFrom;
  const isPrepped = !piece && mould.prepped && mould.setFor === casting;
  const first = {
    emptyAt,
    prepMinutes: isPrepped ? 0 : setUpMinutes(problem.castings[casting]!, change, dirty),
    prepAfterCoat: setUpMinutes(problem.castings[casting]!, change, false),
    coatMinutes: coatMinutes(mould.oilMinutes, { cleanMinutes: leastCleaning(problem, k) }, dirty),
    ...{ turnsSinceOil, isPrepped },
  };
  return { mould: k, after: [first], readyAt: NEVER };
};

/** When the pieces of a casting that are there, or in moulds, are ready; of those set aside only what is the order's own. */
const readyAlready = (problem: Problem, casting: number, order: number | null): number[] => {
  const counts = (set: number) => order === null || set === NONE || set === order;
  const finished = problem.finished.filter((lot) => lot.casting === casting && counts(lot.order));
  const inMould = problem.inMould.filter((piece) => piece.casting === casting && counts(piece.order));
  return [
    ...finished.flatMap((lot) => Array.from({ length: lot.count }, () => lot.readyAt)),
    ...inMould.map((piece) => Math.max(problem.now, outOf(problem, casting, piece.filledAt).readyAt)),
  ];
};

/**
 * When the 1st, 2nd, 3rd … piece of a casting can be ready at the very soonest: every mould turns as if all hands and all
 * else were there for it alone. Minutes in rising order, `count` of them or as many as the horizon allows. For one `order`,
 * what is set aside for others is left out; for all of them (null) it counts. No batch begins before `from`.
 */
export const soonestReady = (
  problem: Problem,
  casting: number,
  count: number,
  order: number | null,
  from: number = problem.now,
): number[] => {
  const poured: number[] = [];
  const turnings = problem.castings[casting]!.moulds.map((k) => turningOf(problem, casting, k));
  for (const turning of turnings) turnOnce(problem, turning, casting, from);
  while (poured.length < count) {
    let next: Turning | null = null;
    for (const t of turnings) if (t.readyAt < NEVER && (!next || t.readyAt < next.readyAt)) next = t;
    if (!next) break;
    poured.push(next.readyAt);
    turnOnce(problem, next, casting, from);
  }
  // What is there may be ready later than what is still to be poured.
  return [...readyAlready(problem, casting, order), ...poured]
    .filter((minute) => minute < problem.horizonEnd)
    .sort((a, b) => a - b)
    .slice(0, count);
};

/** By when those pieces can be handed over at the very soonest, in days; no plan has more of them by a day than this. */
export const soonestDays = (problem: Problem, casting: number, count: number): Int32Array => {
  const dayOf = (minute: number) => problem.handover[problem.calendar.dayOf(minute) - problem.today] ?? NONE;
  return Int32Array.from(soonestReady(problem, casting, count, null), dayOf);
};
