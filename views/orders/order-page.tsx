import type { Child, FC } from 'hono/jsx';
import { fullDayWords } from '../../shared/day-words.ts';
import { listText } from '../../shared/list-text.ts';
import { oddsWords } from '../../shared/promise-odds.ts';
import type { OrderMoneyModel } from '../../src/usecases/money/show-order-money.ts';
import type { DayToTell } from '../../src/usecases/orders/day-to-tell.ts';
import type { OrderLimit } from '../../src/usecases/orders/limits-of-order.ts';
import type { OddsFacts } from '../../src/usecases/orders/odds-facts.ts';
import type { OrderModel } from '../../src/usecases/orders/show-order.ts';
import type { Effect } from '../../src/usecases/plan/save-edit.ts';
import { inHandText } from '../first/ready-answer.tsx';
import { OrderMoney } from '../money/order-money.tsx';
import { Answer } from '../parts/answer.tsx';
import { Button, ButtonLink } from '../parts/button.tsx';
import { CopyMessage } from '../parts/copy-message.tsx';
import { DayField } from '../parts/day-field.tsx';
import { clockText, dayText, spareText } from '../parts/day-text.ts';
import { EarthCaution } from '../parts/earth-caution.tsx';
import { type FieldErrors, FormErrors, Wrong } from '../parts/field.tsx';
import { type DoneNotice, Notice } from '../parts/notice.tsx';
import { countWord, quantityText } from '../parts/quantity-text.ts';
import { RestsOn } from '../parts/rests-on.tsx';
import { TRACE } from '../trace/trace-text.ts';
import {
  dueOf,
  isLate,
  isNotFetched,
  isPackedAtAll,
  packedLateText,
  packedText,
  packingText,
  readyMessage,
  SLIP_WORDS,
} from '../words/order-text.ts';
import { HandOverPart, isOfPart, PartsGone } from './hand-over-part.tsx';
import { oneToSpareText } from './odds-text.ts';
import { OrderAsked } from './order-asked.tsx';
import { OrderDrawings } from './order-drawings.tsx';
import { type OrderFacts, orderName, orderPath } from './order-facts.ts';
import { WhatHoldsIt } from './order-limits.tsx';
import { HowSure } from './order-odds.tsx';
import { OrderProgress } from './order-progress.tsx';

export interface OrderPageProps {
  model: OrderModel;
  /** Its money; null of a part, whose money is that of the order it is of. */
  money: OrderMoneyModel | null;
  notice: DoneNotice | null;
  errors: FieldErrors;
  typed: Readonly<Record<string, string>>;
  /** What a form of it would do, asked about before it is saved: which form, by the end of its address. */
  asked: { form: string; effect: Effect } | null;
  /** The day a hold that begins today would last to. */
  holdUntil: string;
  /** What would bring a late order forward; undefined until it is asked for, null when that took too long. */
  limits?: readonly OrderLimit[] | null | undefined;
  /** How sure its day is; undefined until it is asked for, null when that could not be found out. */
  odds?: OddsFacts | null | undefined;
}

const END_WORDS = {
  'handed over': 'handed over',
  cancelled: 'cancelled',
  lapsed: 'the hold ran out',
};

/** "School garden: ready Sat 8 May, 2 days to spare.", "Tom Keane: handed over Sat 3 Apr." */
const orderAnswer = (order: OrderFacts, today: string): string => {
  if (order.status !== 'open') {
    const on = order.handedOverOn ? ` ${dayText(order.handedOverOn, today)}` : '';
    return `${orderName(order)}: ${END_WORDS[order.status]}${on}.`;
  }
  if (order.readyOn === null)
    return `${orderName(order)}: can't be made yet, because ${order.reason ?? 'no time is left for it'}.`;
  const due = dueOf(order);
  if (due && isNotFetched(order)) {
    const late = packedLateText(order, today);
    return late
      ? `${orderName(order)}: ${late}, and not handed over yet.`
      : `${orderName(order)}: ready, and not handed over by ${dayText(due, today)}.`;
  }
  const spare = due ? `, ${spareText(order.readyOn, due)}` : '';
  return `${orderName(order)}: ready ${dayText(order.readyOn, today)}${spare}.`;
};

