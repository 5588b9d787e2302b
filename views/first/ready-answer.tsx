import type { FC } from 'hono/jsx';
import { daysText } from '../../shared/days-text.ts';
import type { ReadyFacts } from '../../src/usecases/first/ask-when.ts';
import type { HeldUpBy } from '../../src/usecases/first/held-up-by.ts';
import { Answer } from '../parts/answer.tsx';
import { dayText } from '../parts/day-text.ts';
import { countWord } from '../parts/quantity-text.ts';

const NO_TIME = 'there is no time for it in the days planned';

const OTHER_HOLDS: Readonly<Record<string, (name: string | null) => string>> = {
  mended: (name) => `${name} holds it until it is mended.`,
  session: () => 'The hours of work hold it.',
  hands: () => 'It is held by having no more hands.',
  evening: () => 'Moulds that wait to be stripped hold it.',
  material: (name) => `It waits for ${name}.`,
  rack: () => 'Room to cure in holds it.',
  mixer: () => 'The size of the mixer holds it.',
};

/** "Two 1100 moulds hold it." Nothing for a kind of limit that has no words yet. */
export const holdText = (hold: HeldUpBy): string => {
  if (hold.limit === 'other') return OTHER_HOLDS[hold.kind]?.(hold.name) ?? '';
  if (hold.kind === null) return `The moulds that make ${hold.makes} hold it.`;
  return `${countWord(hold.count)} ${hold.kind} ${hold.count === 1 ? 'mould holds' : 'moulds hold'} it.`;
};

/** The day to tell the customer: with the time in hand that the yard keeps, where there is any. */
export const tellOn = ({ promiseOn, earliestOn }: Pick<ReadyFacts, 'promiseOn' | 'earliestOn'>): string | null =>
  promiseOn ?? earliestOn;

/** "One session in hand": time between the earliest day and the one to promise. */
export const inHandText = (sessions: number): string =>
  `${countWord(sessions)} ${sessions === 1 ? 'session' : 'sessions'} in hand`;

type InHand = Pick<ReadyFacts, 'promiseOn' | 'sessionsInHand' | 'deliveryDaysInHand'>;

/** "With one session in hand and 7 days for deliveries": what lies before the day to promise; empty where nothing does. */
const withInHandText = ({ promiseOn, sessionsInHand, deliveryDaysInHand: days }: InHand): string => {
  if (promiseOn === null || sessionsInHand + days === 0) return '';
  if (sessionsInHand === 0) return `With ${daysText(days)} in hand for deliveries`;
  const deliveries = days === 0 ? '' : ` and ${daysText(days)} for deliveries`;
  return `With ${inHandText(sessionsInHand).toLowerCase()}${deliveries}`;
};

/** What the first line leaves out: how much sooner it could be, and what the date rests on. */
export const readyNote = (facts: ReadyFacts, today: string): string => {
  const { earliestOn, isProven, promiseOn } = facts;
  const inHand = withInHandText(facts);
  const sooner = inHand && promiseOn !== earliestOn && earliestOn !== null ? dayText(earliestOn, today) : null;
  const looking = facts.isLooking ? ' A sooner day is still looked for.' : '';
  const rest = `By today's plan; no date already given gets later by it.${looking}`;
  if (sooner === null) return inHand ? `${inHand}. ${rest}` : rest;
  return isProven ? `${inHand}. ${sooner} at the earliest. ${rest}` : `${inHand}; ${sooner} without. ${rest}`;
};

/**
 * What stands above that which would bring the date forward: all of it is counted without time in hand, so it is compared
 * with the day without, and not with the one that is told.
 */
export const soonerHeading = (facts: ReadyFacts, today: string): string => {
  const { earliestOn } = facts;
  if (earliestOn === null || tellOn(facts) === earliestOn) return "What would make it sooner, by today's plan:";
  return `Without time in hand it is ${dayText(earliestOn, today)}. What would make that sooner, by today's plan:`;
};

/** Everything that would bring the date forward, a sentence each: "One more 1100 mould: Sat 8 May, 7 days sooner." */
export const soonerSentences = ({ limits, ifFirstOn, earliestOn }: ReadyFacts, today: string): string[] => {
  const first = ifFirstOn !== null && earliestOn !== null && ifFirstOn < earliestOn;
  return [
    ...(limits ?? []).map(
      (limit) => `${limit.change}: ${dayText(limit.earliestOn, today)}, ${daysText(limit.daysSooner)} sooner.`,
    ),
    ...(first ? [`Put before everything else: ${dayText(ifFirstOn, today)}, but other dates would move.`] : []),
  ];
};

export const ReadyAnswer: FC<{ facts: ReadyFacts; today: string }> = ({ facts, today }) => {
  const date = tellOn(facts);
  return date === null ? (
    <Answer note="Nothing was recorded by asking.">It can't be made yet, because {facts.reason ?? NO_TIME}.</Answer>
  ) : (
    <Answer note={readyNote(facts, today)}>
      {dayText(date, today)}. {facts.hold && holdText(facts.hold)}
    </Answer>
  );
};

/** The earliest day, which is told without time in hand; called that only where no plan has a sooner one. */
const soonerText = (isProven: boolean, day: string): string =>
  isProven ? `At the earliest ${day}.` : `${day} without, by today's plan.`;

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
          {facts.earliestOn &&
            facts.earliestOn !== date &&
            ` ${soonerText(facts.isProven, dayText(facts.earliestOn, today))}`}
        </>
      )}
    </p>
  );
};
