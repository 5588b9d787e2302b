import { countText } from '../../shared/plural.ts';
import { ENOUGH_RECORD } from '../../shared/promise-odds.ts';
import type { ReadyFacts } from '../../src/usecases/first/ask-when.ts';

/** "200 pieces and 100 days with work": what has to be on record for dates to be promised by it. */
export const enoughText = (): string => `${ENOUGH_RECORD.pieces} pieces and ${ENOUGH_RECORD.sessions} days with work`;

/** Why the day to promise goes by time in hand and not by its odds. */
export const byOddsText = ({ record }: Pick<ReadyFacts, 'record'>): string => {
  if (record.isEnough)
    return 'No day within the days planned ahead is kept as often as the yard wants, so it goes by time in hand.';
  const seen = `${countText(record.pieces, 'piece')} and ${countText(record.sessions, 'day')} so far`;
  return `A date to promise goes by its odds once ${enoughText()} are on record (${seen}), and by time in hand until then.`;
};
