import { listText } from '../../shared/list-text.ts';
import { countText, plural } from '../../shared/plural.ts';
import { oddsWords } from '../../shared/promise-odds.ts';
import type { QuestionOdds } from '../../src/usecases/first/odds-of-question.ts';
import type { DayKept, OddsFacts, SpareFacts } from '../../src/usecases/orders/odds-facts.ts';
import type { SparePlanned } from '../../src/usecases/plan/spares-of-plan.ts';
import { withInHandText } from '../first/ready-answer.tsx';
import { dayText } from '../parts/day-text.ts';

/** "9 in 10", and never more often than it is; what happens hardly ever is not said to be never. */
const timesText = (share: number): string => {
  const tenths = Math.floor(share * 10 + 1e-9);
  if (share >= 0.975) return 'almost always';
  if (share < 0.05) return 'hardly ever';
  if (share >= 0.95) return '19 in 20';
  return tenths === 5 ? '1 in 2' : tenths === 0 ? '1 in 20' : `${tenths} in 10`;
};

/** "kept 9 in 10 times", "kept almost always". */
const keptText = (share: number): string => {
  const often = timesText(share);
  return `kept ${often}${/\d/.test(often) ? ' times' : ''}`;
};

/** Of a list nothing is said to be nearly certain. */
const MOST_IN_LIST = 0.95;

/** "7 in 10 by Sat 22 May and 19 in 20 by Sat 29 May": days with the odds that they have. */
const daysText = (days: OddsFacts['days'], draws: number, today: string): string =>
  listText(days.map(({ on, by }) => `${timesText(Math.min(MOST_IN_LIST, by / draws))} by ${dayText(on, today)}`));

/** The same in a sentence; where no day is kept so often, that. */
export const oddsText = ({ days, draws }: Pick<OddsFacts, 'days' | 'draws'>, today: string): string =>
  days.length > 0 ? `${daysText(days, draws, today)}.` : 'Less than 1 in 2 within the days planned ahead.';

/** "Sat 8 May, its date, is kept 7 in 10 times." */
export const dueOddsText = (due: DayKept, draws: number, today: string): string =>
  `${dayText(due.on, today)}, its date, is ${keptText(due.by / draws)}.`;

/**
 * "Sat 8 May, offered with one session in hand, is kept 7 in 10 times.": the day that the question has, in its words. One that goes
 * by its odds is said to be what it was chosen as.
 */
const offeredText = (offered: NonNullable<QuestionOdds['offered']>, draws: number, today: string): string => {
  const { on, by, promiseOdds } = offered;
  const day = dayText(on, today);
  if (promiseOdds !== null)
    return `${day}, the day offered, is the first kept ${oddsWords(promiseOdds)} times or more.`;
  const inHand = withInHandText(offered);
  const how = inHand ? `offered ${inHand.toLowerCase()}` : 'the day offered';
  return `${day}, ${how}, is ${keptText(by / draws)}.`;
};

/** The day that is offered, and how sure it is; where none is, days with their odds. */
export const howSureText = (odds: OddsFacts, offered: QuestionOdds['offered'], today: string): string =>
  offered ? offeredText(offered, odds.draws, today) : oddsText(odds, today);

/** "19 in 20 by Sat 15 May.": the other days there are odds of, or what is to be said where there is none; null where nothing is. */
export const othersText = (
  { days, draws }: Pick<OddsFacts, 'days' | 'draws'>,
  offered: string,
  today: string,
): string | null => {
  const others = days.filter(({ on }) => on !== offered);
  if (days.length === 0) return oddsText({ days, draws }, today);
  return others.length === 0 ? null : `${daysText(others, draws, today)}.`;
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

/** When one to spare comes out of its mould; nothing where none is planned. */
const plannedText = (planned: SpareFacts['planned'], today: string): string => {
  if (planned === null) return '';
  return planned === 'there'
    ? ' One to spare stands in the yard.'
    : ` One to spare comes out ${dayText(planned, today)}.`;
};

/**
 * "12 of Panel 900 are still to come out: all good 1 in 2. With 13 poured, enough are good 8 in 10. One to spare comes out Sat 8
 * May."
 */
export const spareText = ({ name, count, allGood, poured, enoughGood, planned }: SpareFacts, today: string): string =>
  `${count} of ${name} ${plural(count, 'is', 'are')} still to come out: all good ${timesText(allGood)}. With ${poured} poured, enough are good ${timesText(enoughGood)}.${plannedText(planned, today)}`;

/** "One to spare: Panel 900, out of its mould Sat 8 May, in case one is not good." */
export const oneToSpareText = ({ name, on }: Pick<SparePlanned, 'name' | 'on'>, today: string): string =>
  `One to spare: ${name}, ${on === 'there' ? 'in the yard' : `out of its mould ${dayText(on, today)}`}, in case one is not good.`;

/** "12 of Panel 900 would all be good 1 in 2; of 13 enough are good 8 in 10. One to spare is poured where there is time." */
export const askedSpareText = ({ name, count, allGood, poured, enoughGood }: QuestionOdds['spares'][number]): string =>
  `${count} of ${name} poured are all good ${timesText(allGood)}, of ${poured} enough are ${timesText(enoughGood)}: once it is taken, one to spare is poured where there is time.`;
