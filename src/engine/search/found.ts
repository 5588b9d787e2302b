import type { DecoderState } from '../decoder/decoder-state.ts';
import type { Dispatch } from '../decoder/dispatch.ts';
import { type Evaluation, evaluate, isBetter } from './evaluation.ts';
import { type PresentPours, poursLeft } from './nearness.ts';

/** A dispatch that was tried, and what its plan is worth. */
export interface Found {
  dispatch: Dispatch;
  evaluation: Evaluation;
  /** Pours of the present plan that it leaves as they are; 0 where there is none. */
  unmoved: number;
}

/** What a dispatch came to whose plan was just decoded into `state`. */
export const foundIn = (state: DecoderState, dispatch: Dispatch, present?: PresentPours): Found => ({
  dispatch,
  evaluation: evaluate(state),
  unmoved: present ? poursLeft(state, present) : 0,
});

/** True for the better plan of two, or of equal ones for the one closer to the present plan. */
export const isPreferred = (a: Found, b: Found): boolean =>
  isBetter(a.evaluation, b.evaluation) || (!isBetter(b.evaluation, a.evaluation) && a.unmoved > b.unmoved);
