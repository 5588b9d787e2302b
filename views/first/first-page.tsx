import type { FC } from 'hono/jsx';
import type { FirstModel } from '../../src/usecases/first/show-first.ts';
import { OrderSentence } from '../orders/order-sentence.tsx';
import { spanOf, TrackKey } from '../orders/order-track.tsx';
import { Answer, Empty } from '../parts/answer.tsx';
import { ButtonLink } from '../parts/button.tsx';
import { dayText } from '../parts/day-text.ts';
import { HeldNotices } from '../parts/held-notices.tsx';
import { LongList } from '../parts/long-list.tsx';
import { type DoneNotice, Notice } from '../parts/notice.tsx';
import { quantityText } from '../parts/quantity-text.ts';
import type { AskedModel } from './asked.ts';
import { NextSession } from './next-session.tsx';
import { Question } from './question.tsx';
import { ReadyPart } from './ready-part.tsx';

const Buys: FC<{ model: FirstModel }> = ({ model: { buys, moreBuys, today } }) => (
  <section>
    <h2>Buy next</h2>
    {buys.length === 0 ? (
      <p>Nothing has to be bought for what is planned.</p>
    ) : (
      <ul class="sentences">
        {buys.map(({ name, unit, quantity, orderBy }) => (
          <li>
            <strong>{dayText(orderBy, today)}</strong>: {quantityText(quantity, unit)} {name}
          </li>
        ))}
      </ul>
    )}
    <p class="way">
      <a href="/buying">{moreBuys > 0 ? `Buying, with ${moreBuys} more` : 'Buying'}</a>
    </p>
  </section>
);

const Risks: FC<{ model: FirstModel }> = ({ model: { risks, moreRisks, orderCount, today } }) => (
  <section>
    <h2>Late or at risk</h2>
    {risks.length > 0 && (
      <ul class="sentences">
        <LongList
          items={risks}
          draw={(order) => <OrderSentence order={order} today={today} span={spanOf(risks, today)} />}
        />
      </ul>
    )}
    {risks.length > 0 && <TrackKey />}
    {moreRisks > 0 && (
      <p class="way">
        <a href="/orders">{`${moreRisks} more, among all orders`}</a>
      </p>
    )}
    {risks.length === 0 && orderCount > 0 && <p>No promised date is at risk by today's plan.</p>}
    {orderCount === 0 && (
      <Empty>
        No order is open. Once one is <a href="/orders/new">taken</a>, it stands here whenever its date is at risk.
      </Empty>
    )}
    <p class="way">
      <a href="/changes">What was changed, and which dates it moved</a>
    </p>
  </section>
);

interface StandingProps {
  model: FirstModel;
  /** A better plan is being looked for. */
  improving: boolean;
}

/** What stands below the question; while a better plan is being looked for it is looked at again. */
export const Standing: FC<StandingProps> = ({ model, improving }) => (
  <div
    id="standing"
    class="standing"
    {...(improving
      ? { 'data-hx-get': '/standing', 'data-hx-trigger': 'load delay:2s', 'data-hx-swap': 'outerHTML' }
      : {})}
  >
    <NextSession session={model.session} today={model.today} />
    <Buys model={model} />
    <Risks model={model} />
  </div>
);

/** Above the demo's first page: which program this is, that the yard is a made-up one, and the way to one's own. */
const DemoNote: FC = () => (
  <p class="demo-note">
    <strong>Mould Rota</strong> plans a small casting yard. Demo yard. Try anything. <a href="/begin">Start your own</a>
  </p>
);

export const FirstPage: FC<StandingProps & { asked: AskedModel; notice: DoneNotice | null }> = ({
  model,
  asked,
  notice,
  improving,
}) => (
  <>
    {model.demo && <DemoNote />}
    {notice && <Notice notice={notice} today={model.today} back="/" />}
    <HeldNotices notices={model.notices} back="/" />
    <div class="first">
      {asked.offers.length === 0 ? (
        <div class="asking">
          <Answer note="Once the yard has a kit, a panel or a part, you can ask here when it could be ready.">
            There is nothing to make yet.
          </Answer>
          <div class="buttons">
            <ButtonLink href="/begin/four" kind="main">
              Give four answers
            </ButtonLink>
            <ButtonLink href="/yard">Fill in your yard step by step</ButtonLink>
          </div>
        </div>
      ) : (
        <div class="asking">
          <Question asked={asked} today={model.today} />
          <div id="ready" aria-live="polite">
            <ReadyPart asked={asked} today={model.today} />
          </div>
        </div>
      )}
      <Standing model={model} improving={improving} />
    </div>
  </>
);
