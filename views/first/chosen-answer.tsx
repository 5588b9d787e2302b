import type { FC } from 'hono/jsx';
import { daysText } from '../../shared/days-text.ts';
import { oddsWords } from '../../shared/promise-odds.ts';
import type { ChosenDate, PushedDate } from '../../src/usecases/first/chosen-date.ts';
import { dayText } from '../parts/day-text.ts';
import { countWord } from '../parts/quantity-text.ts';

/** "School garden: Sat 8 May to Sat 15 May, 7 days later." */
const pushedText = ({ customer, order, from, to, days }: PushedDate, today: string): string =>
  `${customer ?? `Order ${order}`}: ${dayText(from, today)} to ${dayText(to, today)}, ${daysText(days)} later.`;

/** The plain answer to a day that the customer would like. */
const chosenText = (chosen: ChosenDate, today: string): string => {
  const on = dayText(chosen.on, today);
  switch (chosen.answer) {
    case 'yes':
      return `Yes, ${on} can be kept, and no promised date moves.`;
    case 'yes, with no time in hand':
      return `Yes, ${on} can be kept by today's plan, but with no time in hand.`;
    case 'yes, but less often':
      return `Yes, ${on} can be kept by today's plan, but less often than ${oddsWords(chosen.than)} times.`;
    case 'passed':
      return `${on} has passed.`;
    case 'not asked yet':
      return `${on} is sooner than the dates already promised allow. What it would push is being looked at.`;
    case 'took too long':
      return `What ${on} would push took too long to find out. Ask again.`;
    case 'no':
      return `No, ${on} can't be kept${chosen.reason ? `: ${chosen.reason}` : ''}.`;
    case 'pushes':
      return chosen.pushes.length === 1
        ? `${on} could be kept, but a promised date would get later:`
        : `${on} could be kept, but ${countWord(chosen.pushes.length).toLowerCase()} promised dates would get later:`;
  }
};

/** What comes of the day that is wanted, with every date it would push. */
export const ChosenAnswer: FC<{ chosen: ChosenDate; today: string }> = ({ chosen, today }) => (
  <div class="chosen">
    <p>
      <strong>{chosenText(chosen, today)}</strong>
    </p>
    {chosen.answer === 'pushes' && (
      <ul>
        {chosen.pushes.map((push) => (
          <li>{pushedText(push, today)}</li>
        ))}
      </ul>
    )}
  </div>
);
