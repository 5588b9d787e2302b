import { fullDayWords } from '../../shared/day-words.ts';
import { daysText } from '../../shared/days-text.ts';
import { plural } from '../../shared/plural.ts';
import { dayNumber } from '../../shared/time.ts';
import type { Effect } from '../../src/usecases/plan/save-edit.ts';
import { dayText } from '../parts/day-text.ts';
import { countWord } from '../parts/quantity-text.ts';

type Unkept = Effect['unkept'][number];
type Passed = Effect['passed'][number];

const NO_TIME = 'there is no time for it in the days planned';

/** "by today's plan it is ready Sat 22 May, 14 days late", "it can't be made yet, because …" */
export const unkeptText = ({ promisedOn, readyOn, reason }: Unkept, today: string): string =>
  readyOn === null
    ? `it can't be made yet, because ${reason ?? NO_TIME}`
    : `by today's plan it is ready ${dayText(readyOn, today)}, ${daysText(dayNumber(readyOn) - dayNumber(promisedOn))} late`;

/** "Wed 7 Apr was yesterday.", "Wed 7 Apr, the day wanted, has passed." */
const passedText = ({ field, on }: Passed, today: string): string => {
  const day = `${dayText(on, today)}${field === 'wantedOn' ? ', the day wanted,' : ''}`;
  return dayNumber(today) - dayNumber(on) === 1 ? `${day} was yesterday.` : `${day} has passed.`;
};

/** What is asked about, a sentence each. The orders that get later are named below it. */
export const askedSentences = ({ unkept, passed, moved }: Effect, today: string): string[] => [
  ...passed.map((one) => passedText(one, today)),
  ...unkept.map((one) =>
    passed.some(({ on }) => on === one.promisedOn)
      ? `${unkeptText(one, today).replace(/^./, (letter) => letter.toUpperCase())}.`
      : `${dayText(one.promisedOn, today)} can't be kept: ${unkeptText(one, today)}.`,
  ),
  ...(moved.length > 0
    ? [`${countWord(moved.length)} other ${plural(moved.length, 'order gets', 'orders get')} later.`]
    : []),
];

/** Answers that put another day into a field: what each says, and what it sends. */
export const otherDays = ({ insteadOn, passed }: Effect, today: string): { says: string; sends: string }[] => [
  ...(insteadOn === null
    ? []
    : [{ says: `Give ${dayText(insteadOn, today)} instead`, sends: `promisedOn ${insteadOn}` }]),
  ...passed.flatMap(({ field, next }) =>
    next === null ? [] : [{ says: `${fullDayWords(next)} is meant`, sends: `${field} ${next}` }],
  ),
];
