import type { Child, FC } from 'hono/jsx';
import type { FormState } from '../../src/usecases/plan/save-edit.ts';
import type { WalkModel } from '../../src/usecases/stock/show-walk.ts';
import { AmountField, unitHint } from '../parts/amount-field.tsx';
import { Answer, Empty } from '../parts/answer.tsx';
import { BagsFields } from '../parts/bags-fields.tsx';
import { Button, ButtonLink } from '../parts/button.tsx';
import { FormErrors, SelectField, TextField } from '../parts/field.tsx';
import { shownIn } from '../parts/form-state.tsx';
import { type DoneNotice, Notice } from '../parts/notice.tsx';
import { amountText, isMeasure } from '../parts/quantity-text.ts';

/** Where all is counted on one walk. */
export const WALK = '/count';

interface WalkProps {
  model: WalkModel;
  state: FormState;
}

const SEEN = [
  { value: '', text: 'Not looked at' },
  { value: 'clean', text: 'Clean' },
  { value: 'dirty', text: 'To clean' },
  { value: 'damaged', text: 'Damaged' },
  { value: 'scrapped', text: 'Scrapped' },
];
const SEEN_FULL = SEEN.filter(({ value }) => value === '' || value === 'damaged' || value === 'scrapped');

const CONDITION: Readonly<Record<string, string>> = { ready: 'clean', dirty: 'to clean', damaged: 'damaged' };

/** "Empty, to clean"; "Holds Panel 900". */
const standsText = ({ piece, condition }: WalkModel['moulds'][number]): string => {
  const damaged = condition === 'damaged' ? ', damaged' : '';
  return piece === null ? `Empty, ${CONDITION[condition]}` : `Holds ${piece}${damaged}`;
};

/** One thing to look at: what it is and what the book has, beside what was seen. */
const Thing: FC<{ field: string; id: string; book: string; name: string; there: string; children?: Child }> = ({
  field,
  id,
  book,
  name,
  there,
  children,
}) => (
  <li class="walk-thing">
    <input type="hidden" name={`${field}Id`} value={id} />
    <input type="hidden" name={`${field}Book`} value={book} />
    <div>
      <h3>{name}</h3>
      <p class="quiet">{there}</p>
    </div>
    <fieldset class="walk-seen" aria-label={name}>
      {children}
    </fieldset>
  </li>
);

const Part: FC<{ name: string; none: string; count: number; children?: Child }> = ({ name, none, count, children }) => (
  <section>
    <h2>{name}</h2>
    {count === 0 ? <Empty>{none}</Empty> : <ul class="walk-things">{children}</ul>}
  </section>
);

const Moulds: FC<WalkProps> = ({ model, state }) => (
  <Part name="Moulds" count={model.moulds.length} none="No moulds are recorded.">
    {model.moulds.map((mould, row) => {
      const field = `mould${row}`;
      return (
        <Thing field={field} id={mould.id} book={mould.book} name={mould.id} there={standsText(mould)}>
          <SelectField
            name={field}
            label="It is"
            value={shownIn(state, field, '')}
            options={mould.piece === null ? SEEN : SEEN_FULL}
            errors={state.errors}
          />
        </Thing>
      );
    })}
  </Part>
);

const Pieces: FC<WalkProps> = ({ model, state }) => (
  <Part name="On the rack" count={model.pieces.length} none="Nothing is cast here yet.">
    {model.pieces.map(({ id, book, name, there }, row) => {
      const field = `pieces${row}`;
      return (
        <Thing field={field} id={id} book={book} name={name} there={`${there} by the book`}>
          <AmountField name={field} label="There are" counts value={shownIn(state, field, '')} errors={state.errors} />
        </Thing>
      );
    })}
  </Part>
);

type Material = WalkModel['stock'][number];

const thereText = ({ there, unit, offcuts }: Material): string => {
  const rests = offcuts === null || offcuts.field === '' ? '' : `; ${offcuts.called.toLowerCase()} ${offcuts.field}`;
  return `${offcuts === null ? amountText(there, unit) : `${there} whole`} by the book${rests}`;
};

const Stock: FC<WalkProps & { name: string; cut: boolean }> = ({ model, state, name, cut }) => {
  const own = model.stock
    .map((one, row) => ({ ...one, field: `stock${row}` }))
    .filter(({ offcuts }) => (offcuts !== null) === cut);
  return (
    <Part
      name={name}
      count={own.length}
      none={cut ? 'Nothing comes in lengths or sheets.' : 'The stock book is empty.'}
    >
      {own.map(({ field, ...one }) => (
        <Thing field={field} id={one.id} book={one.book} name={one.name} there={thereText(one)}>
          <AmountField
            name={field}
            label={cut ? 'Whole ones' : `${one.bags.length > 0 ? 'In all' : 'There are'}${unitHint(one.unit)}`}
            {...(one.bags.length > 0 ? { hint: 'Or by their dates.' } : {})}
            counts={!isMeasure(one.unit)}
            value={shownIn(state, field, '')}
            errors={state.errors}
          />
          <BagsFields
            bags={one.bags}
            of={field}
            unit={one.unit}
            today={model.today}
            typedIn={(name) => shownIn(state, name, '')}
            errors={state.errors}
          />
          {one.offcuts && (
            <TextField
              name={`${field}Offcuts`}
              label={one.offcuts.called}
              hint={`${one.offcuts.example}; 0 for none.`}
              value={shownIn(state, `${field}Offcuts`, '')}
              errors={state.errors}
            />
          )}
        </Thing>
      ))}
    </Part>
  );
};

/** Moulds, pieces, bags and sticks on one page: what the book has beside what is seen, saved at once. */
export const WalkPage: FC<WalkProps & { notice: DoneNotice | null }> = ({ model, state, notice }) => (
  <>
    {notice && <Notice notice={notice} today={model.today} back={WALK} />}
    <FormErrors errors={state.errors} lead="Nothing has been saved yet. Everything you typed is still here." />
    <Answer note="Fill in what you look at; what stays empty was not looked at. All of it is saved at once, and undone at once.">
      Walk round: moulds, rack, store.
    </Answer>
    <form class="walk" method="post" action={WALK} data-hx-post={WALK} data-hx-target="#page">
      <Moulds model={model} state={state} />
      <Pieces model={model} state={state} />
      <Stock model={model} state={state} name="Bags and the like" cut={false} />
      <Stock model={model} state={state} name="Sticks and sheets" cut />
      <div class="buttons">
        <Button kind="main">Save count</Button>
        <ButtonLink href="/buying" kind="quiet">
          Cancel
        </ButtonLink>
      </div>
    </form>
  </>
);
