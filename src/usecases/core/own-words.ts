import { ownWordsOfYard } from '../../../db/stores/own-words-store.ts';
import { englishOfYard } from '../../../db/stores/units-store.ts';
import { revision } from '../../../db/stores/yard-store.ts';
import type { English } from '../../../shared/english.ts';
import type { UseCaseContext } from './context.ts';

/** How the yard is written, and the words in it that are its own. */
export interface Written {
  english: English;
  /** Empty where nothing would be said otherwise anyhow. */
  own: readonly string[];
}

const kept = new WeakMap<object, { revision: number; own: readonly string[] }>();

/** The English the yard is written in, and all that it typed: that stays as it is in any. Asked again where the yard changed. */
export const writtenIn = ({ database }: UseCaseContext): Promise<Written> =>
  database.read(async (tx) => {
    const english = await englishOfYard(tx);
    if (english === 'British') return { english, own: [] };
    const now = await revision(tx);
    const before = kept.get(database);
    if (before?.revision === now) return { english, own: before.own };
    const own = await ownWordsOfYard(tx);
    kept.set(database, { revision: now, own });
    return { english, own };
  });
