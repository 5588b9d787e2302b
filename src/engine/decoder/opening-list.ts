import { NEVER, NONE, type Problem } from './problem.ts';

/** Moulds that could take a pour in this shift: one entry for each mould and casting, with the minute it could be ready. */
export interface Openings {
  count: number;
  mould: Int32Array;
  casting: Int32Array;
  /** Earliest minute at which the mould could be set up, people allowing. */
  readyAt: Int32Array;
  /** Minutes of stripping and setting up that it takes before that. */
  work: Int32Array;
  /** By casting its first and its last entry, and by entry the next of its casting; NONE where there is none. */
  first: Int32Array;
  last: Int32Array;
  next: Int32Array;
  /** By casting: earliest of its entries, NEVER without one. */
  soonest: Int32Array;
  /** By casting: the latest start of a batch with a piece of it in this shift; before the shift for one that is not wanted. */
  latest: Float64Array;
  /** Castings that moulds make, one mould after another, and by mould where its own begin; one more ends the last. */
  readonly makes: Int32Array;
  readonly makesFrom: Int32Array;
  /** Moulds that may still have entries in this shift, so many of them: those that come out too late for it have none. */
  moulds: Int32Array;
  mouldCount: number;
}

/** All moulds may have entries again: a shift begins. */
export const beginOpenings = (openings: Openings): void => {
  const { moulds } = openings;
  for (let k = 0; k < moulds.length; k++) moulds[k] = k;
  openings.mouldCount = moulds.length;
};

/** What moulds make as one flat list, gone through once a batch. */
const makesOf = ({ moulds }: Problem): Pick<Openings, 'makes' | 'makesFrom'> => {
  const makesFrom = new Int32Array(moulds.length + 1);
  moulds.forEach(({ makes }, k) => {
    makesFrom[k + 1] = makesFrom[k]! + makes.length;
  });
  const makes = Int32Array.from(moulds.flatMap((mould) => mould.makes.map(({ casting }) => casting)));
  return { makes, makesFrom };
};

/** Room for all openings that a problem can have at once, none listed yet. Made once and used again in every shift. */
export const openingsOf = (problem: Problem): Openings => {
  const flat = makesOf(problem);
  const most = flat.makes.length;
  const ints = (n: number) => new Int32Array(n);
  const castings = problem.castings.length;
  const openings: Openings = {
    count: 0,
    mould: ints(most),
    casting: ints(most),
    readyAt: ints(most),
    work: ints(most),
    first: ints(castings),
    last: ints(castings),
    next: ints(most),
    soonest: ints(castings),
    latest: new Float64Array(castings),
    ...flat,
    moulds: ints(problem.moulds.length),
    mouldCount: 0,
  };
  beginOpenings(openings);
  return openings;
};

/** Forgets the entries. */
export const clearOpenings = (openings: Openings): void => {
  openings.count = 0;
  openings.soonest.fill(NEVER);
  openings.first.fill(NONE);
};

/** Another entry, after all others. */
export const addEntry = (to: Openings, mould: number, casting: number, readyAt: number, work: number): void => {
  const i = to.count++;
  to.mould[i] = mould;
  to.casting[i] = casting;
  to.readyAt[i] = readyAt;
  to.work[i] = work;
  to.next[i] = NONE;
  if (to.first[casting] === NONE) to.first[casting] = i;
  else to.next[to.last[casting]!] = i;
  to.last[casting] = i;
  if (readyAt < to.soonest[casting]!) to.soonest[casting] = readyAt;
};
