import type { FC } from 'hono/jsx';
import { isCutUp } from '../../shared/material.ts';
import type { YardMaterial, YardStockModel } from '../../src/usecases/yard/show-yard-stock.ts';
import { SelectField } from '../parts/field.tsx';
import { shownIn } from '../parts/form-state.tsx';
import { KeepingLines } from '../parts/keeping-lines.tsx';
import { amountText } from '../parts/quantity-text.ts';
import { EditPage } from './edit-page.tsx';
import { EntryFigure, type EntryFormProps } from './entry-figure.tsx';
import { RemoveForm } from './remove.tsx';
import { entryPath, removePath } from './sections.ts';
import { STOCK } from './stock-page.tsx';

type StockFormProps = EntryFormProps<YardStockModel, YardMaterial>;

const COUNTED_IN = {
  metric: ['bag', 'kg', 'g', 'l', 'm', 'm²', 'piece', 'stick', 'sheet', 'sachet'],
  US: ['bag', 'lb', 'oz', 'qt', 'ft', 'sq ft', 'piece', 'stick', 'sheet', 'sachet'],
};
const HINTS = {
  metric: { name: 'As on the bag: Fast-setting mortar, 25 kg.', unit: 'One of it: bag, kg, stick, piece.' },
  US: { name: 'As on the bag: Fast-setting mortar, 55 lb.', unit: 'One of it: bag, lb, stick, piece.' },
};

const What: FC<StockFormProps> = (props) => (
  <>
    <EntryFigure {...props} name="name" label="Name" width="line" hint={HINTS[props.model.system].name} />
    <EntryFigure {...props} name="unit" label="Counted in" hint={HINTS[props.model.system].unit} list="units" />
    <datalist id="units">
      {COUNTED_IN[props.model.system].map((unit) => (
        <option value={unit} />
      ))}
    </datalist>
  </>
);

/** How amounts of it are typed. */
const countedIn = ({ entry }: StockFormProps): string => (entry ? ` (${entry.shownUnit})` : '');

type Kept = Pick<YardMaterial, 'shownUnit'> & { keeping: NonNullable<YardMaterial['keeping']>; today: string };

/** What is there too long, by the days on which it came. */
const Keeping: FC<Kept> = ({ keeping, shownUnit, today }) => (
  <>
    <KeepingLines keeping={keeping} unit={shownUnit} today={today} />
    {keeping.undated > 0 && (
      <p class="hint">
        When {amountText(keeping.undated, shownUnit)} of it came is not recorded: look at the date on it.
      </p>
    )}
  </>
);

const Held: FC<StockFormProps> = (props) => (
  <fieldset class="form">
    <legend>In the yard</legend>
    <EntryFigure
      {...props}
      name="onHand"
      label={`${props.entry && isCutUp(props.entry) ? 'Whole ones there' : 'How much is there'}${countedIn(props)}`}
    />
    {props.entry?.stickMm !== undefined && (
      <EntryFigure
        {...props}
        name="offcuts"
        label="Offcuts"
        width="line"
        hint={`What is left of opened ones, by length: ${props.model.offcutsExample}. Empty: none.`}
      />
    )}
    {props.entry && (
      <p class="quiet way">
        <a href="/buying">Count it on the buying page</a>
      </p>
    )}
    <EntryFigure
      {...props}
      name="minimum"
      label={`Always keep${countedIn(props)}`}
      hint="Empty: none has to be left."
    />
    <EntryFigure {...props} name="shelfLifeDays" label="Keeps so many days" hint="Empty: it does not go off." />
    <EntryFigure
      {...props}
      name="openedDays"
      label="Keeps so many days once opened"
      hint="Empty: opening changes nothing. 0: only on that day."
    />
    <EntryFigure
      {...props}
      name="opensBy"
      label={`Opened so many at a time${countedIn(props)}`}
      hint="What one bag, tub or can holds. Empty: 1."
    />
    {props.entry?.keeping && <Keeping {...props.entry} keeping={props.entry.keeping} today={props.model.today} />}
  </fieldset>
);

const Bought: FC<StockFormProps> = (props) => (
  <fieldset class="form">
    <legend>Buying it</legend>
    <EntryFigure {...props} name="supplier" label="Supplier" width="line" list="suppliers" />
    <datalist id="suppliers">
      {props.model.suppliers.map((supplier) => (
        <option value={supplier} />
      ))}
    </datalist>
    <EntryFigure
      {...props}
      name="leadDays"
      label="Days to come"
      hint="0: had on the day. Empty: it cannot be bought, and what needs it waits once it is used up."
    />
    <EntryFigure {...props} name="pack" label={`Sold in packs of${countedIn(props)}`} hint="Empty: one by one." />
    <EntryFigure
      {...props}
      name="packPrice"
      label={`Price of a pack (${props.model.currency})`}
      hint="Sold one by one: of one."
    />
  </fieldset>
);

