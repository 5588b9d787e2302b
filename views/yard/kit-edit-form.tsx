import type { FC } from 'hono/jsx';
import type { FormState } from '../../src/usecases/plan/save-edit.ts';
import type { YardKit, YardKitsModel } from '../../src/usecases/yard/show-yard-kits.ts';
import { EarthCaution } from '../parts/earth-caution.tsx';
import { SelectField, TextField } from '../parts/field.tsx';
import { shownIn } from '../parts/form-state.tsx';
import { CutRows, MoreRows, PartRows, rowCount } from './contents-rows.tsx';
import { EditPage } from './edit-page.tsx';
import { DrawnEntry } from './entry-facts.tsx';
import { KITS, kitFacts } from './kits-page.tsx';
import { KitPieces, longestOf } from './piece-drawing.tsx';
import { RemoveForm } from './remove.tsx';
import { entryPath, removePath } from './sections.ts';

interface KitFormProps {
  model: YardKitsModel;
  /** None while it is added. */
  kit: YardKit | null;
  state: FormState;
}

const Pieces: FC<KitFormProps> = ({ model, kit, state }) => (
  <fieldset class="form">
    <legend>Pieces in it</legend>
    {model.castings.length === 0 && (
      <p class="hint">
        Nothing is cast yet. <a href="/yard/panels/new">Add what you cast</a>
      </p>
    )}
    {Array.from({ length: rowCount(state, 'piece', kit?.rows.pieces ?? 0) }, (_, row) => (
      <div class="yard-part">
        <SelectField
          name={`piece-${row}`}
          label={row === 0 ? 'Piece' : `Piece ${row + 1}`}
          options={[{ value: '', text: 'None' }, ...model.castings.map(({ id, name }) => ({ value: id, text: name }))]}
          value={shownIn(state, `piece-${row}`, kit?.texts[`piece-${row}`])}
          errors={state.errors}
        />
        <TextField
          name={`pieceCount-${row}`}
          label="How many"
          width="short"
          value={shownIn(state, `pieceCount-${row}`, kit?.texts[`pieceCount-${row}`])}
          errors={state.errors}
        />
      </div>
    ))}
  </fieldset>
);

const Parts: FC<KitFormProps> = ({ model, kit, state }) => {
  const rows = { state, stored: kit?.texts ?? {}, materials: model.materials };
  return (
    <fieldset class="form">
      <legend>Pins and other parts</legend>
      {model.materials.length === 0 ? (
        <p class="hint">
          Pins, clips, bolts: once they are in the stock book. <a href="/yard/stock/new">Add a material</a>
        </p>
      ) : (
        <>
          <PartRows {...rows} filled={kit?.rows.parts ?? 0} />
          <CutRows {...rows} filled={kit?.rows.cuts ?? 0} />
          <MoreRows />
        </>
      )}
    </fieldset>
  );
};

const After: FC<{ kit: YardKit }> = ({ kit }) => (
  <section>
    <h2>No longer sold</h2>
    <RemoveForm action={removePath(KITS, kit.id)} name={kit.name} />
  </section>
);

const Beside: FC<{ kit: YardKit }> = ({ kit }) => (
  <DrawnEntry shows=": its pieces from the front, to scale" facts={kitFacts(kit)} of={kit.name}>
    {kit.drawn.length > 0 && <KitPieces pieces={kit.drawn} longestMm={longestOf(kit.drawn)} />}
  </DrawnEntry>
);

/** One kit: its pieces, its pins and parts, and the minutes to pack it. */
export const KitForm: FC<KitFormProps> = (props) => {
  const { kit, state, model } = props;
  return (
    <EditPage
      answer={kit ? kit.name : 'Add a kit.'}
      {...(kit ? { after: <After kit={kit} />, beside: <Beside kit={kit} /> } : { save: 'Add it' })}
      state={state}
      today={model.today}
      action={entryPath(KITS, kit?.id ?? 'new')}
      back={KITS}
    >
      <TextField
        name="name"
        label="Name"
        hint="As customers call it: Planter 1200 x 600."
        value={shownIn(state, 'name', kit?.texts.name)}
        errors={state.errors}
      />
      <Pieces {...props} />
      <Parts {...props} />
      <TextField
        name="packMinutes"
        label="Minutes to pack it"
        hint="Empty or 0: it is handed over as it stands."
        width="short"
        value={shownIn(state, 'packMinutes', kit?.texts.packMinutes)}
        errors={state.errors}
      />
      <EarthCaution />
    </EditPage>
  );
};