/** What is put together may hold earth. */
const hasKits = ({ contents }: OrderFacts): boolean => contents.some(({ what }) => what.startsWith('kit:'));

const Fact: FC<{ word: string; children?: Child }> = ({ word, children }) => (
  <div>
    <dt>{word}</dt>
    <dd>{children}</dd>
  </div>
);

const promisedText = (promisedOn: string, heldUntil: string | null, today: string): string =>
  heldUntil
    ? `${dayText(promisedOn, today)}, until the end of ${dayText(heldUntil, today)}`
    : dayText(promisedOn, today);

const Facts: FC<{ order: OrderFacts; today: string }> = ({ order, today }) => (
  <dl class="facts">
    <Fact word="Order">{order.id}</Fact>
    <Fact word="For">
      <ul>
        {order.contents.map(({ name, quantity, unit }) => (
          <li>
            {quantityText(quantity, unit)} {name}
          </li>
        ))}
      </ul>
    </Fact>
    <Fact word="Wanted">{order.wantedOn ? dayText(order.wantedOn, today) : 'no day named'}</Fact>
    {order.notBefore && <Fact word="Not before">{dayText(order.notBefore, today)}</Fact>}
    <Fact word={order.heldUntil ? 'Held' : 'Promised'}>
      {order.promisedOn ? promisedText(order.promisedOn, order.heldUntil, today) : 'nothing yet'}
    </Fact>
    <Fact word="Could it be later?">{SLIP_WORDS[order.slip]}</Fact>
    {order.phone && (
      <Fact word="Phone">
        <a href={`tel:${order.phone.replace(/[^\d+]/g, '')}`}>{order.phone}</a>
      </Fact>
    )}
    {order.customerNote && <Fact word="Customer">{order.customerNote}</Fact>}
    {order.address && <Fact word="Goes to">{order.address}</Fact>}
    {order.note && <Fact word="Note">{order.note}</Fact>}
    {order.partOf && (
      <Fact word="Part of">
        <a href={orderPath(order.partOf)}>{order.partOf}</a>
      </Fact>
    )}
  </dl>
);

const Together: FC<{ model: OrderModel }> = ({ model: { order, together, toMend, spares, today } }) => (
  <section>
    <h2>How it comes together by today's plan</h2>
    <OrderProgress progress={together.progress} />
    <ul class="sentences">
      {together.inMoulds.length > 0 && <li>In moulds now: {listText(together.inMoulds)}.</li>}
      {toMend.length > 0 && (
        <li>
          To mend, and not counted until then: {listText(toMend.map(({ name, count }) => `${count} × ${name}`))}, on{' '}
          <a href="/today#to-mend">Today</a>.
        </li>
      )}
      {together.poured.map(({ date, pieces }) => (
        <li>
          {dayText(date, today)}: pour {listText(pieces.map(({ name, count }) => `${count} × ${name}`))}.
        </li>
      ))}
      {spares.map((spare) => (
        <li>{oneToSpareText(spare, today)}</li>
      ))}
      {order.packings.map((packing) => (
        <li>
          {dayText(packing.at.slice(0, 10), today)}, {clockText(packing.at)}: {packingText(packing, order)}.
        </li>
      ))}
      {order.readyOn && <li>{dayText(order.readyOn, today)}: can be handed over.</li>}
    </ul>
  </section>
);

const ActionForm: FC<{ id: string; to: string; form?: string; children?: Child }> = ({ id, to, form, children }) => (
  <form class="order-action" id={form} method="post" action={`${orderPath(id)}/${to}`}>
    {children}
  </form>
);

/** The form that a date is given in. */
const DATE_FORM = 'give-date';

const ANYWAY: Readonly<Record<string, string>> = {
  promise: 'Promise anyway',
  hold: 'Hold it anyway',
  'take-up': 'Take it up anyway',
};

const Asked: FC<OrderPageProps> = ({ asked, model: { order, today } }) =>
  asked && (
    <OrderAsked
      effect={asked.effect}
      today={today}
      form={DATE_FORM}
      action={`${orderPath(order.id)}/${asked.form}`}
      anyway={ANYWAY[asked.form] ?? 'Save anyway'}
    />
  );

