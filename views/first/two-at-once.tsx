import type { FC } from 'hono/jsx';
import { daysText } from '../../shared/days-text.ts';
import type { PairsAsked } from '../../src/usecases/first/ask-pairs.ts';
import { Answer } from '../parts/answer.tsx';
import { dayText } from '../parts/day-text.ts';
import { contentsText } from '../words/order-text.ts';

/** "One more 1100 mould and one more session on Tue 6 Apr: Sat 8 May, 7 days sooner." */
const pairText = (
  { change, earliestOn, daysSooner }: NonNullable<PairsAsked['pairs']>[number],
  today: string,
): string => `${change}: ${dayText(earliestOn, today)}, ${daysText(daysSooner)} sooner.`;

const LATE = 'That took too long to find out. Ask again in a while.';
const NONE = 'No two changes at once bring it further forward than one of them alone.';

/** The pairs alone, for where the question stands already. */
export const PairList: FC<{ model: PairsAsked }> = ({ model: { pairs, today } }) => {
  if (pairs === null) return <p>{LATE}</p>;
  if (pairs.length === 0) return <p>{NONE}</p>;
  return (
    <>
      <p>Two changes at once, where they bring more than one of them:</p>
      <ul>
        {pairs.map((pair) => (
          <li>{pairText(pair, today)}</li>
        ))}
      </ul>
    </>
  );
};

export const TwoAtOncePage: FC<{ model: PairsAsked; back: string }> = ({ model, back }) => {
  const { asked, pairs, today } = model;
  const [best] = pairs ?? [];
  return (
    <>
      {asked ? (
        <Answer note={`${contentsText(asked)}, by today's plan. No promised date moves.`}>
          {best ? `${dayText(best.earliestOn, today)} by today's plan, with two changes at once.` : pairs ? NONE : LATE}
        </Answer>
      ) : (
        <Answer note="Nothing was recorded by asking.">Choose what is asked for, and how many.</Answer>
      )}
      {best && <PairList model={model} />}
      <p class="way">
        <a href={back}>Back to the question</a>
      </p>
    </>
  );
};