const MORE_FIGURES = ['kgPerUnit', 'breaks', 'perTurn', 'perBatch', 'buyAt'] as const;

/** What only some materials have: a weight to carry, cheaper prices, and being used up without a recipe. */
const More: FC<StockFormProps> = (props) => {
  const { state, entry, model } = props;
  const isOpen = MORE_FIGURES.some((name) => state.errors[name] || shownIn(state, name, entry?.texts[name]));
  return (
    <details class="message" open={isOpen}>
      <summary>Weight, cheaper by number, used up without a recipe</summary>
      <div class="form">
        <EntryFigure
          {...props}
          name="kgPerUnit"
          label={`One weighs (${model.system === 'metric' ? 'kg' : 'lb'})`}
          hint="For what is carried at once. Empty: it does not count."
        />
        <EntryFigure
          {...props}
          name="breaks"
          label={`Cheaper by number of packs (${model.currency})`}
          width="line"
          hint="From so many packs at once, the price of one: from 10 at 8.90; from 40 at 8.20."
        />
        <EntryFigure
          {...props}
          name="perTurn"
          label={`Used for each mould filled${countedIn(props)}`}
          hint="Release oil, caulk. It is taken from the stock book as batches are recorded; no plan waits for it."
        />
        <EntryFigure {...props} name="perBatch" label={`Used for each batch${countedIn(props)}`} hint="Gloves." />
        <EntryFigure
          {...props}
          name="buyAt"
          label={`Buy when down to${countedIn(props)}`}
          hint="Then it is on the buying list. No plan waits for it. Empty: only for what is planned."
        />
      </div>
    </details>
  );
};

const Cut: FC<StockFormProps> = (props) => {
  const example = props.model.system === 'metric' ? '3 m or 3000' : '10 ft or 120 in';
  const wrong = props.state.errors.stickMm ?? props.state.errors.kerfMm;
  return (
    <details class="message" open={Boolean(wrong ?? shownIn(props.state, 'stickMm', props.entry?.texts.stickMm))}>
      <summary>Sold as lengths that are cut</summary>
      <div class="form">
        <EntryFigure
          {...props}
          name="stickMm"
          label="One is so long"
          hint={`Rod, pipe: ${example}. Empty: it is not cut.`}
        />
        <EntryFigure {...props} name="kerfMm" label="A saw cut takes" hint="Empty: nothing, as with shears." />
      </div>
    </details>
  );
};

const COUNTED = [
  { value: '', text: 'What panels take of its unit' },
  { value: 'sheets', text: 'Whole sheets and their rests' },
];

const Sheets: FC<StockFormProps> = (props) => {
  const { errors } = props.state;
  const [wide, wrong] = [shownIn(props.state, 'sheetWidthMm', props.entry?.texts.sheetWidthMm), errors.sheetWidthMm];
  return (
    <details
      class="message"
      open={Boolean(wrong ?? errors.sheetLengthMm ?? errors.meshMm ?? errors.rests ?? errors.inSheets ?? wide)}
    >
      <summary>Sold as sheets or on a roll</summary>
      <div class="form">
        <div class="yard-figures">
          <EntryFigure {...props} name="sheetWidthMm" label="Wide" />
          <EntryFigure {...props} name="sheetLengthMm" label="Long" />
        </div>
        <EntryFigure
          {...props}
          name="meshMm"
          label="Openings of the mesh"
          hint="From wire to wire, each way: pieces are cut beside a wire. Empty: it is cut anywhere."
        />
        <EntryFigure
          {...props}
          name="rests"
          label="Rests there"
          width="line"
          hint={`What is left of opened ones, as it lies, across by along: ${props.model.restsExample}. Empty: none.`}
        />
        <SelectField
          name="inSheets"
          label="Plans count"
          options={COUNTED}
          value={shownIn(props.state, 'inSheets', props.entry?.texts.inSheets)}
          errors={errors}
          hint="Whole ones: it is counted in sheets or rolls, each piece is cut from a named one, and what is left is kept by its size."
        />
      </div>
    </details>
  );
};

const After: FC<{ material: YardMaterial }> = ({ material }) => (
  <section>
    <h2>No longer used</h2>
    <RemoveForm action={removePath(STOCK, material.id)} name={material.name} />
  </section>
);

/** One material: what it is, how much there is, how it is bought. */
export const StockForm: FC<StockFormProps> = (props) => {
  const { entry: material, state, model } = props;
  return (
    <EditPage
      answer={material ? material.name : 'Add a material.'}
      {...(material ? { after: <After material={material} /> } : { save: 'Add it' })}
      state={state}
      today={model.today}
      action={entryPath(STOCK, material?.id ?? 'new')}
      back={STOCK}
    >
      <What {...props} />
      <Held {...props} />
      <Bought {...props} />
      <Cut {...props} />
      <Sheets {...props} />
      <More {...props} />
    </EditPage>
  );
};
