import type { DecoderState } from '../decoder/decoder-state.ts';
import { NONE } from '../decoder/problem.ts';
import type { Pressing } from './pressing.ts';

const DAY = 1440;
/** Changing moulds over for so many minutes is as bad as an urgent piece a day later. */
const CHANGE_MINUTES = 60;
/** So much mix thrown away is. */
const WASTED_KG = 30;
/** Pieces may be there so long before their order is complete, minutes. */
export const A_MONTH = 30 * DAY;
/** So many days longer that a piece lies about are. */
const DAYS_LYING = 10;

/** Pours, by their place, whose moulds are changed over for them. */
export const changedOver = ({ placed }: Pick<DecoderState, 'placed'>, { setFor }: Pressing): number[] => {
  const set = setFor.slice();
  const changed: number[] = [];
  for (let p = 0; p < placed.pours; p++) {
    const [mould, casting] = [placed.pourMould[p]!, placed.pourCasting[p]!];
    if (set[mould] !== casting) changed.push(p);
    set[mould] = casting;
  }
  return changed;
};

const wastedKgOf = ({ problem, placed }: DecoderState): number => {
  let kg = 0;
  for (let b = 0; b < placed.batches; b++)
    kg += placed.batchBags[b]! * problem.mixes[placed.batchMix[b]!]!.yieldKgPerBag - placed.batchKg[b]!;
  return kg;
};

/**
 * What a foreman minds in a plan that a decode left in `state`, where another has the same score; less is better. Days until
 * moulds are filled, each counting by how urgent its order is and how scarce its moulds are: so what is in hand is used, a slow
 * mix goes out early in the evening and the mould with most turns to make begins. To them come moulds changed over, mix thrown
 * away, and pieces made months before they are wanted.
 *
 * Example: one change-over of 6 minutes more is 0.1. A piece due tomorrow (0.5 a day) and one due in nine days (0.1), both
 * of the casting with most turns to make, an evening apart: 0.8 less with the urgent one first.
 */
export const untidinessOf = (state: DecoderState, pressing: Pressing): number => {
  const { problem, placed, orders } = state;
  const { urgency, scarcity } = pressing;
  let days = wastedKgOf(state) / WASTED_KG;
  for (const p of changedOver(state, pressing))
    days += problem.moulds[placed.pourMould[p]!]!.change[placed.pourCasting[p]!]! / CHANGE_MINUTES;
  for (let p = 0; p < placed.pours; p++) {
    const order = placed.pourOrder[p]!;
    if (order === NONE) continue;
    const toFill = (placed.pourFillEnd[p]! - problem.now) / DAY;
    days += urgency[order]! * scarcity[placed.pourCasting[p]!]! * toFill;
    const lying = orders.completesAt[order]! - placed.pourReadyAt[p]! - A_MONTH;
    if (lying > 0) days += lying / DAY / DAYS_LYING;
  }
  return days;
};
