import { type Fault, pathText } from './fault.ts';
import type { Path, Raw } from './firm-references.ts';
import { isInstant, minuteOf } from './time.ts';

const EPSILON = 1e-9;

const isLot = (x: unknown): x is Raw => typeof x === 'object' && x !== null && !Array.isArray(x);
const amountOf = (x: unknown): number => (typeof x === 'number' && Number.isFinite(x) ? x : 0);
const isAfter = (x: unknown, now: unknown): boolean =>
  typeof x === 'string' && typeof now === 'string' && isInstant(x) && isInstant(now) && minuteOf(x) > minuteOf(now);

/**
 * The faults of a material's lots that no single field shows: of what is cut up, of more than is on hand, opened
 * after now. Works on the raw input; anything that is no lot is a fault of shape, reported elsewhere.
 *
 * Example: lots of 3 and 2 of a material of which 4 are on hand: one fault, at its `lots`.
 */
export const lotFaults = (material: Raw, path: Path, now: unknown): Fault[] => {
  if (!Array.isArray(material.lots)) return [];
  const lots = material.lots.map((lot, i) => ({ lot, at: [...path, 'lots', i] })).filter(({ lot }) => isLot(lot));
  const sum = lots.reduce((total, { lot }) => total + amountOf(lot.quantity), 0);
  const fault = (at: Path, message: string): Fault => ({ path: pathText(at), message });
  return [
    ...(lots.length > 0 && material.stickMm !== undefined
      ? [fault([...path, 'lots'], `"${material.id}" is cut from sticks, which have no date`)]
      : []),
    ...(lots.length > 0 && material.inSheets === true
      ? [fault([...path, 'lots'], `"${material.id}" is cut from sheets, which have no date`)]
      : []),
    ...(typeof material.onHand === 'number' && sum > material.onHand + EPSILON
      ? [fault([...path, 'lots'], `come to ${sum}, and ${material.onHand} of "${material.id}" are on hand`)]
      : []),
    ...lots.flatMap(({ lot, at }) => (isAfter(lot.openedAt, now) ? [fault([...at, 'openedAt'], 'is after now')] : [])),
  ];
};
