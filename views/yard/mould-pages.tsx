import type { FC } from 'hono/jsx';
import type { FormState } from '../../src/usecases/plan/save-edit.ts';
import type { YardMould, YardMouldsModel } from '../../src/usecases/yard/show-yard-moulds.ts';
import { MouldShape } from '../moulds/mould-shape.tsx';
import { Empty } from '../parts/answer.tsx';
import { Button } from '../parts/button.tsx';
import { SelectField, TextField, Wrong } from '../parts/field.tsx';
import { shownIn, tickedIn } from '../parts/form-state.tsx';
import { EditPage } from './edit-page.tsx';
import { DrawnEntry } from './entry-facts.tsx';
import { longestMould, YARD_MOULDS, yardMouldFacts } from './moulds-page.tsx';
import { RemoveForm } from './remove.tsx';
import { entryPath, removePath } from './sections.ts';

type Coated = Pick<YardMould, 'oilEveryTurns' | 'oilMinutes' | 'oilDryMinutes' | 'note'>;

const CoatFields: FC<{ state: FormState; coat: Coated | undefined; guesses?: readonly string[] }> = ({
  state,
  coat,
  guesses = [],
}) => {
  const figure = (name: 'oilEveryTurns' | 'oilMinutes' | 'oilDryMinutes', label: string, hint?: string) => (
    <TextField
      name={name}
      label={label}
      {...(hint ? { hint } : {})}
      width="short"
      value={shownIn(state, name, coat?.[name])}
      errors={state.errors}
      guess={guesses.includes(name)}
    />
  );
  return (
    <fieldset class="form">
      <legend>Sealing coat</legend>
      {figure('oilEveryTurns', 'Due after so many turns', 'Empty: never. Release oil before every pour is not meant.')}
      <div class="yard-figures">
        {figure('oilMinutes', 'Minutes to put it on')}
        {figure('oilDryMinutes', 'Minutes to dry')}
      </div>
    </fieldset>
  );
};

const Note: FC<{ state: FormState; note: string | null }> = ({ state, note }) => (
  <TextField
    name="note"
    label="Note"
    hint="Anything worth remembering when it is set up."
    width="full"
    value={shownIn(state, 'note', note)}
    errors={state.errors}
  />
);

interface NewMouldsProps {
  model: YardMouldsModel;
  state: FormState;
}

/** Several moulds of a kind at once. The sealing coat starts as it is for the last mould there is. */
export const NewMouldsPage: FC<NewMouldsProps> = ({ model, state }) => (
  <EditPage
    answer="Add moulds."
    note="Four moulds of 1100 are 1100 no. 1 to 1100 no. 4. Where there are some already, the numbers go on."
    state={state}
    today={model.today}
    action={entryPath(YARD_MOULDS, 'new')}
    back={YARD_MOULDS}
    save="Add the moulds"
  >
    {model.castings.length === 0 && <Empty>Nothing is cast yet. Say what you cast first: moulds are for that.</Empty>}
    <TextField name="count" label="How many" width="short" value={shownIn(state, 'count', '')} errors={state.errors} />
    <TextField
      name="kind"
      label="Painted on them"
      hint="The length, or whatever you call them: 1100."
      value={shownIn(state, 'kind', '')}
      errors={state.errors}
    />
    <SelectField
      name="casting"
      label="They make"
      options={[{ value: '', text: 'Choose' }, ...model.castings.map(({ id, name }) => ({ value: id, text: name }))]}
      value={shownIn(state, 'casting', '')}
      errors={state.errors}
    />
    <CoatFields state={state} coat={model.moulds.at(-1)} />
    <Note state={state} note={null} />
  </EditPage>
);

const MakesFields: FC<{ mould: YardMould; castings: YardMouldsModel['castings']; state: FormState }> = ({
  mould,
  castings,
  state,
}) => (
  <fieldset class="form yard-makes" id="makes">
    <legend>What it makes</legend>
    <Wrong message={state.errors.makes} name="makes" at="makes" />
    {castings.map(({ id, name }) => {
      const made = mould.makes.find(({ casting }) => casting === id);
      const [tick, change] = [`makes:${id}`, `change:${id}`];
      return (
        <div class="field-row">
          <label class="choice">
            <input type="checkbox" name={tick} value="yes" checked={tickedIn(state, tick, made !== undefined)} />
            <span>{name}</span>
          </label>
          <TextField
            name={change}
            label={`Minutes to change over to ${name}`}
            width="short"
            value={shownIn(state, change, made?.changeMinutes)}
            errors={state.errors}
          />
        </div>
      );
    })}
    <SelectField
      name="setFor"
      label="Now set for"
      options={castings.map(({ id, name }) => ({ value: id, text: name }))}
      value={shownIn(state, 'setFor', mould.setFor)}
      errors={state.errors}
    />
  </fieldset>
);

const After: FC<{ mould: YardMould }> = ({ mould }) => (
  <section>
    <h2>No longer there</h2>
    <p class="quiet">Scrapped, it takes no pour and stays on record. Remove one that was never there.</p>
    <div class="buttons">
      {mould.condition !== 'retired' && (
        <form method="post" action={`/moulds/${encodeURIComponent(mould.id)}/scrapped`}>
          <Button label={`Mark scrapped: ${mould.id}`}>Mark scrapped</Button>
        </form>
      )}
      <RemoveForm action={removePath(YARD_MOULDS, mould.id)} name={mould.id} />
      <a href="/moulds">How it stands today</a>
    </div>
  </section>
);

const Beside: FC<{ mould: YardMould; moulds: YardMouldsModel['moulds'] }> = ({ mould, moulds }) => (
  <DrawnEntry
    shows=", as long as it is beside the longest; the bar is turns left to its coat"
    facts={yardMouldFacts(mould)}
    of={mould.id}
  >
    <MouldShape
      fill="empty"
      painted={mould.id}
      mould={{
        lengthMm: mould.lengthMm,
        turnsBetweenCoats: mould.oilEveryTurns,
        turnsToSealing: mould.oilEveryTurns === null ? null : Math.max(0, mould.oilEveryTurns - mould.turnsSinceOil),
      }}
      longestMm={longestMould(moulds)}
    />
  </DrawnEntry>
);

interface MouldProps extends NewMouldsProps {
  mould: YardMould;
}

/** One mould: what it is called, makes, and needs. */
export const YardMouldPage: FC<MouldProps> = ({ model, mould, state }) => (
  <EditPage
    answer={mould.id}
    state={state}
    today={model.today}
    action={entryPath(YARD_MOULDS, mould.id)}
    back={YARD_MOULDS}
    after={<After mould={mould} />}
    beside={<Beside mould={mould} moulds={model.moulds} />}
  >
    <TextField name="id" label="Painted on it" value={shownIn(state, 'id', mould.id)} errors={state.errors} />
    <MakesFields mould={mould} castings={model.castings} state={state} />
    <CoatFields state={state} coat={mould} guesses={mould.guesses} />
    <TextField
      name="turnsSinceOil"
      label="Turns since the last sealing coat"
      width="short"
      value={shownIn(state, 'turnsSinceOil', mould.turnsSinceOil)}
      errors={state.errors}
    />
    <TextField
      name="serviceEveryTurns"
      label="Look it over after so many turns"
      hint="Ends, corners, screws, the face. Empty: nobody is reminded."
      width="short"
      value={shownIn(state, 'serviceEveryTurns', mould.serviceEveryTurns)}
      errors={state.errors}
    />
    <Note state={state} note={mould.note} />
  </EditPage>
);
