import type { Child, FC } from 'hono/jsx';
import { listText } from '../../shared/list-text.ts';
import { countText } from '../../shared/plural.ts';
import type { RefusedForm } from '../../src/usecases/plan/save-edit.ts';
import type { EmptyMould, FullMould, TodayModel } from '../../src/usecases/today/today-model.ts';
import { Button } from '../parts/button.tsx';
import { clockText, dayText } from '../parts/day-text.ts';
import { type FieldErrors, SelectField, TextField, Wrong } from '../parts/field.tsx';
import { DayAndTime } from './at-another-time.tsx';
import { isGoneOnIn, OtherPartsOfToday, partOfToday } from './part-of-today.tsx';
import { StripForms } from './strip-forms.tsx';
import { forText, mayText } from './today-text.ts';
import { Asked, refusedAt, WorkForm } from './work-form.tsx';
import { PLANNING_ONLY } from './work-words.ts';

const plannedText = ({ planned }: FullMould, today: string): string =>
  planned === null ? '' : ` Planned for ${dayText(planned.slice(0, 10), today)}, ${clockText(planned)}.`;

/** "900 no. 1 and 900 no. 2", or of more than three only how many. */
const fullText = (full: readonly FullMould[]): string =>
  full.length > 3 ? countText(full.length, 'piece') : listText(full.map(({ mould }) => mould));

const Full: FC<{ full: FullMould; model: TodayModel; refused: RefusedForm | null }> = ({ full, model, refused }) => (
  <li>
    <p>
      <strong>{full.mould}</strong>: {full.piece} {forText(full.customer)}, poured{' '}
      {dayText(full.filledAt.slice(0, 10), model.today)}, {clockText(full.filledAt)}. {mayText(full.mayFrom, model)}.
      {plannedText(full, model.today)}
    </p>
    <StripForms mould={full.mould} pieceKey={full.pieceKey} now={model.now} refused={refused} />
  </li>
);

/** Each has forms of its own. */
const FULL_SHOWN = 12;

/** Pieces in moulds that the list of today does not strip, behind a line: their time comes in another session. */
export const OtherFull: FC<{ model: TodayModel; refused: RefusedForm | null }> = ({ model, refused }) => {
  const { otherFull } = model;
  if (otherFull.length === 0) return null;
  const isMine = ({ mould, pieceKey }: FullMould) =>
    refused !== null && (refused.form.endsWith(mould) || refused.typed.step === pieceKey);
  const part = partOfToday(model, otherFull, { list: 'full', most: FULL_SHOWN, isMine });
  return (
    <details class="message" id="full" open={isGoneOnIn(model, 'full') || otherFull.some(isMine)}>
      <summary>In moulds now: {fullText(otherFull)}</summary>
      <OtherPartsOfToday list="full" part={part} what="piece" />
      <ul class="done-list">
        {part.items.map((full) => (
          <Full full={full} model={model} refused={refused} />
        ))}
      </ul>
      <OtherPartsOfToday list="full" part={part} what="piece" />
      <p class="hint">{PLANNING_ONLY}</p>
    </details>
  );
};

const Mould: FC<{ mould: EmptyMould; row: number; typed: RefusedForm['typed'] }> = ({ mould, row, typed }) => (
  <li>
    <input type="hidden" name={`mould${row}`} value={mould.mould} />
    <label class="choice">
      <input type="checkbox" name={`filled${row}`} value="yes" checked={typed[`filled${row}`] === 'yes'} />
      <span>{mould.mould}</span>
    </label>
    {mould.makes.length === 1 ? (
      <>
        <input type="hidden" name={`casting${row}`} value={mould.makes[0]!.casting} />
        <span class="quiet">{mould.makes[0]!.piece}</span>
      </>
    ) : (
      <select name={`casting${row}`} aria-label={`What ${mould.mould} made`}>
        {mould.makes.map(({ casting, piece }) => (
          <option value={casting} selected={(typed[`casting${row}`] ?? mould.setFor) === casting}>
            {piece}
          </option>
        ))}
      </select>
    )}
  </li>
);

/** Moulds of one batch are ticked among so many: what was filled together stands together. */
const MOULDS_SHOWN = 30;
/** Up to so many orders are a list to choose from; one of more is typed by its number. */
const ORDERS_LISTED = 60;

