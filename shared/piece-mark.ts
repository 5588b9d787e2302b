import { z } from 'zod';
import { id } from './number.ts';
import { instant, minuteOf } from './time.ts';

/** What is scratched into a piece, and tells it from all others: its mould, as it was called then, and when that was full. */
export const pieceMark = z.strictObject({ mould: id, filledAt: instant });
/** A mark once read. The same instant may be written with another offset: compare by `markKey`. */
export type PieceMark = z.infer<typeof pieceMark>;

/**
 * One text for one piece, however its instant is written.
 *
 * Example: `markKey({ mould: '900 no. 1', filledAt: '2027-05-08T09:05:00Z' })` is "30162785 900 no. 1".
 */
export const markKey = ({ mould, filledAt }: PieceMark): string => `${minuteOf(filledAt)} ${mould}`;
