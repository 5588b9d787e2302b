import { mark } from '../../engine/book/mark.ts';
import type { UseCaseContext } from '../core/context.ts';
import { previewingApart } from '../plan/changing.ts';
import { writeBooked } from '../plan/recording-work.ts';
import { type Effect, withPromises } from '../plan/save-edit.ts';

const NOTHING_SAID = { note: '', repairedOn: null, cameOut: null };

/** Whose days a mould that is out of use holds up. */
export interface Blocked {
  /** How each day by plan would move were it mended now. */
  moved: Effect['moved'];
}

/**
 * What a mould that is out of use blocks: the plan with it mended now, beside today's plan. Nothing of it happens, and nobody
 * who records anything waits for it. Null for a mould that is in use, or not there, and where it took too long.
 */
export const whatItBlocks = async (context: UseCaseContext, id: string): Promise<Blocked | null> => {
  const mended = await previewingApart(context, { kind: 'mould mended' }, (tx, yard) =>
    writeBooked(tx, mark(yard, id, 'mended', NOTHING_SAID)),
  );
  if (!mended?.ok) return null;
  return { moved: await context.database.read((tx) => withPromises(tx, mended.value.moved)) };
};
