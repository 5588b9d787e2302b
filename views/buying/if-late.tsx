import type { FC } from 'hono/jsx';
import type { SlipFacts } from '../../src/usecases/buying/if-not-ordered.ts';
import { dayText } from '../parts/day-text.ts';

const MOST_NAMED = 3;

const slipText = ({ customer, order, from, to }: SlipFacts, today: string): string =>
  to === null
    ? `${customer ?? `order ${order}`} can't be made`
    : `${customer ?? `order ${order}`} slips from ${dayText(from, today)} to ${dayText(to, today)}`;

/** "Today, or School garden slips from Sat 8 May to Sat 15 May." Where nothing slips: "A day later moves no date." */
export const ifLateText = (slips: readonly SlipFacts[], orderBy: string, today: string): string => {
  if (slips.length === 0) return 'If it is ordered a day later, no date moves.';
  const by = orderBy <= today ? 'Today' : `By ${dayText(orderBy, today)}`;
  const named = slips.slice(0, MOST_NAMED).map((slip) => slipText(slip, today));
  const more = slips.length - named.length;
  return `${by}, or ${named.join('; ')}${more > 0 ? `; and ${more} more` : ''}.`;
};

interface IfLateProps {
  slips: readonly SlipFacts[] | null;
  material: string;
  orderBy: string;
  today: string;
}

/** What happens if a line is not ordered by its day: what is known of it, or the question to a thread, for which nobody waits. */
export const IfLate: FC<IfLateProps> = ({ slips, material, orderBy, today }) => {
  if (slips) return <p class={slips.length > 0 ? '' : 'quiet'}>{ifLateText(slips, orderBy, today)}</p>;
  const asked = new URLSearchParams({ material, by: orderBy });
  return (
    <p class="no-print" data-hx-get={`/buying/if-late?${asked}`} data-hx-trigger="load" data-hx-swap="outerHTML" />
  );
};
