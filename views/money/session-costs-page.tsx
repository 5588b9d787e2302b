import type { FC } from 'hono/jsx';
import type { SessionCostsModel } from '../../src/usecases/money/show-session-costs.ts';
import { Answer, Empty } from '../parts/answer.tsx';
import { ButtonLink } from '../parts/button.tsx';
import { dayHeading, dayText } from '../parts/day-text.ts';
import { moneyText } from '../parts/money-text.ts';
import { MissingFigures } from './missing-figures.tsx';
import { PRICES } from './money-text.ts';

type Session = SessionCostsModel['sessions'][number];

const sessionsAnswer = ({ sessions, today, currency }: SessionCostsModel): string => {
  const next = sessions.find(({ clock }) => clock !== null);
  return next
    ? `The session of ${dayText(next.date, today)} costs ${moneyText(next.total, currency)}.`
    : 'No session is planned.';
};

const SessionTable: FC<{ session: Session; currency: string; today: string }> = ({ session, currency, today }) => (
  <section class="session-cost">
    <h2>
      {dayHeading(session.date, today)}
      {session.clock !== null && `, ${session.clock}`}
    </h2>
    <table class="cost-table">
      <tbody>
        {session.bearers.map(({ name, count, cost }) => (
          <tr>
            <th scope="row">{count === null ? name : `${count} × ${name}`}</th>
            <td class="number">{moneyText(cost.total, currency)}</td>
          </tr>
        ))}
        {session.rest !== 0 && (
          <tr>
            <th scope="row">Nothing made: getting there, coats</th>
            <td class="number">{moneyText(session.rest, currency)}</td>
          </tr>
        )}
        <tr class="cost-total">
          <th scope="row">In all</th>
          <td class="number">{moneyText(session.total, currency)}</td>
        </tr>
      </tbody>
    </table>
  </section>
);

/** What the next sessions cost by today's plan, and what of it each piece and order bears. */
export const SessionCostsPage: FC<{ model: SessionCostsModel }> = ({ model }) => (
  <>
    <Answer note="By today's plan: what is done in each session, at the price paid for the bags that are used then. A piece that is stripped in another session than it was poured in bears part of both.">
      {sessionsAnswer(model)}
    </Answer>
    <MissingFigures missing={model.missing} />
    <div class="buttons">
      <ButtonLink href={PRICES}>Price list</ButtonLink>
    </div>
    {model.sessions.length === 0 && (
      <Empty>
        <a href="/orders">Take an order</a>, and its sessions stand here.
      </Empty>
    )}
    <div class="session-costs">
      {model.sessions.map((session) => (
        <SessionTable session={session} currency={model.currency} today={model.today} />
      ))}
    </div>
    {model.more > 0 && <p class="quiet">{model.more} more sessions are planned.</p>}
  </>
);
