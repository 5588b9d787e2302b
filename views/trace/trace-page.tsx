import type { FC } from 'hono/jsx';
import type { TraceFound, TraceModel } from '../../src/usecases/trace/show-trace.ts';
import type { TraceTyped } from '../../src/usecases/typed/trace-form.ts';
import { Answer } from '../parts/answer.tsx';
import { Button, ButtonLink } from '../parts/button.tsx';
import { DayField } from '../parts/day-field.tsx';
import { dayText } from '../parts/day-text.ts';
import { FormErrors, SelectField, TextField } from '../parts/field.tsx';
import { orderText, TRACE, traceAnswer, unknownSentences } from './trace-text.ts';
import { TracedPieces } from './traced-pieces.tsx';

const BagForm: FC<{ model: TraceModel; typed: TraceTyped }> = ({ model: { bags, today }, typed }) => (
  <form class="field-row" method="get" action={TRACE} aria-label="Pieces of some bags">
    <SelectField
      name="bag"
      label="Bags"
      value={typed.bag ?? ''}
      options={[
        { value: '', text: bags.length === 0 ? 'No bag date is known yet' : 'Choose' },
        ...bags.map(({ id, on, name }) => ({ value: id, text: `${dayText(on, today)}, ${name}` })),
      ]}
    />
    <Button label="Find pieces of these bags">Find</Button>
  </form>
);

const MouldForm: FC<{ model: TraceModel; typed: TraceTyped }> = ({ model: { moulds, errors }, typed }) => (
  <form class="field-row" method="get" action={TRACE} aria-label="Pieces out of a mould">
    <SelectField
      name="mould"
      label="Mould"
      value={typed.mould ?? ''}
      options={[{ value: '', text: 'Choose' }, ...moulds.map((mould) => ({ value: mould, text: mould }))]}
    />
    <DayField name="from" label="Poured from" value={typed.from} errors={errors} />
    <DayField name="until" label="Until" value={typed.until} errors={errors} />
    <Button label="Find pieces out of this mould">Find</Button>
  </form>
);

const OrderForm: FC<{ typed: TraceTyped }> = ({ typed }) => (
  <form class="field-row" method="get" action={TRACE} aria-label="Pieces of an order">
    <TextField name="order" label="Order number" value={typed.order ?? ''} width="short" />
    <Button label="Find pieces of this order">Find</Button>
  </form>
);

const csvAddress = (typed: TraceTyped): string =>
  `${TRACE}.csv?${new URLSearchParams(Object.entries(typed).filter(([, value]) => value))}`;

const Orders: FC<{ found: TraceFound; today: string }> = ({ found: { orders, asked }, today }) =>
  orders.length === 0 || asked.by === 'order' ? null : (
    <section>
      <h2>Orders</h2>
      <ul class="sentences">
        {orders.map((order) => (
          <li>
            <a href={`/orders/${encodeURIComponent(order.id)}`}>
              {order.id}
              {order.customer === null ? '' : `, ${order.customer}`}
            </a>
            : {orderText(order, today)}.
          </li>
        ))}
      </ul>
    </section>
  );

const Found: FC<{ found: TraceFound; today: string; typed: TraceTyped }> = ({ found, today, typed }) => (
  <>
    {unknownSentences(found).map((sentence) => (
      <p class="warning">{sentence}</p>
    ))}
    <Orders found={found} today={today} />
    {found.pieces.length > 0 && (
      <section>
        <h2>Pieces, by their marks</h2>
        <TracedPieces pieces={found.pieces} today={today} />
        <p class="no-print way">
          <a href={csvAddress(typed)}>This list as a table (CSV)</a>
        </p>
      </section>
    )}
  </>
);

/** Where pieces came from and where they went: from an order back to its bags, and from bags or a mould to every order. */
export const TracePage: FC<{ model: TraceModel; typed: TraceTyped }> = ({ model, typed }) => (
  <>
    <FormErrors errors={model.errors} lead="Nothing was looked for yet. Everything you typed is still here." />
    {model.found ? (
      <Answer>{traceAnswer(model.found, model.today)}</Answer>
    ) : (
      <Answer note="From an order to its moulds, batches and bags; from bags or a mould to every piece and order.">
        Where did it come from, and where did it go?
      </Answer>
    )}
    {model.found && <Found found={model.found} today={model.today} typed={typed} />}
    <search class="trace-forms no-print">
      <h2>Look for</h2>
      <BagForm model={model} typed={typed} />
      <MouldForm model={model} typed={typed} />
      <OrderForm typed={typed} />
    </search>
    <p class="quiet">
      A piece is known by what is scratched into it: its mould, and when it was poured. Bags that nobody read the date
      off are those that came first, by the stock book.
    </p>
    <div class="buttons">
      <ButtonLink href="/pieces">Pieces in the yard</ButtonLink>
      <ButtonLink href="/moulds">Moulds</ButtonLink>
    </div>
  </>
);
