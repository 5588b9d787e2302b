import type { FC } from 'hono/jsx';
import { daysText } from '../../shared/days-text.ts';
import { plural } from '../../shared/plural.ts';
import { oddsWords } from '../../shared/promise-odds.ts';
import type { ReadyFacts } from '../../src/usecases/first/ask-when.ts';
import type { ContentsLine } from '../../src/usecases/orders/order-contents.ts';
import { Answer } from '../parts/answer.tsx';
import { dayText } from '../parts/day-text.ts';
import { countWord } from '../parts/quantity-text.ts';
import { heldUpText } from '../words/held-up.ts';
import { contentsText } from '../words/order-text.ts';

const NO_TIME = 'there is no time for it in the days planned';

/** The day to tell the customer: with the time in hand that the yard keeps, where there is any. */
export const tellOn = ({ promiseOn, earliestOn }: Pick<ReadyFacts, 'promiseOn' | 'earliestOn'>): string | null =>
  promiseOn ?? earliestOn;

/** "One session in hand": time between the earliest day and the one to promise. */
export const inHandText = (sessions: number): string => `${countWord(sessions)} ${plural(sessions, 'session')} in hand`;

type InHand = Pick<ReadyFacts, 'promiseOn' | 'promiseOdds' | 'sessionsInHand' | 'deliveryDaysInHand'>;

/** "Kept 9 in 10 times, by the yard's record", or "With one session in hand and 7 days for deliveries": what lies before the day to promise; empty where nothing does. */
export const withInHandText = ({
  promiseOn,
  promiseOdds,
  sessionsInHand,
  deliveryDaysInHand: days,
}: InHand): string => {
  if (promiseOdds !== null) return `Kept ${oddsWords(promiseOdds)} times, by the yard's record`;
  if (promiseOn === null || sessionsInHand + days === 0) return '';
  if (sessionsInHand === 0) return `With ${daysText(days)} in hand for deliveries`;
  const deliveries = days === 0 ? '' : ` and ${daysText(days)} for deliveries`;
  return `With ${inHandText(sessionsInHand).toLowerCase()}${deliveries}`;
};

/** How the earliest day differs from the one to promise. */
const withoutText = ({ promiseOdds }: ReadyFacts): string =>
  promiseOdds === null ? 'without' : 'if nothing goes wrong';

/** What the first line leaves out: how much sooner it could be, and what the date rests on. */
export const readyNote = (facts: ReadyFacts, today: string): string => {
  const { earliestOn, isProven, promiseOn } = facts;
  const inHand = withInHandText(facts);
  const sooner = inHand && promiseOn !== earliestOn && earliestOn !== null ? dayText(earliestOn, today) : null;
  const looking = facts.isLooking ? ' A sooner day is still looked for.' : '';
  const rest = `By today's plan; no promised date moves.${looking}`;
  if (sooner === null) return inHand ? `${inHand}. ${rest}` : rest;
  return isProven
    ? `${inHand}. ${sooner} at the earliest. ${rest}`
    : `${inHand}; ${sooner} ${withoutText(facts)}. ${rest}`;
};

/**
 * What stands above that which would bring the date forward: all of it is counted without time in hand, so it is compared
 * with the day without, and not with the one that is told.
 */
export const soonerHeading = (facts: ReadyFacts, today: string): string => {
  const { earliestOn } = facts;
  if (earliestOn === null || tellOn(facts) === earliestOn) return "What would make it sooner, by today's plan:";
  const without = facts.promiseOdds === null ? 'Without time in hand' : 'If nothing goes wrong';
  return `${without} it is ${dayText(earliestOn, today)}. What would make that sooner, by today's plan:`;
};

/** Something that would bring a date forward, in a sentence, with the day it would then be. */
export interface Sooner {
  text: string;
  on: string;
}

/** Everything that would bring the date forward, a sentence each: "One more 1100 mould: Sat 8 May, 7 days sooner." */
export const soonerOnes = ({ limits, ifFirstOn, earliestOn }: ReadyFacts, today: string): Sooner[] => {
  const first = ifFirstOn !== null && earliestOn !== null && ifFirstOn < earliestOn;
  return [
    ...(limits ?? []).map((limit) => ({
      text: `${limit.change}: ${dayText(limit.earliestOn, today)}, ${daysText(limit.daysSooner)} sooner.`,
      on: limit.earliestOn,
    })),
    ...(first
      ? [
          {
            text: `Put before everything else: ${dayText(ifFirstOn, today)}, but other dates would move.`,
            on: ifFirstOn,
          },
        ]
      : []),
  ];
};

/** The day in the largest type, with what it is about before it; what holds it up below. */
export const ReadyAnswer: FC<{ facts: ReadyFacts; asked: readonly ContentsLine[]; today: string }> = ({
  facts,
  asked,
  today,
}) => {
  const date = tellOn(facts);
  const subject = <span class="answer-about">{contentsText(asked)}</span>;
  if (date === null)
    return (
      <Answer note="Nothing was recorded by asking.">
        {subject}: can't be made yet, because {facts.reason ?? NO_TIME}.
      </Answer>
    );
  return (
    <div class="answer ready-answer">
      <h1>
        {subject}: <strong>ready {dayText(date, today)}.</strong>
      </h1>
      {facts.hold && <p class="held-up">{heldUpText(facts.hold)}</p>}
      <p class="answer-note">{readyNote(facts, today)}</p>
    </div>
  );
};

/** The earliest day, which is told without time in hand; called that only where no plan has a sooner one. */
const soonerText = (facts: ReadyFacts, day: string): string =>
  facts.isProven ? `At the earliest ${day}.` : `${day} ${withoutText(facts)}, by today's plan.`;

/** In a form that is still being filled in: the date alone, smaller than the page's own answer. */
export const ReadyLine: FC<{ facts: ReadyFacts; today: string }> = ({ facts, today }) => {
  const date = tellOn(facts);
  return (
    <p class="ready-line">
      {date === null ? (
        <>It can't be made yet, because {facts.reason ?? NO_TIME}.</>
      ) : (
        <>
          <strong>Ready {dayText(date, today)}</strong> by today's plan, once that is promised below.
          {withInHandText(facts) && ` ${withInHandText(facts)}.`}
          {facts.earliestOn && facts.earliestOn !== date && ` ${soonerText(facts, dayText(facts.earliestOn, today))}`}
        </>
      )}
    </p>
  );
};
