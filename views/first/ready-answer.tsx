import type { FC } from 'hono/jsx';
import type { Asked } from '../../src/usecases/ask-when.ts';
import { Answer } from '../parts/answer.tsx';
import { countText, dayText } from '../parts/day-text.ts';
import { countWord } from '../parts/quantity-text.ts';

/** What the plan answers to "When could it be ready?". */
export type ReadyFacts = Asked;

const NO_TIME = 'there is no time for it in the days planned';

type Hold = NonNullable<ReadyFacts['hold']>;

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
export const holdText = (hold: Hold): string => {
  if (hold.limit === 'other') return OTHER_HOLDS[hold.kind]?.(hold.name) ?? '';
  if (hold.kind === null) return `The moulds that make ${hold.makes} hold it.`;
  return `${countWord(hold.count)} ${hold.kind} ${hold.count === 1 ? 'mould holds' : 'moulds hold'} it.`;
};

/** The day to tell the customer: with the time in hand that the yard keeps, where there is any. */
export const tellOn = ({ promiseOn, earliestOn }: Pick<ReadyFacts, 'promiseOn' | 'earliestOn'>): string | null =>
  promiseOn ?? earliestOn;

/** Everything after the first line: each sentence only where it says something new. */
export const readyNote = (facts: ReadyFacts, today: string): string => {
  const { earliestOn, ifFirstOn } = facts;
  const inHand = earliestOn && tellOn(facts) !== earliestOn;
  return [
    inHand && `${dayText(earliestOn, today)} at the earliest; the rest is time in hand.`,
    ifFirstOn &&
      earliestOn &&
      ifFirstOn < earliestOn &&
      `Put before everything else it could be ${dayText(ifFirstOn, today)}, and other dates would move.`,
    "By today's plan; no date already given gets later by it.",
  ]
    .filter(Boolean)
    .join(' ');
};

/** "One more 1100 mould: Sat 8 May, 7 days sooner." The gain is counted from the earliest date. */
const Sooner: FC<{ limits: NonNullable<ReadyFacts['limits']>; today: string }> = ({ limits, today }) => (
  <div class="sooner">
    <p>What would make it sooner:</p>
    <ul>
      {limits.map(({ change, earliestOn, daysSooner }) => (
        <li>
          {change}: {dayText(earliestOn, today)} at the earliest, {countText(daysSooner, 'day')} sooner.
        </li>
      ))}
    </ul>
  </div>
);

export const ReadyAnswer: FC<{ facts: ReadyFacts; today: string }> = ({ facts, today }) => {
  const date = tellOn(facts);
  if (date === null)
    return (
      <Answer note="Nothing was written down by asking.">
        It can't be made yet, because {facts.reason ?? NO_TIME}.
      </Answer>
    );
  return (
    <>
      <Answer note={readyNote(facts, today)}>
        {dayText(date, today)}. {facts.hold && holdText(facts.hold)}
      </Answer>
      {facts.limits && facts.limits.length > 0 && <Sooner limits={facts.limits} today={today} />}
    </>
  );
};

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
          {facts.earliestOn && facts.earliestOn !== date && ` At the earliest ${dayText(facts.earliestOn, today)}.`}
        </>
      )}
    </p>
  );
};
