import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';

/** Pieces that are recorded as poured at a time still to come: a clock was wrong when they were. */
export const pouredToCome = ({ yard, inMould }: YardFile): YardFile['inMould'] => {
  const now = minuteOf(yard.now);
  return inMould.filter(({ filledAt }) => minuteOf(filledAt) > now);
};

const isToCome = ({ openedAt }: { openedAt?: string | undefined }, now: string): boolean =>
  openedAt !== undefined && minuteOf(openedAt) > minuteOf(now);

/**
 * A yard file as of an instant. What is recorded for a time after it counts as done just then, so that a clock that was put
 * right never locks the yard: a yard file holds no pour after its now.
 */
export const asOf = (file: YardFile, now: string): YardFile => {
  const yard = { ...file, yard: { ...file.yard, now } };
  const toCome = new Set(pouredToCome(yard));
  const opened = file.materials.some(({ lots = [] }) => lots.some((lot) => isToCome(lot, now)));
  if (toCome.size === 0 && !opened) return yard;
  const materials = file.materials.map((one) =>
    one.lots === undefined
      ? one
      : { ...one, lots: one.lots.map((lot) => (isToCome(lot, now) ? { ...lot, openedAt: now } : lot)) },
  );
  return {
    ...yard,
    materials,
    inMould: file.inMould.map((piece) => (toCome.has(piece) ? { ...piece, filledAt: now } : piece)),
  };
};
