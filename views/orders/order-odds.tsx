import type { FC } from 'hono/jsx';
import type { OddsFacts } from '../../src/usecases/orders/odds-facts.ts';
import { GOES_WRONG } from '../yard/goes-wrong-text.ts';
import { dependsText, dueOddsText, oddsText, restsOnText, spareText } from './odds-text.ts';
import { orderPath } from './order-facts.ts';

/** How sure a day is; null where nobody could find out. */
export const Odds: FC<{ odds: OddsFacts | null; today: string }> = ({ odds, today }) => {
  if (odds === null) return <p>That could not be found out just now. Ask again in a while.</p>;
  return (
    <>
      <p>
        <strong>{oddsText(odds, today)}</strong>
      </p>
      <ul class="sentences">
        {odds.due && <li>{dueOddsText(odds.due, odds.draws, today)}</li>}
        <li>{dependsText(odds.dependsOn)}</li>
        {odds.spares.map((spare) => (
          <li>{spareText(spare)}</li>
        ))}
      </ul>
      <p class="quiet">
        {restsOnText(odds)} <a href={GOES_WRONG}>What goes wrong, and how often</a>
      </p>
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
