import { dismissNotice as putAway } from '../../../db/stores/change-store.ts';
import type { UseCaseContext } from '../core/context.ts';

/** The maker has read a notice. It is no part of the plan, so nothing is planned anew. */
export const dismissNotice = ({ database, now }: UseCaseContext, id: number): Promise<void> =>
  database.write((tx) => putAway(tx, id, now));
