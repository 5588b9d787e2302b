import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';

/** Pieces that are recorded as poured at a time still to come: a clock was wrong when they were. */
export const pouredToCome = ({ yard, inMould }: YardFile): YardFile['inMould'] => {
  const now = minuteOf(yard.now);
  return inMould.filter(({ filledAt }) => minuteOf(filledAt) > now);
};

/**
 * A yard file as of an instant. What is recorded for a time after it counts as done just then, so that a clock that was put
 * right never locks the yard: a yard file holds no pour after its now.
 */
export const asOf = (file: YardFile, now: string): YardFile => {
  const yard = { ...file, yard: { ...file.yard, now } };
  const toCome = new Set(pouredToCome(yard));
  if (toCome.size === 0) return yard;
  return { ...yard, inMould: file.inMould.map((piece) => (toCome.has(piece) ? { ...piece, filledAt: now } : piece)) };
};