/** For whom it was poured. */
const WhomField: FC<{ orders: TodayModel['orders']; typed: string | undefined; errors: FieldErrors }> = ({
  orders,
  typed,
  errors,
}) => {
  const shared = { name: 'order', id: 'other-order', errors };
  if (orders.length > ORDERS_LISTED)
    return (
      <TextField
        {...shared}
        label="For order"
        hint={`Its number, such as ${orders[0]!.order}. Empty: for stock.`}
        width="short"
        value={typed ?? ''}
      />
    );
  const options = orders.map(({ order, customer }) => ({ value: order, text: `${customer} (${order})` }));
  return (
    <SelectField
      {...shared}
      label="For"
      {...(typed === undefined ? {} : { value: typed })}
      options={[{ value: '', text: 'Stock' }, ...options]}
    />
  );
};

/** A pour that the list does not have: forgotten to be written down, or done otherwise than planned. */
export const OtherPour: FC<{ model: TodayModel; refused: RefusedForm | null }> = ({ model, refused }) => {
  const mine = refusedAt(refused, 'other-pour');
  const { errors = {}, typed = {} } = mine ?? {};
  if (model.emptyMoulds.length === 0) return null;
  const part = partOfToday(model, model.emptyMoulds, {
    ...{ list: 'empty', most: MOULDS_SHOWN },
    isMine: ({ mould }) => mould === typed.mould0,
  });
  return (
    <details class="otherwise no-print" id="empty" open={mine !== null || isGoneOnIn(model, 'empty')}>
      <summary>Poured something that is not in the list</summary>
      <Asked to="poured" refused={mine} />
      <OtherPartsOfToday list="empty" part={part} what="mould" />
      <WorkForm to="poured" class="form">
        <input type="hidden" name="other" value="yes" />
        <input type="hidden" name="step" value={`other-${model.revision}`} />
        <fieldset class="field">
          <legend>Which moulds, from one batch</legend>
          <Wrong message={errors.pours} name="pours" />
          <ul class="mould-choices">
            {part.items.map((mould, row) => (
              <Mould mould={mould} row={row} typed={typed} />
            ))}
          </ul>
        </fieldset>
        <div class="field-row">
          <WhomField orders={model.orders} typed={typed.order} errors={errors} />
          <TextField
            name="bags"
            id="other-bags"
            label="Bags"
            hint="Empty: as the pieces need."
            type="number"
            step="any"
            width="short"
            value={typed.bags ?? ''}
            errors={errors}
          />
          <DayAndTime
            id="other"
            label="Full at"
            hint="Day and time empty: just now."
            orNow
            planned={null}
            refused={mine}
          />
        </div>
        <div class="buttons">
          <Button>Poured</Button>
        </div>
      </WorkForm>
    </details>
  );
};

/** An order that is packed, all of it or some, by name and with what there is to say of it; it can be unpacked again. */
const PackedOrder: FC<{ order: TodayModel['packed'][number]; children?: Child }> = ({
  order: { order, customer },
  children,
}) => (
  <li>
    <p>
      <a href={`/orders/${encodeURIComponent(order)}`}>{customer}</a>, order {order}
      {children}.
    </p>
    <WorkForm to="unpacked">
      <input type="hidden" name="order" value={order} />
      <Button label={`Unpack: ${customer}`}>Unpack</Button>
    </WorkForm>
  </li>
);

/** Orders of which some is packed: the rest is on the list of a later session. */
export const PackedInPart: FC<{ model: TodayModel }> = ({ model }) =>
  model.packedInPart.length === 0 ? null : (
    <section>
      <h2>Packed in part</h2>
      <ul class="done-list">
        {model.packedInPart.map((order) => (
          <PackedOrder order={order}>
            : {order.minutes} of {order.inAll} minutes are done
          </PackedOrder>
        ))}
      </ul>
    </section>
  );

const PACKED_SHOWN = 20;

/** Orders that are packed and wait for their customer. */
export const Packed: FC<{ model: TodayModel }> = ({ model }) => {
  const part = partOfToday(model, model.packed, { list: 'packed', most: PACKED_SHOWN });
  return model.packed.length === 0 ? null : (
    <section id="packed">
      <h2>Packed, to be handed over</h2>
      <ul class="done-list">
        {part.items.map((order) => (
          <PackedOrder order={order} />
        ))}
      </ul>
      <OtherPartsOfToday list="packed" part={part} what="order" />
    </section>
  );
};
