import type { Casting } from '../../../shared/casting.ts';
import type { Mix } from '../../../shared/mix.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { type UsualSession, usualSession } from './usual-session.ts';

/** What came of it: the yard's own times, slower or quicker, and what a usual session makes by them. */
export interface FittedSession {
  yard: YardFile;
  before: UsualSession;
  after: UsualSession;
  /** What every time was multiplied by, before it was rounded. */
  factor: number;
  /** Why no more can be made, where more was asked for than any times give: the moulds there are, or the hours. */
  heldBy: 'moulds' | 'hours' | null;
}

/** Each step of the walk changes the times by a twelfth, about: 2^(1/8). */
const STEP = 2 ** 0.125;
const SLOWEST = 64;
/** Halvings between two steps; times are whole minutes, so that the last ones change nothing. */
const HALVINGS = 6;

const scaled = (minutes: number, factor: number, most = Number.POSITIVE_INFINITY): number =>
  minutes === 0 ? 0 : Math.max(1, Math.min(most, Math.round(minutes * factor)));

/** The longest fill by which as many pieces of a casting come of one batch, before it stiffens, as do now. */
const longestFill = ({ kg, fillMinutes }: Casting, { maxBags, yieldKgPerBag, workingMinutes }: Mix): number => {
  const byMass = kg > 0 ? Math.floor((maxBags * yieldKgPerBag) / kg + 1e-9) : Number.POSITIVE_INFINITY;
  const pieces = Math.max(1, Math.min(byMass, Math.floor(workingMinutes / fillMinutes)));
  return Math.floor(workingMinutes / pieces);
};

/**
 * The yard with the times of handling (set up, clean, fill, strip, mix) multiplied: whole minutes, never below 1 where
 * there were any, and no fill so long that a batch would stiffen before as many pieces are full as now. What cures, washes
 * and waits stays.
 *
 * Example: with 15 minutes of working time, `withTimes(yard, 1.5)` makes a fill of 8 minutes 12, and leaves one of 7 at 7
 * where two come of a bag.
 */
export const withTimes = (yard: YardFile, factor: number): YardFile => {
  const mixes = new Map(yard.mixes.map((mix) => [mix.id, mix]));
  return {
    ...yard,
    mixes: yard.mixes.map((mix) => ({ ...mix, mixMinutes: scaled(mix.mixMinutes, factor) })),
    castings: yard.castings.map((casting) => ({
      ...casting,
      prepMinutes: scaled(casting.prepMinutes, factor),
      cleanMinutes: scaled(casting.cleanMinutes, factor),
      stripMinutes: scaled(casting.stripMinutes, factor),
      fillMinutes: scaled(casting.fillMinutes, factor, longestFill(casting, mixes.get(casting.mix)!)),
    })),
  };
};

/** The times that `withTimes` changes, in one list. */
const timesOf = ({ mixes, castings }: YardFile): number[] => [
  ...mixes.map(({ mixMinutes }) => mixMinutes),
  ...castings.flatMap((one) => [one.prepMinutes, one.cleanMinutes, one.stripMinutes, one.fillMinutes]),
];

interface Tried {
  factor: number;
  yard: YardFile;
  session: UsualSession;
}

/** Tries a factor; the same times are planned once. */
const trialOf = (yard: YardFile) => {
  const known = new Map<string, UsualSession>();
  return (factor: number): Tried => {
    const other = withTimes(yard, factor);
    const key = timesOf(other).join(' ');
    const session = known.get(key) ?? usualSession(other)!;
    known.set(key, session);
    return { factor, yard: other, session };
  };
};

/** Of two, the one nearer to what is wanted; of two as near, the one that changes the times less. */
const nearer =
  (wanted: number) =>
  (a: Tried, b: Tried): Tried => {
    const off = ({ session }: Tried) => Math.abs(session.pieces - wanted);
    const change = ({ factor }: Tried) => Math.abs(Math.log(factor));
    return off(a) < off(b) || (off(a) === off(b) && change(a) <= change(b)) ? a : b;
  };

/** From 1 step by step, slower or quicker, until a session makes no more (or no less) than wanted. */
const walk = (first: Tried, wanted: number, trial: (factor: number) => Tried): Tried[] => {
  const slower = first.session.pieces > wanted;
  const quickest = 0.5 / Math.max(1, ...timesOf(first.yard));
  const passed = ({ session }: Tried) => (slower ? session.pieces <= wanted : session.pieces >= wanted);
  const tried = [first];
  for (let last = first; !passed(last); ) {
    const factor = slower ? last.factor * STEP : last.factor / STEP;
    if (factor > SLOWEST || factor < quickest) break;
    last = trial(factor);
    tried.push(last);
  }
  return tried;
};

/** Halves the last step of a walk towards what is wanted. */
const halve = (tried: readonly Tried[], wanted: number, trial: (factor: number) => Tried): Tried[] => {
  let [near, far] = [tried.at(-2), tried.at(-1)];
  const found: Tried[] = [];
  for (let halving = 0; near && far && halving < HALVINGS; halving++) {
    const middle = trial(Math.sqrt(near.factor * far.factor));
    found.push(middle);
    const onNearSide = Math.sign(middle.session.pieces - wanted) === Math.sign(near.session.pieces - wanted);
    if (onNearSide) near = middle;
    else far = middle;
  }
  return found;
};

/** Twice the moulds hardly help where the hours are what holds it: by less than this. */
const HARDLY = 1.1;

/** Whether twice the moulds would make more. */
const heldBy = ({ yard, session }: Tried): 'moulds' | 'hours' => {
  const more = { ...yard, moulds: [...yard.moulds, ...yard.moulds.map((one) => ({ ...one, id: `${one.id}, again` }))] };
  return (usualSession(more)?.pieces ?? 0) > HARDLY * session.pieces ? 'moulds' : 'hours';
};

/**
 * The yard with its times of handling made slower or quicker by one common factor, so that a usual session makes `pieces`
 * or as near to it as the least such change gives: the walk away from the yard's own times ends where a session first makes
 * as many (or as few). Slower work can by luck make more than quicker work, so that a greater change may come nearer; it
 * would only make the times stranger. `pieces` is 1 or more. Null where no session makes anything to begin with. For
 * planning only: it fits what is guessed to what a maker saw.
 *
 * Example: a Saturday made 8, the figures say 11: every time is about a third longer afterwards.
 */
export const fitSession = (yard: YardFile, pieces: number): FittedSession | null => {
  const before = usualSession(yard);
  if (!before || before.pieces === 0) return null;
  const trial = trialOf(yard);
  const first: Tried = { factor: 1, yard, session: before };
  const walked = walk(first, pieces, trial);
  const best = [...walked, ...halve(walked, pieces, trial)].reduce(nearer(pieces));
  const held = best.session.pieces < pieces && walked.every(({ session }) => session.pieces < pieces);
  return {
    ...{ yard: best.yard, before, after: best.session, factor: best.factor },
    heldBy: held ? heldBy(best) : null,
  };
};
