import { BATCH, NEVER, NONE, PREP, type Problem, STRIP } from '../place/problem.ts';

/** Earliest start at or after `from` of a task in a yard where nothing else is done; NEVER when no session allows it. */
const earliestAlone = (problem: Problem, kind: number, minutes: number, people: number, from: number): number => {
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

/** One mould making one casting as fast as it could if all hands were free for it alone. */
interface Turning {
  mould: number;
  /** When the mould is empty, and minutes of setting it up before the next pour. */
  emptyAt: number;
  prepMinutes: number;
  readyAt: number;
}

/** Minute at which a piece that is filled by `fillEnd` leaves its mould, and at which it is ready, nothing in the way. */
const outOf = (problem: Problem, casting: number, fillEnd: number): { emptyAt: number; readyAt: number } => {
  const { mix, stripMinutes, stripCrew } = problem.castings[casting]!;
  const { ageing, demouldMinutes, cureMinutes } = problem.mixes[mix]!;
  const strip = earliestAlone(problem, STRIP, stripMinutes, stripCrew, ageing.whenAged(fillEnd, demouldMinutes));
  const emptyAt = strip >= NEVER ? NEVER : strip + stripMinutes;
  return { emptyAt, readyAt: Math.max(emptyAt, ageing.whenAged(fillEnd, cureMinutes)) };
};

/** Makes one more piece, at once; `readyAt` is then its own, NEVER when there is no time for one. */
const turnOnce = (problem: Problem, turning: Turning, casting: number): void => {
  const { mix, fillMinutes, prepMinutes, cleanMinutes } = problem.castings[casting]!;
  const { mixMinutes, washMinutes, crew } = problem.mixes[mix]!;
  const prep = earliestAlone(problem, PREP, turning.prepMinutes, 1, turning.emptyAt);
  if (prep >= NEVER || turning.emptyAt >= NEVER) {
    turning.readyAt = NEVER;
    return;
  }
  const batch = earliestAlone(problem, BATCH, mixMinutes + fillMinutes + washMinutes, crew, prep + turning.prepMinutes);
  if (batch >= NEVER) {
    turning.readyAt = NEVER;
    return;
  }
  Object.assign(turning, outOf(problem, casting, batch + mixMinutes + fillMinutes));
  turning.prepMinutes = prepMinutes + cleanMinutes;
};

const turningsOf = (problem: Problem, casting: number): { turnings: Turning[]; ready: number[] } => {
  const ready: number[] = [];
  for (const lot of problem.finished)
    if (lot.casting === casting) for (let i = 0; i < lot.count; i++) ready.push(lot.readyAt);
  const held = new Map(problem.inMould.map((piece) => [piece.mould, piece]));
  const { prepMinutes, cleanMinutes } = problem.castings[casting]!;
  for (const piece of problem.inMould)
    if (piece.casting === casting) ready.push(Math.max(problem.now, outOf(problem, casting, piece.filledAt).readyAt));
  const turnings = problem.castings[casting]!.moulds.map((k): Turning => {
    const mould = problem.moulds[k]!;
    const piece = held.get(k);
    if (piece) {
      const { emptyAt } = outOf(problem, piece.casting, piece.filledAt);
      const change = piece.casting === casting ? 0 : mould.change[casting]!;
      return {
        mould: k,
        emptyAt: Math.max(emptyAt, mould.usableFrom),
        prepMinutes: prepMinutes + cleanMinutes + change,
        readyAt: 0,
      };
    }
    const change = mould.setFor === casting ? 0 : mould.change[casting]!;
    const asIs = mould.prepped && mould.setFor === casting;
    const minutes = asIs ? 0 : prepMinutes + (mould.dirty ? cleanMinutes : 0) + change;
    return { mould: k, emptyAt: mould.usableFrom, prepMinutes: minutes, readyAt: 0 };
  });
  return { turnings, ready };
};

/**
 * By when the 1st, 2nd, 3rd … piece of a casting can be handed over at the very soonest: every mould turns as if all
 * hands and all else were there for it alone. Days in rising order, `count` of them or as many as the horizon allows; no
 * plan has more pieces by a day than this.
 */
export const soonestDays = (problem: Problem, casting: number, count: number): Int32Array => {
  const { turnings, ready } = turningsOf(problem, casting);
  for (const turning of turnings) turnOnce(problem, turning, casting);
  while (ready.length < count) {
    let next: Turning | null = null;
    for (const t of turnings) if (t.readyAt < NEVER && (!next || t.readyAt < next.readyAt)) next = t;
    if (!next) break;
    ready.push(next.readyAt);
    turnOnce(problem, next, casting);
  }
  ready.sort((a, b) => a - b);
  const dayOf = (minute: number) => problem.handover[problem.calendar.dayOf(minute) - problem.today] ?? NONE;
  return Int32Array.from(ready.filter((minute) => minute < problem.horizonEnd).slice(0, count), dayOf);
};
