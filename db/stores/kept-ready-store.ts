import { eq } from 'drizzle-orm';
import { keptCastings, keptKits } from '../tables/kept-ready.ts';
import type { Tx } from '../transaction.ts';

/** So many of a kit, or of a piece, are to stand ready: exactly one of the two is named. */
export type KeptLine = { kit: string; count: number } | { casting: string; count: number };

/** What is to stand ready in the yard: kits first, then single pieces. */
export const keptLines = async (tx: Tx): Promise<KeptLine[]> => [
  ...(await tx.select().from(keptKits).orderBy(keptKits.kit)),
  ...(await tx.select().from(keptCastings).orderBy(keptCastings.casting)),
];

/** Sets how many of a kit or a piece are to stand ready; 0: none. Throws where there is no such thing. */
export const setKept = async (tx: Tx, line: KeptLine): Promise<void> => {
  if ('kit' in line) {
    await tx.delete(keptKits).where(eq(keptKits.kit, line.kit));
    if (line.count > 0) await tx.insert(keptKits).values(line);
    return;
  }
  await tx.delete(keptCastings).where(eq(keptCastings.casting, line.casting));
  if (line.count > 0) await tx.insert(keptCastings).values(line);
};
