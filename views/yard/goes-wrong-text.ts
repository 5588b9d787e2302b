import { countText } from '../../shared/plural.ts';
import { oddsWords } from '../../shared/promise-odds.ts';
import type {
  DeliveryFacts,
  GoesWrongModel,
  PiecesFacts,
  ShareFacts,
} from '../../src/usecases/yard/show-goes-wrong.ts';
import { enoughText } from '../first/how-sure-text.ts';

/** What is counted on to go wrong, and what that rests on. */
export const GOES_WRONG = '/yard/goes-wrong';

/** "1 in 24"; of less than one in a thousand "less than 1 in 1,000". */
export const oneInText = (share: number): string => {
  const of = Math.round(1 / share);
  return of > 1000 ? 'less than 1 in 1,000' : `1 in ${of}`;
};

const howBad = ({ mend, scrap }: Pick<PiecesFacts, 'mend' | 'scrap'>): string =>
  [scrap > 0 && `${scrap} scrap`, mend > 0 && `${mend} to mend`].filter((one) => one !== false).join(', ');

/** "12 of 288 that came out: 8 scrap, 4 to mend" */
export const piecesText = ({ bad, of, mend, scrap }: Omit<PiecesFacts, 'id' | 'name' | 'share'>): string =>
  `${bad === 0 ? 'none' : bad} of ${of} that came out${bad > 0 ? `: ${howBad({ mend, scrap })}` : ''}`;

/** What is counted on of a share, and whether that is a guess: "1 in 20, a guess: nothing is on record." */
export const countedText = ({ share, of }: ShareFacts, guess: number, seen: string): string =>
  of === 0
    ? `Counted on: ${oneInText(guess)}, a guess. Nothing is on record yet.`
    : `Counted on: ${oneInText(share)}. On record: ${seen}, on top of a guess of ${oneInText(guess)}.`;

/** "4 of 105 days with work, called off that day or the day before" */
export const sessionsText = ({ bad, of }: ShareFacts): string =>
  `${bad === 0 ? 'none' : bad} of ${countText(of, 'day')} with work called off that day or the day before`;

/** "3 of 20 came late, 6 days at most" */
export const deliveriesText = ({ bad, of, mostDaysLate }: DeliveryFacts): string =>
  bad === 0 ? `none of ${of} came late` : `${bad} of ${of} came late, ${countText(mostDaysLate ?? 0, 'day')} at most`;

/** The first line: "About 1 piece in 24 is not good, and 1 session in 19 is lost." */
export const goesWrongAnswer = ({ pieces, sessions }: GoesWrongModel): string =>
  pieces.of + sessions.of === 0
    ? 'No piece and no day of work is on record yet, so guesses are counted on.'
    : `About ${oneInText(pieces.share).replace(' in ', ' piece in ')} is not good, and ${oneInText(sessions.share).replace(' in ', ' day of work in ')} is lost.`;

/** What hangs on it: dates to promise, or none until enough is on record. */
export const promisedByText = ({ isEnough, promiseOdds }: Pick<GoesWrongModel, 'isEnough' | 'promiseOdds'>): string =>
  isEnough
    ? `A date to promise goes by this: it is the first that is kept ${oddsWords(promiseOdds)} times.`
    : `No date hangs on this until ${enoughText()} are on record: days are promised with the yard’s time in hand.`;
