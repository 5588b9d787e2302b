import { NEVER, NONE, type Problem } from '../decoder/problem.ts';
import { Hours } from './hours.ts';
import { type Dealt, dealsOf } from './pieces.ts';
import { soonest } from './reach.ts';
import { Seen } from './seen.ts';
import { type Ground, stepsFrom } from './steps.ts';
import { type Work, workBegins } from './work.ts';

/**
 * What is looked for: the least, Infinity for what may not be. By order: when it is complete. May only grow with these
 * minutes.
 */
export type Worth = (completesAt: readonly number[]) => number;

/** A way to do all of the work, and what it is worth. */
export interface Way extends Dealt {
  worth: number;
  work: Work;
}

/** What a search came to: the best way that is worth less than asked for, null where it found none; and whether that is all. */
export interface Searched {
  best: Way | null;
  /** No way at all is worth less. */
  isProven: boolean;
  steps: number;
}

class Search {
  private readonly ground: Ground;
  private readonly seen: Seen;
  best: Way | null = null;
  steps = 0;

  constructor(
    problem: Problem,
    orders: readonly number[],
    private readonly worth: Worth,
    private below: number,
    private readonly mostSteps: number,
  ) {
    this.ground = { problem, hours: new Hours(problem), orders };
    this.seen = new Seen(problem);
  }

  /** What it can come to at the least; known to be too much after some of the orders already, the first ones first. */
  private least(work: Work): number {
    const { problem, orders } = this.ground;
    const completesAt = problem.orders.map(() => problem.now);
    let least = this.worth(completesAt);
    for (const o of orders) {
      completesAt[o] = soonest(this.ground, work, o);
      if (completesAt[o]! >= NEVER) return Number.POSITIVE_INFINITY;
      least = this.worth(completesAt);
      if (least >= this.below) break;
    }
    return least;
  }

  /** Deals what is there in every way, if every order that is packed is packed. */
  private deal(work: Work): void {
    const { problem, orders } = this.ground;
    const isPacked = orders.every((o) => problem.orders[o]!.packMinutes === 0 || work.packedAt[o] !== NONE);
    if (!isPacked) return;
    for (const dealt of dealsOf(problem, orders, { completesAt: work.packedAt, pieces: work.pieces })) {
      const worth = this.worth(dealt.completesAt);
      if (worth >= this.below) continue;
      this.below = worth;
      this.best = { ...dealt, worth, work };
    }
  }

  /** All that can be done from there on; false where it took too many steps. */
  private goOn(work: Work): boolean {
    if (++this.steps > this.mostSteps) return false;
    this.deal(work);
    const steps = [...stepsFrom(this.ground, work)].sort((a, b) => a.at - b.at);
    for (const next of steps)
      if (next.at < NEVER && this.least(next) < this.below && this.seen.isNew(next) && !this.goOn(next)) return false;
    return true;
  }

  run(): boolean {
    const work = workBegins(this.ground.problem, this.ground.orders);
    return this.least(work) >= this.below || this.goOn(work);
  }
}

/**
 * The best of everything that one person could do in a small yard so that these orders are made: all tasks in every order, each
 * at the first minute at which it may begin, less what is no better than something seen before and what cannot come to less
 * than `below` any more. Counted: it gives up after so many steps.
 */
export const searchAll = (
  problem: Problem,
  orders: readonly number[],
  worth: Worth,
  below: number,
  mostSteps: number,
): Searched => {
  const search = new Search(problem, orders, worth, below, mostSteps);
  const isProven = search.run();
  return { best: search.best, isProven, steps: search.steps };
};