/** "Sat 15 May keeps one session in hand.", "Sat 15 May is kept 9 in 10 times, by the yard's record." */
const tellText = (tell: DayToTell, today: string): string =>
  'promiseOdds' in tell
    ? `${dayText(tell.on, today)} is kept ${oddsWords(tell.promiseOdds)} times, by the yard's record.`
    : `${dayText(tell.on, today)} keeps ${inHandText(tell.sessionsInHand).toLowerCase()}.`;

/** In place of the form while its day is worked out, which takes it over. */
const PromiseComing: FC<OrderPageProps> = ({ model: { order } }) => (
  <section
    class="no-print"
    id="promise"
    data-hx-get={`${orderPath(order.id)}?wait=yes`}
    data-hx-trigger="load"
    data-hx-select="#promise"
    data-hx-target="this"
    data-hx-swap="outerHTML"
  >
    <h2>Promise or hold a date</h2>
    <p>Which date can be promised is being worked out. The page goes on by itself.</p>
  </section>
);

const PromiseForm: FC<OrderPageProps> = (props) => {
  const { order, tell, today } = props.model;
  const { errors, typed, holdUntil } = props;
  if (tell === 'coming' && typed.promisedOn === undefined) return <PromiseComing {...props} />;
  const told = tell === 'coming' ? null : tell;
  const written = (date: string | null) => (date === null ? '' : fullDayWords(date));
  const date = typed.promisedOn ?? written(order.promisedOn ?? told?.on ?? order.readyOn);
  const hint = told && tellText(told, today);
  return (
    <section class="no-print" id="promise">
      <h2>{order.promisedOn && !order.heldUntil ? 'Promise another date' : 'Promise or hold a date'}</h2>
      <ActionForm id={order.id} to="promise" form={DATE_FORM}>
        <input type="hidden" name="promisedOnWas" value={order.promisedOn ?? ''} />
        <input type="hidden" name="heldUntilWas" value={order.heldUntil ?? ''} />
        <div class="field-row">
          <DayField
            name="promisedOn"
            label="Date"
            {...(hint ? { hint } : {})}
            min={today}
            value={date}
            errors={errors}
          />
          <Button kind="main">Promise</Button>
        </div>
        <div class="field-row">
          <DayField
            name="heldUntil"
            label="Hold it until"
            min={today}
            value={typed.heldUntil ?? written(order.heldUntil ?? holdUntil)}
            errors={errors}
          />
          <button type="submit" class="button plain" formaction={`${orderPath(order.id)}/hold`}>
            Hold
          </button>
        </div>
      </ActionForm>
    </section>
  );
};

const HandOver: FC<OrderPageProps> = ({ model: { order }, errors }) => (
  <section class="no-print">
    <h2>{isPackedAtAll(order) ? 'Hand over' : 'Hand over or cancel'}</h2>
    <div class="buttons">
      <ActionForm id={order.id} to="hand-over">
        <Wrong message={errors.evenShort} name="evenShort" at="evenShort" />
        {errors.evenShort && (
          <label class="choice" for="evenShort">
            <input type="checkbox" id="evenShort" name="evenShort" value="yes" />
            <span>I have checked: hand it over anyway</span>
          </label>
        )}
        <Button kind={order.inYard ? 'main' : 'plain'}>Handed over</Button>
      </ActionForm>
      {!isPackedAtAll(order) && (
        <ActionForm id={order.id} to="cancel">
          <Button>Cancel order</Button>
        </ActionForm>
      )}
    </div>
  </section>
);

/** No session is long enough to pack all of it. */
const Split: FC<OrderPageProps> = ({ model: { order, parcels } }) =>
  parcels !== null && (
    <section class="no-print">
      <h2>Split it</h2>
      <p class="hint">
        No session is long enough to pack all of it{order.packings.length > 1 && ', so it is packed over several'}. As{' '}
        {countWord(parcels).toLowerCase()} orders each is packed in a session of its own, and may go out by itself: the
        first keeps its number, the others get numbers of their own, with the same customer and dates.
      </p>
      <ActionForm id={order.id} to="split">
        <Button>Split it into {countWord(parcels).toLowerCase()}</Button>
      </ActionForm>
    </section>
  );

