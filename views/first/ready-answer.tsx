import type { FC } from 'hono/jsx';
import type { Asked } from '../../src/usecases/ask-when.ts';
import { Answer } from '../parts/answer.tsx';
import { dayText } from '../parts/day-text.ts';
import { countWord } from '../parts/quantity-text.ts';

/** What the plan answers to "When could it be ready?". */
export type ReadyFacts = Asked;

const NO_TIME = 'there is no time for it in the days planned';

type Hold = NonNullable<ReadyFacts['hold']>;

/** "Two 1100 moulds hold it." */
export const holdText = ({ count, kind, makes }: Hold): string => {
  if (kind === null) return `The moulds that make ${makes} hold it.`;
  return `${countWord(count)} ${kind} ${count === 1 ? 'mould holds' : 'moulds hold'} it.`;
};

const oneMoreText = ({ kind, makes, withOneMoreOn }: Hold, today: string): string =>
  `One more ${kind ? `${kind} mould` : `mould for ${makes}`} would make it ${dayText(withOneMoreOn, today)}.`;

/** Everything after the first line: each sentence only where it says something new. */
export const readyNote = ({ earliestOn, promiseOn, ifFirstOn, hold }: ReadyFacts, today: string): string =>
  [
    promiseOn && promiseOn !== earliestOn && `To keep some time in hand, promise ${dayText(promiseOn, today)}.`,
    hold && oneMoreText(hold, today),
    ifFirstOn &&
      earliestOn &&
      ifFirstOn < earliestOn &&
      `Put before everything else it could be ${dayText(ifFirstOn, today)}, and other dates would move.`,
    "By today's plan; no date already given gets later by it.",
  ]
    .filter(Boolean)
    .join(' ');

export const ReadyAnswer: FC<{ facts: ReadyFacts; today: string }> = ({ facts, today }) =>
  facts.earliestOn === null ? (
    <Answer note="Nothing was written down by asking.">It can't be made yet, because {facts.reason ?? NO_TIME}.</Answer>
  ) : (
    <Answer note={readyNote(facts, today)}>
      {dayText(facts.earliestOn, today)}. {facts.hold && holdText(facts.hold)}
    </Answer>
  );

/** In a form that is still being filled in: the date alone, smaller than the page's own answer. */
export const ReadyLine: FC<{ facts: ReadyFacts; today: string }> = ({ facts, today }) => (
  <p class="ready-line">
    {facts.earliestOn === null ? (
      <>It can't be made yet, because {facts.reason ?? NO_TIME}.</>
    ) : (
      <>
        <strong>Ready {dayText(facts.earliestOn, today)}</strong> by today's plan, once a date is promised below.{' '}
        {facts.promiseOn && facts.promiseOn !== facts.earliestOn && (
          <>To keep some time in hand, promise {dayText(facts.promiseOn, today)}.</>
        )}
      </>
    )}
  </p>
);
