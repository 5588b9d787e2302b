import type { Placing } from '../decoder/decoder-state.ts';
import type { Dispatch } from '../decoder/dispatch.ts';
import { type Evaluation, evaluate, isBetter } from './evaluation.ts';
import { type PresentPours, poursLeft } from './nearness.ts';

/** A dispatch that was tried, and what its plan is worth. */
export interface Found {
  dispatch: Dispatch;
  evaluation: Evaluation;
  /** Pours of the present plan that it leaves as they are; 0 where there is none. */
  kept: number;
}

/** What a dispatch came to whose plan was just decoded into `at`. */
export const foundIn = (at: Placing, dispatch: Dispatch, present?: PresentPours): Found => ({
  dispatch,
  evaluation: evaluate(at),
  kept: present ? poursLeft(at, present) : 0,
});

/** True for the better plan of two, or of equal ones for the one closer to the present plan. */
export const isPreferred = (a: Found, b: Found): boolean =>
  isBetter(a.evaluation, b.evaluation) || (!isBetter(b.evaluation, a.evaluation) && a.kept > b.kept);
