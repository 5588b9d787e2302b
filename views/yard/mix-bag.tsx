import type { FC } from 'hono/jsx';
import { SelectField, TextField } from '../parts/field.tsx';
import { shownIn } from '../parts/form-state.tsx';
import { MixFigure, type MixFormProps, storedIn } from './mix-fields.tsx';

const EXAMPLE = { metric: '27 kg', US: '60 lb' };

/** What one bag makes: by weight, or by what it fills. */
const Makes: FC<MixFormProps> = (props) => {
  const { model, state } = props;
  return (
    <>
      <MixFigure
        {...props}
        name="yieldKgPerBag"
        label="One bag makes, wet and in the mould"
        hint={`By weight: ${EXAMPLE[model.system]}.`}
        width="line"
      />
      {model.castings.length > 0 && (
        <>
          <div class="field-row">
            <TextField
              name="fills"
              label="Or one bag fills"
              width="short"
              value={shownIn(state, 'fills', '')}
              errors={state.errors}
            />
            <SelectField
              name="fillsOf"
              label="of"
              options={model.castings.map(({ id, name }) => ({ value: id, text: name }))}
              value={shownIn(state, 'fillsOf', model.castings[0]?.id)}
              errors={state.errors}
            />
          </div>
          <p class="hint">Filled in, it counts in place of the weight. Halves count: 1 1/2.</p>
        </>
      )}
    </>
  );
};

/** The bag, where the stock book has it not. */
const NewBag: FC<MixFormProps> = (props) => (
  <>
    <MixFigure
      {...props}
      name="bagName"
      label="The bag, if it is not in the stock book yet"
      hint="Rapid mortar, 25 kg. It is written down there too, one bag for a bag of the mix."
      width="line"
    />
    <TextField
      name="bagsThere"
      label="Bags in the yard"
      width="short"
      value={shownIn(props.state, 'bagsThere', '')}
      errors={props.state.errors}
    />
  </>
);

const SPARE_ROWS = 2;
const MOST_ROWS = 12;

const rowsOf = ({ mix, state }: MixFormProps): number => {
  const typed = Object.keys(state.typed ?? {}).filter((name) => name.startsWith('material-')).length;
  return Math.min(MOST_ROWS, Math.max(typed, (mix?.perBag.length ?? 0) + SPARE_ROWS));
};

const Row: FC<MixFormProps & { row: number }> = (props) => {
  const { model, state, row } = props;
  const [which, howMuch] = [`material-${row}`, `quantity-${row}`];
  const options = model.materials.map(({ id, name, unit }) => ({ value: id, text: `${name} (${unit})` }));
  return (
    <div class="field-row">
      <SelectField
        name={which}
        label={row === 0 ? 'Material' : `Material ${row + 1}`}
        options={[{ value: '', text: 'None' }, ...options]}
        value={shownIn(state, which, storedIn(props)[which])}
        errors={state.errors}
      />
      <MixFigure {...props} name={howMuch} label="How much" />
    </div>
  );
};

/** From one bag: what it makes and what goes with it. */
export const BagFields: FC<MixFormProps> = (props) => (
  <fieldset class="form">
    <legend>One bag</legend>
    <Makes {...props} />
    <MixFigure
      {...props}
      name="water"
      label="Water for it"
      hint="To be read at the mixer. It is not counted as stock."
    />
    {!props.mix && <NewBag {...props} />}
    {props.model.materials.length > 0 && (
      <>
        <p class="hint">From the stock book, for one bag: the bag itself, plasticiser, acid, fibre.</p>
        {Array.from({ length: rowsOf(props) }, (_, row) => (
          <Row {...props} row={row} />
        ))}
      </>
    )}
    {props.mix && (
      <p class="quiet">
        Something is not in the list? <a href="/yard/stock/new">Add a material</a>
      </p>
    )}
  </fieldset>
);
