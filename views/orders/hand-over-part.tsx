import type { FC } from 'hono/jsx';
import type { OrderModel } from '../../src/usecases/orders/show-order.ts';
import { Button } from '../parts/button.tsx';
import { dayText } from '../parts/day-text.ts';
import { type FieldErrors, TextField, Wrong } from '../parts/field.tsx';
import { contentsText } from '../words/order-text.ts';
import { orderPath } from './order-facts.ts';

/** What went out of an order before, each with its own number. */
export const PartsGone: FC<{ parts: OrderModel['parts']; today: string }> = ({ parts, today }) =>
  parts.length === 0 ? null : (
    <section>
      <h2>Gone out before</h2>
      <ul class="sentences">
        {parts.map(({ id, on, contents }) => (
          <li>
            {dayText(on, today)}: {contentsText(contents)}, as <a href={orderPath(id)}>{id}</a>.
          </li>
        ))}
      </ul>
    </section>
  );

interface HandOverPartProps {
  model: OrderModel;
  errors: FieldErrors;
  typed: Readonly<Record<string, string>>;
}

/** Whether what was typed is of this form: every such page has fields of the same names. */
export const isOfPart = (typed: HandOverPartProps['typed']): boolean =>
  Object.keys(typed).some((name) => /^part\d+$/.test(name));

/** Some of an order goes out before the rest, which keeps its number and its date. */
export const HandOverPart: FC<HandOverPartProps> = ({ model: { order, partable }, errors, typed }) => {
  if (partable.length === 0) return null;
  const isMine = isOfPart(typed);
  return (
    <div class="no-print" id="part">
      <details class="message" open={isMine}>
        <summary>Hand over part of it</summary>
        <p class="hint">
          What goes out now is an order of its own from then on, with its own number. The rest keeps this number and its
          date. Parts ordered by themselves stay with the rest.
        </p>
        <form class="form" method="post" action={`${orderPath(order.id)}/hand-over-part`}>
          <Wrong message={errors.part} name="part" />
          {partable.map(({ place, name, count }) => (
            <TextField
              name={`part${place}`}
              label={`${name}, of ${count}`}
              type="number"
              min={0}
              width="short"
              value={typed[`part${place}`] ?? ''}
              errors={errors}
            />
          ))}
          {isMine && errors.evenShort && (
            <>
              <Wrong message={errors.evenShort} name="evenShort" at="part-even-short" />
              <label class="choice" for="part-even-short">
                <input type="checkbox" id="part-even-short" name="evenShort" value="yes" />
                <span>I have checked: hand it over anyway</span>
              </label>
            </>
          )}
          <div class="buttons">
            <Button>Hand these over</Button>
          </div>
        </form>
      </details>
    </div>
  );
};
