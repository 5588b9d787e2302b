import { listText } from '../../shared/list-text.ts';
import type { COST_GROUPS, MissingFacts } from '../../src/usecases/money/cost-facts.ts';
import { countWord } from '../parts/quantity-text.ts';

/** The price list. */
export const PRICES = '/prices';
export const PRICES_TABLE = `${PRICES}.csv`;
export const SESSION_COSTS = `${PRICES}/sessions`;

/** What the parts of a cost are called. */
export const GROUP_WORDS: Readonly<Record<(typeof COST_GROUPS)[number], string>> = {
  materials: 'Materials',
  'thrown away': 'Thrown away',
  work: 'Work',
  moulds: 'Moulds',
  sessions: 'Sessions',
  scrap: 'Scrap',
};

const OTHER_WORDS: Readonly<Record<MissingFacts['others'][number], string>> = {
  wage: 'work',
  session: 'what a session costs whatever is made',
  rejects: 'scrap',
};

const MOST_NAMES = 4;

/** What costs leave out, because nobody said: "Fast-setting mortar, work and 3 moulds". '' where nothing is left out. */
export const missingText = ({ prices, moulds, others }: MissingFacts): string => {
  const shown = prices.length > MOST_NAMES ? prices.slice(0, MOST_NAMES - 1) : prices;
  const rest = prices.length - shown.length;
  return listText([
    ...shown,
    ...(rest > 0 ? [`${rest} more materials`] : []),
    ...others.map((one) => OTHER_WORDS[one]),
    ...(moulds > 0 ? [moulds === 1 ? 'one mould' : `${countWord(moulds).toLowerCase()} moulds`] : []),
  ]);
};

/** "35 %", "-4 %" */
export const percentText = (share: number): string => `${Math.round(share * 100)} %`;
