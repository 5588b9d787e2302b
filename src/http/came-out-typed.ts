import { CAME_OUT, type CameOut } from '../../shared/piece-to-mend.ts';
import type { Typed } from './form.ts';

/** What a form says of a piece that comes out of its mould; null where it does not say. */
export const cameOutTyped = ({ cameOut }: Typed): CameOut | null => CAME_OUT.find((one) => one === cameOut) ?? null;
