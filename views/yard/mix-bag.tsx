import type { FC } from 'hono/jsx';
import type { PresetShown, YardMix, YardMixesModel } from '../../src/usecases/yard/show-yard-mixes.ts';
import { SelectField, TextField } from '../parts/field.tsx';
import { shownIn } from '../parts/form-state.tsx';
import { PartRows } from './contents-rows.tsx';
import { EntryFigure, type EntryFormProps } from './entry-figure.tsx';

export interface MixFormProps extends EntryFormProps<YardMixesModel, YardMix | PresetShown> {
  /** None while it is added. */
  mix: YardMix | null;
  /** What an added one starts from; null from nothing. */
  preset: PresetShown | null;
  /** The form that was left to add this mix; null where none was. */
  back: string | null;
}

/** How heavy bags commonly are. */
const BAG = { metric: '25 kg', US: '55 lb' };
const EXAMPLE = { metric: '27 kg', US: '60 lb' };
const WATER = { metric: '4.7 l or 4700 ml', US: '5 qt or 160 fl oz' };

/** What one bag makes: by weight, or by what it fills. */
const Makes: FC<MixFormProps> = (props) => {
  const { model, state } = props;
  return (
    <>
      <EntryFigure
        {...props}
        name="yieldKgPerBag"
        label="One bag makes, wet and in the mould"
        hint={`By weight: ${EXAMPLE[model.system]}.`}
      />
      {model.castings.length > 0 && (
        <>
          <div class="yard-fills">
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
    <EntryFigure
      {...props}
      name="bagName"
      label="The bag, if it is not in the stock book yet"
      hint={`Fast-setting mortar, ${BAG[props.model.system]}. It is recorded there too, one bag for a bag of the mix.`}
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

/** From one bag: what it makes and what goes with it. */
export const BagFields: FC<MixFormProps> = (props) => (
  <fieldset class="form">
    <legend>One bag</legend>
    <Makes {...props} />
    <EntryFigure
      {...props}
      name="water"
      label="Water for it"
      hint={`${WATER[props.model.system]}. Worked out for each batch and shown at the mixer; it is not counted as stock.`}
    />
    {!props.mix && <NewBag {...props} />}
    {props.model.materials.length > 0 && (
      <>
        <p class="hint">From the stock book, for one bag: the bag itself, plasticiser, acid, fibre.</p>
        <PartRows
          state={props.state}
          stored={props.entry?.texts ?? {}}
          materials={props.model.materials}
          filled={props.mix?.perBag.length ?? 0}
        />
      </>
    )}
    {props.mix && (
      <p class="quiet">
        Something is not in the list? <a href="/yard/stock/new">Add a material</a>
      </p>
    )}
  </fieldset>
);
