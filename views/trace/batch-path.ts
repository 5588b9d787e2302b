import type { BatchKey } from '../../shared/batch-record.ts';

/** The page of a batch. */
export const batchPath = ({ minute, mould }: BatchKey): string => `/batch/${minute}/${encodeURIComponent(mould)}`;
