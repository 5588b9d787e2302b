import { listText } from '../../shared/list-text.ts';
import { countText, plural } from '../../shared/plural.ts';
import type { OddsFacts, SpareFacts } from '../../src/usecases/orders/odds-facts.ts';
import { dayText } from '../parts/day-text.ts';

/** "9 in 10"; what happens hardly ever is not said to be never. */
const timesText = (share: number): string => {
  const tenths = Math.round(share * 10);
  if (share >= 0.975) return 'almost always';
  if (share < 0.05) return 'hardly ever';
  return tenths === 10 ? '19 in 20' : tenths === 5 ? '1 in 2' : tenths === 0 ? '1 in 20' : `${tenths} in 10`;
};

/** "8 in 10 by Sat 22 May, 19 in 20 by Sat 29 May": odds of one day are said once, the best of them. */
export const oddsText = ({ days }: Pick<OddsFacts, 'days'>, today: string): string => {
  const best = days.filter(({ on }, i) => on !== null && on !== days[i + 1]?.on);
  const said = best.map(({ times, of, on }) => `${times} in ${of} by ${dayText(on!, today)}`);
  return said.length > 0 ? `${listText(said)}.` : 'Less than 1 in 2 within the days planned ahead.';
};

/** "The date, Sat 8 May, is kept 7 in 10 times." */
export const dueOddsText = (due: NonNullable<OddsFacts['due']>, draws: number, today: string): string => {
  const often = timesText(due.by / draws);
  const isCount = /\d/.test(often);
  return `${dayText(due.on, today)}, its date, is kept ${often}${isCount ? ' times' : ''}.`;
};

/** "It depends most on pieces of 1200 no. 2 that are not good." */
export const dependsText = (cause: OddsFacts['dependsOn']): string => {
  if (!cause) return 'Nothing that goes wrong now and then makes a difference to it.';
  if (cause.kind === 'sessions') return 'It depends most on days of work that are lost.';
  if (cause.kind === 'pieces') return `It depends most on rejects of ${cause.what}.`;
  return `It depends most on deliveries that come late${cause.what ? ` from ${cause.what}` : ''}.`;
};

/** "Rests on 288 pieces, 105 days with work and 20 deliveries on record." and, where that is little, that guesses are counted on. */
export const restsOnText = ({ restsOn, isEnough }: Pick<OddsFacts, 'restsOn' | 'isEnough'>): string => {
  const { pieces, sessions, deliveries } = restsOn;
  if (pieces + sessions + deliveries === 0) return 'Rests on guesses: nothing is on record yet.';
  const counts = [
    countText(pieces, 'piece'),
    countText(sessions, 'day with work', 'days with work'),
    countText(deliveries, 'delivery', 'deliveries'),
  ];
  return `Rests on ${listText(counts)} on record${isEnough ? '.' : ', and on guesses: that is little yet.'}`;
};

/** "12 of Panel 900 are to be poured: none has to be poured again 5 in 10 times. Pour 13: 9 in 10." */
export const spareText = ({ name, count, allGood, poured, enoughGood }: SpareFacts): string =>
  `${count} of ${name} ${plural(count, 'is', 'are')} still to come out: all good ${timesText(allGood)}. With ${poured} poured, enough are good ${timesText(enoughGood)}.`;
