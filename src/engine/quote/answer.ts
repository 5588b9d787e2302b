import type { InYard } from '../exact/in-yard.ts';
import type { Earliest } from './completes-under.ts';
import type { Asking, Present } from './present.ts';

/** When an order could be ready, in which yard and beside which plan. */
export interface Answer {
  asking: Asking;
  present: Present;
  /** Without a dispatch where the plan was found by looking through all ways. */
  earliest: Earliest;
  found?: InYard;
}