/** What was cancelled or lapsed comes back under its number, with a date of today. */
const TakeUp: FC<OrderPageProps> = ({ model: { order, again, today }, errors, typed }) =>
  again && (
    <section class="no-print">
      <h2>Take it up again</h2>
      <p class="hint">
        It keeps its number, its customer, what it is for and its note.{' '}
        {again.promiseOn
          ? `By today's plan ${dayText(again.promiseOn, today)} could be promised.`
          : "By today's plan there is no date for it."}
      </p>
      <ActionForm id={order.id} to="take-up" form={DATE_FORM}>
        <div class="field-row">
          <DayField
            name="promisedOn"
            label="Promised"
            hint="Empty: no date is given."
            min={today}
            value={typed.promisedOn ?? (again.promiseOn ? fullDayWords(again.promiseOn) : '')}
            errors={errors}
          />
          <Button kind="main">Take it up again</Button>
        </div>
      </ActionForm>
    </section>
  );

/** To send, to change, to promise, to hand over: what can be done with an open order. */
const Actions: FC<OrderPageProps> = (props) => {
  const { order, today } = props.model;
  return (
    <>
      {isPackedAtAll(order) ? (
        <p>
          {packedText(order)} To change or cancel it, unpack it on <a href="/today">Today</a> first.
        </p>
      ) : (
        <div class="buttons">
          <ButtonLink href={`${orderPath(order.id)}/edit`}>Change order</ButtonLink>
        </div>
      )}
      <CopyMessage id={`message-of-${order.id}`} text={readyMessage(order, today)} name={orderName(order)} />
      <PromiseForm {...props} />
      <HandOver {...props} errors={isOfPart(props.typed) ? {} : props.errors} />
      <HandOverPart {...props} />
      <Split {...props} />
    </>
  );
};

/** How far it is, and what holds a late one up. */
const HowFar: FC<OrderPageProps> = ({ model, limits, odds }) => {
  const { order, today } = model;
  return (
    <>
      {isLate(order) && !order.packed && <WhatHoldsIt id={order.id} limits={limits} today={today} />}
      {order.readyOn && !order.packed && <Together model={model} />}
      {order.readyOn && !order.packed && <HowSure id={order.id} odds={odds} today={today} />}
    </>
  );
};

/** Where its money is, where its pieces come from, and the way back. */
const Elsewhere: FC<{ order: OrderFacts }> = ({ order: { id, partOf, status } }) => (
  <>
    {partOf && (
      <p class="no-print">
        Its money stands with <a href={`${orderPath(partOf)}#money`}>{partOf}</a>.
      </p>
    )}
    <p class="no-print way">
      <a href={`${TRACE}?${new URLSearchParams({ order: id })}`}>Where its pieces come from</a>
    </p>
    <p class="no-print way">
      <a href={status === 'open' ? '/orders' : '/orders/past'}>{status === 'open' ? 'All orders' : 'Past orders'}</a>
    </p>
  </>
);

export const OrderPage: FC<OrderPageProps> = (props) => {
  const { model, notice, errors } = props;
  const { order, today } = model;
  const open = order.status === 'open';
  return (
    <>
      {notice && <Notice notice={notice} today={today} back={orderPath(order.id)} />}
      <FormErrors errors={errors} lead="Nothing was changed." />
      <Asked {...props} />
      <div class={open && isLate(order) ? 'late-order' : undefined}>
        <Answer note={open && order.readyOn ? "By today's plan." : undefined}>{orderAnswer(order, today)}</Answer>
      </div>
      {open && order.readyOn && <RestsOn guessed={model.restsOn} />}
      <div class="order-parts">
        <div class="order-far">{open && <HowFar {...props} />}</div>
        <div class="order-do">
          <Facts order={order} today={today} />
          <PartsGone parts={model.parts} today={today} />
          {open && <Actions {...props} />}
          <TakeUp {...props} />
          {props.money && <OrderMoney money={props.money} errors={errors} typed={props.typed} />}
        </div>
        <div class="order-rest">
          {open && <OrderDrawings kits={model.drawings} />}
          {open && hasKits(order) && <EarthCaution />}
          <Elsewhere order={order} />
        </div>
      </div>
    </>
  );
};
