import type { Child, FC } from 'hono/jsx';
import { type ListPart, listPart } from '../../shared/list-part.ts';
import type { FormState } from '../../src/usecases/plan/save-edit.ts';
import type { WalkModel } from '../../src/usecases/stock/show-walk.ts';
import { AmountField, unitHint } from '../parts/amount-field.tsx';
import { Answer, Empty } from '../parts/answer.tsx';
import { BagsFields } from '../parts/bags-fields.tsx';
import { Button, ButtonLink } from '../parts/button.tsx';
import { FormErrors, SelectField, TextField } from '../parts/field.tsx';
import { shownIn } from '../parts/form-state.tsx';
import { type DoneNotice, Notice } from '../parts/notice.tsx';
import { OtherParts } from '../parts/other-parts.tsx';
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

type Mould = WalkModel['moulds'][number];

const Moulds: FC<{ part: ListPart<Mould>; state: FormState }> = ({ part, state }) => (
  <Part name="Moulds" count={part.all} none="No moulds are recorded.">
    {part.items.map((mould, row) => {
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

/** Moulds on one page of the walk. */
const MOULDS_SHOWN = 80;

/** The page of a walk that begins with a mould so many come before. */
export const walkFrom = (from: number): string => (from === 0 ? WALK : `${WALK}?from=${from}`);

interface WalkPageProps extends WalkProps {
  notice: DoneNotice | null;
  /** How many moulds are on the pages before. */
  from: number;
}

/**
 * Moulds, pieces, bags and sticks on one page: what the book has beside what is seen, saved at once. Where there are more moulds
 * than a page takes, it comes page by page, each saved for itself; the rack and the store are on the last.
 */
export const WalkPage: FC<WalkPageProps> = ({ model, state, notice, from }) => {
  const part = listPart(model.moulds, from, { most: MOULDS_SHOWN });
  const address = walkFrom(part.from);
  return (
    <>
      {notice && <Notice notice={notice} today={model.today} back={address} />}
      <FormErrors errors={state.errors} lead="Nothing has been saved yet. Everything you typed is still here." />
      <Answer note="Fill in what you look at; what stays empty was not looked at. All of it is saved at once, and undone at once.">
        Walk round: moulds, rack, store.
      </Answer>
      <OtherParts part={part} what="mould" href={walkFrom} />
      <form class="walk" method="post" action={address} data-hx-post={address} data-hx-target="#page">
        <Moulds part={part} state={state} />
        {part.after === null && (
          <>
            <Pieces model={model} state={state} />
            <Stock model={model} state={state} name="Bags and the like" cut={false} />
            <Stock model={model} state={state} name="Sticks and sheets" cut />
          </>
        )}
        {part.after !== null && (
          <p class="quiet">
            Save what you counted here before you go on. The rack and the store come after the last mould.
          </p>
        )}
        <div class="buttons">
          <Button kind="main">Save count</Button>
          <ButtonLink href="/buying" kind="quiet">
            Cancel
          </ButtonLink>
        </div>
      </form>
      <OtherParts part={part} what="mould" href={walkFrom} />
    </>
  );
};
