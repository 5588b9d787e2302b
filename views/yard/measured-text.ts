import { countText, plural } from '../../shared/plural.ts';
import type { FigureChange, MeasuredFacts } from '../../src/usecases/yard/show-measured.ts';
import type { StripFacts } from '../../src/usecases/yard/strip-facts.ts';

/** What the yard's work really takes. */
export const MEASURED = '/yard/measured';

const WHAT: Readonly<Record<MeasuredFacts['what'], string>> = {
  'set up': 'Clean and set up',
  strip: 'Strip',
  batch: 'Mix and fill a batch',
  mix: 'Mix a batch',
  fill: 'Fill',
};

/** "Strip: Panel 900" */
export const measuredHeading = ({ what, name }: Pick<MeasuredFacts, 'what' | 'name'>): string =>
  `${WHAT[what]}: ${name}`;

const number = (minutes: number): string => String(Math.round(minutes));

type Spread = Pick<MeasuredFacts, 'minutes' | 'count' | 'figure' | 'guessed'>;

/** "11 minutes in the middle, half of them 9 to 12, of 7 measured; the figures say 8 (to check)." */
export const measuredText = ({ minutes, count, figure, guessed }: Spread): string => {
  const { lower, median, upper } = minutes;
  const spread = count > 1 ? `, half of them ${number(lower)} to ${number(upper)}` : '';
  return `${countText(Math.round(median), 'minute')} in the middle${spread}, of ${count} measured; the figures say ${number(figure)}${guessed ? ' (to check)' : ''}.`;
};

/** "Of fewer than 5 nothing is taken over: 3 more are to be measured." */
export const notEnoughText = ({ count }: Pick<MeasuredFacts, 'count'>, enough: number): string =>
  `Of fewer than ${enough} nothing is taken over: ${enough - count} more to be measured.`;

const FIGURE: Readonly<Record<string, string>> = {
  ...{ mixMinutes: 'mixing', fillMinutes: 'filling', prepMinutes: 'setting up', cleanMinutes: 'cleaning' },
  stripMinutes: 'stripping',
};

/** "stripping Panel 900 8 to 11 minutes" */
export const changeText = ({ figure, name, before, after }: FigureChange): string =>
  `${FIGURE[figure] ?? figure} ${name} ${before} to ${after} minutes`;

/** "Hard enough to strip: Thin panel mix" */
export const stripsHeading = ({ name }: Pick<StripFacts, 'name'>): string => `Hard enough to strip: ${name}`;

/** "At 20 °C hard after 92 minutes in the middle, half of them 88 to 96, of 4 pieces at 9 °C to 21 °C; the figures say 75 (to check)." */
export const stripsText = ({ at, minutes, count, warmth, figure, guessed }: StripFacts): string =>
  `At ${at} hard after ${measuredText({ minutes, count, figure, guessed }).replace(' measured;', ` ${plural(count, 'piece')} at ${warmth};`)}`;

/** "At 20 °C after 96 minutes in place of 75" */
export const stripsChangeText = ({ at, before, after }: StripFacts['changes'][number]): string =>
  `at ${at} after ${after} minutes in place of ${before}`;
