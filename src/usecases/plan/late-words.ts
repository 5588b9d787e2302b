import { countText } from '../../../shared/plural.ts';
import { dayYearWords, onDayWords } from '../core/day-words.ts';
import type { LateStep } from './late-steps.ts';
import type { PlannedPack } from './late-work.ts';

/** A packing with others of its order to come after it. */
const isPart = ({ packs, packEnd }: PlannedPack): boolean => packs !== undefined && packs.at(-1)?.packEnd !== packEnd;

/** How many orders are packed with the steps, and of how many others some is. */
const packsOf = (steps: readonly LateStep[]) => {
  const orders = steps.flatMap((step) => (step.kind === 'pack' ? [step.order] : []));
  const packed = new Set(orders.filter((order) => !isPart(order)).map(({ id }) => id));
  const inPart = new Set(orders.map(({ id }) => id).filter((id) => !packed.has(id)));
  return { packs: packed.size, parts: inPart.size };
};

/** How many of each there are among the steps. */
const countsOf = (steps: readonly LateStep[]) => {
  const of = (kind: LateStep['kind']): number => steps.filter((step) => step.kind === kind).length;
  const pours = steps.reduce((sum, step) => sum + (step.kind === 'batch' ? step.mix.pours.length : 0), 0);
  return { pours, strips: of('strip'), coats: of('coat'), preps: of('prep'), ...packsOf(steps) };
};

/** "4 pieces poured, 3 stripped, 1 order packed": what late work comes to, each thing after a word where one is wanted. */
export const lateWords = (steps: readonly LateStep[], not = ''): string => {
  const { pours, strips, coats, preps, packs, parts } = countsOf(steps);
  return [
    ...(pours > 0 ? [`${countText(pours, 'piece')} ${not}poured`] : []),
    ...(strips > 0 ? [`${pours > 0 ? strips : countText(strips, 'piece')} ${not}stripped`] : []),
    ...(coats > 0 ? [`${countText(coats, 'mould')} ${not}coated`] : []),
    ...(preps > 0 ? [`${countText(preps, 'mould')} ${not}set up`] : []),
    ...(packs > 0 ? [`${countText(packs, 'order')} ${not}packed`] : []),
    ...(parts > 0 ? [`${countText(parts, 'order')} ${not}packed in part`] : []),
  ].join(', ');
};

/** " on Sat 10 Apr", " from Sat 10 Apr to Mon 12 Apr": the days that steps were planned for; nothing for today alone. */
export const lateDaysWords = (steps: readonly LateStep[], today: string): string => {
  const days = steps.map(({ at }) => at.slice(0, 10)).sort();
  const [first, last] = [days[0] ?? today, days.at(-1) ?? today];
  if (first !== last) return ` from ${dayYearWords(first, today)} to ${dayYearWords(last, today)}`;
  return first === today ? '' : ` ${onDayWords(first, today)}`;
};
