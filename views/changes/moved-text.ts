import type { PromiseMove } from '../../src/usecases/plan/promises-moved.ts';
import { dayText } from '../parts/day-text.ts';
import { moveText, standingText } from '../parts/moves.tsx';

const dateText = (date: string | null, today: string): string => (date === null ? 'no date' : dayText(date, today));

/** "School garden: Sat 8 May to Sat 15 May, 7 days later; 7 days after the date given." */
export const movedText = (move: PromiseMove, today: string): string => {
  const name = move.customer ?? `Order ${move.order}`;
  const reason = move.reason ? ` ${move.reason.replace(/\.?$/, '.')}` : '';
  const days = `${dateText(move.from, today)} to ${dateText(move.to, today)}, ${moveText(move.from, move.to)}`;
  return `${name}: ${days}${standingText(move)}.${reason}`;
};
