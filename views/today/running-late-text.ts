import { listText } from '../../shared/list-text.ts';
import { countText, plural } from '../../shared/plural.ts';
import type { RetimedSession } from '../../src/usecases/today/retimed-session.ts';
import type { SessionStep } from '../../src/usecases/today/session-step.ts';
import { byClock, fromClock } from '../parts/clock-text.ts';
import { stepText } from './today-text.ts';

/** In place of what a slip does to dates, where that was given up. */
export const TOO_LONG = 'Which days it moves took too long to work out. It is shown before anything is recorded.';

/** Minutes are said in fives, later and never sooner. */
const inFives = (minutes: number): number => Math.ceil(minutes / 5) * 5;

const timedText = (step: SessionStep): string => `${stepText(step)} (${fromClock(step.at)})`;

/** "All that is left begins 25 minutes later, and the last of it ends by 12:50." */
export const retimedText = ({ minutes, steps }: RetimedSession): string => {
  const last = steps
    .map(({ until }) => until)
    .sort((a, b) => Date.parse(a) - Date.parse(b))
    .at(-1);
  if (last === undefined) return 'Nothing is left to begin in this session.';
  if (minutes === 0)
    return `The next step was to begin later than that, and the last of it ends by ${fromClock(last)}.`;
  return `All that is left begins ${countText(inFives(minutes), 'minute')} later, and the last of it ends by ${fromClock(last)}.`;
};

/** "The time for work ends at 12:30: strip 900 no. 1 (12:20) and pack for Ann (12:40) no longer fit." */
export const tooLateText = ({ tooLate, end }: RetimedSession): string =>
  `The time for work ends at ${byClock(end)}: ${listText(tooLate.map(timedText))} no longer ${plural(tooLate.length, 'fits', 'fit')}.`;

/** "10:30: set up 900 no. 2" */
export const retimedLine = (step: SessionStep): string => `${fromClock(step.at)}: ${stepText(step)}`;
