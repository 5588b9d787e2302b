import type { Tx } from '../../../db/open.ts';
import { mouldById } from '../../../db/stores/mould-store.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { todayIn } from '../../engine/book/today-in.ts';
import { done, type Outcome, refuse } from '../core/context.ts';
import { atWords } from '../core/day-words.ts';

/** Refused at `at` where a mould was emptied only after an instant: nobody coated it by then, or set it up. */
export const fullUntil = async (tx: Tx, id: string, doneAt: string, yard: YardFile): Promise<Outcome<null>> => {
  const emptiedAt = (await mouldById(tx, id))?.emptiedAt;
  if (!emptiedAt || minuteOf(emptiedAt) <= minuteOf(doneAt)) return done(null);
  return refuse('at', `${id} was emptied only${atWords(emptiedAt, todayIn(yard))}. Nothing was changed.`);
};
