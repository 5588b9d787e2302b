import { revision } from '../../../db/stores/yard-store.ts';
import type { UseCaseContext } from '../core/context.ts';

/** How often anything was changed until now: another number, and a page is no longer as it was drawn. */
export const revisionNow = ({ database }: UseCaseContext): Promise<number> => database.read(revision);
