import type { FC } from 'hono/jsx';
import type { QuestionOdds } from '../../src/usecases/first/odds-of-question.ts';
import type { OddsFacts } from '../../src/usecases/orders/odds-facts.ts';
import { GOES_WRONG } from '../yard/goes-wrong-text.ts';
import {
  askedSpareText,
  dependsText,
  dueOddsText,
  howSureText,
  othersText,
  restsOnText,
  spareText,
} from './odds-text.ts';
import { orderPath } from './order-facts.ts';

const LATE = 'That could not be found out just now. Ask again in a while.';

interface OddsProps {
  odds: OddsFacts | null;
  today: string;
  /** The day that is offered, of what is only asked about. */
  offered?: QuestionOdds['offered'];
  /** Of what is only asked about: pieces to spare that it would have. */
  askedSpares?: QuestionOdds['spares'];
}

/** What the odds of a day go by, and the other days there are. */
export const OddsMore: FC<OddsProps & { odds: OddsFacts }> = ({ odds, today, offered, askedSpares = [] }) => {
  const others = offered ? othersText(odds, offered.on, today) : null;
  return (
    <>
      <ul class="sentences">
        {others && <li>{others}</li>}
        {odds.due && odds.due.on !== offered?.on && <li>{dueOddsText(odds.due, odds.draws, today)}</li>}
        <li>{dependsText(odds.dependsOn)}</li>
        {odds.spares.map((spare) => (
          <li>{spareText(spare, today)}</li>
        ))}
        {askedSpares.map((spare) => (
          <li>{askedSpareText(spare)}</li>
        ))}
      </ul>
      <p class="quiet">
        {restsOnText(odds)} <a href={GOES_WRONG}>What goes wrong, and how often</a>
      </p>
    </>
  );
};

/** How sure a day is; null where nobody could find out. */
export const Odds: FC<OddsProps> = ({ odds, today, offered, askedSpares }) => {
  if (odds === null) return <p>{LATE}</p>;
  return (
    <>
      <p>
        <strong>{howSureText(odds, offered ?? null, today)}</strong>
      </p>
      <OddsMore {...{ odds, today, offered, askedSpares }} />
    </>
  );
};

/** On the page of an order: how sure its day is, found out when it is asked; without script by a link. */
export const HowSure: FC<{ id: string; odds: OddsFacts | null | undefined; today: string }> = ({ id, odds, today }) => (
  <section class="no-print" id="how-sure">
    <h2>How sure is that day?</h2>
    {odds === undefined ? (
      <p class="way">
        <a
          href={`${orderPath(id)}?sure=yes#how-sure`}
          data-hx-get={`${orderPath(id)}/odds`}
          data-hx-trigger="click"
          data-hx-target="closest p"
          data-hx-swap="outerHTML"
        >
          Work out its odds
        </a>
      </p>
    ) : (
      <Odds odds={odds} today={today} />
    )}
  </section>
);
