import type { KeptFacts } from '../../src/usecases/pieces/kept-facts.ts';
import type { PiecesOfKind } from '../../src/usecases/pieces/show-pieces.ts';
import { dayText } from '../parts/day-text.ts';

/** "2 of Planter 1200: both there", "2 of Planter 1200: 1 there, the rest by plan Sat 17 Apr". */
export const keptText = ({ name, count, there, readyOn }: KeptFacts, today: string): string => {
  const of = `${count} of ${name}`;
  if (there === count) return `${of}: all there.`;
  const now = there === 0 ? 'none there yet' : `${there} there`;
  if (readyOn === null) return `${of}: ${now}. By today's plan orders leave no time or material for the rest.`;
  return `${of}: ${now}, ${there === 0 ? 'all' : 'the rest'} by today's plan ${dayText(readyOn, today)}.`;
};

/** "Out of its mould since Sat 3 Apr.", "Out of their moulds from Sat 3 Apr to Sat 10 Apr." */
export const sinceText = ({ total, since }: PiecesOfKind, today: string): string | null => {
  if (since === null) return null;
  const [first, last] = [since.first, since.last].map((instant) => dayText(instant.slice(0, 10), today));
  if (total === 1) return `Out of its mould since ${first}.`;
  return first === last ? `Out of their moulds since ${first}.` : `Out of their moulds from ${first} to ${last}.`;
};
