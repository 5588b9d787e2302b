import type { FC } from 'hono/jsx';
import { listText } from '../../shared/list-text.ts';
import type { NextSession as SessionFacts } from '../../src/usecases/first/next-session.ts';
import { Empty } from '../parts/answer.tsx';
import { clockText, dayText } from '../parts/day-text.ts';
import { countedText, quantityText } from '../parts/quantity-text.ts';
import { fixedText } from '../today/fixed-session.tsx';
import { SessionSmall } from './session-small.tsx';

const Doing: FC<{ word: string; what: string }> = ({ word, what }) =>
  what === '' ? null : (
    <div>
      <dt>{word}</dt>
      <dd>{what}</dd>
    </div>
  );

/** The next session in a few lines; the whole of it is on Today. */
export const NextSession: FC<{ session: SessionFacts | null; today: string }> = ({ session, today }) => (
  <section>
    <h2>The next session</h2>
    {session === null ? (
      <Empty>No session has anything to do by today's plan. It fills when an order is taken.</Empty>
    ) : (
      <>
        <p>
          <strong>
            {session.date === today ? `Today, ${dayText(session.date, today)}` : dayText(session.date, today)}
          </strong>
          , {clockText(session.start)} to {clockText(session.end)}.
          {session.fixed && ` ${fixedText(session.date, today)}`}
        </p>
        <SessionSmall session={session} />
        <dl class="doing">
          <Doing
            word="Mix"
            what={listText(session.bags.map(({ mix, count }) => `${quantityText(count, 'bag')} of ${mix}`))}
          />
          <Doing word="Pour" what={countedText(session.pours)} />
          <Doing word="Strip" what={countedText(session.strips)} />
          <Doing word="Pack" what={countedText(session.packs)} />
        </dl>
        <p class="way">
          <a href="/today">Today, step by step</a>
        </p>
      </>
    )}
  </section>
);
