import type { FC } from 'hono/jsx';
import type { YardCasting, YardCastingsModel } from '../../src/usecases/yard/show-yard-castings.ts';
import { Button } from '../parts/button.tsx';
import { SelectField, Wrong } from '../parts/field.tsx';
import { Folded } from '../parts/folded.tsx';
import { shownIn } from '../parts/form-state.tsx';
import type { DoneNotice } from '../parts/notice.tsx';
import { CASTINGS, castingFacts } from './castings-page.tsx';
import { CutRows, MoreRows, PartRows, SheetRows } from './contents-rows.tsx';
import { contentsText } from './contents-text.ts';
import { EditPage } from './edit-page.tsx';
import { DrawnEntry } from './entry-facts.tsx';
import { EntryFigure, type EntryFormProps } from './entry-figure.tsx';
import { MEASURED, measuredHeading, measuredText } from './measured-text.ts';
import { longestOf, PieceDrawing } from './piece-drawing.tsx';
import { RemoveForm } from './remove.tsx';
import { entryPath, removePath } from './sections.ts';

type CastingFormProps = EntryFormProps<YardCastingsModel, YardCasting>;

/** Takes the form as far as it is filled in, and leads to a new mix and back. */
export const MIX_FIRST = `${CASTINGS}/new/mix-first`;

const SAID = { metric: '200, 0.2 m or 8 in', US: '8, 8 in or 200 mm' };
const LENGTHS = { metric: '600, 900, 1200', US: '2 ft, 3 ft, 4 ft' };

/** Without a mix it could not be saved. What was typed by then waits. */
const MixFirst: FC<{ error: string | undefined }> = ({ error }) => (
  <div class="field" id="mix">
    <p>A piece is cast from a mix, and none is there yet. Record the mix first: what you typed here is kept.</p>
    <div class="buttons">
      <Button kind="main" action={MIX_FIRST}>
        Add a mix
      </Button>
    </div>
    <Wrong message={error} name="mix" at="mix" />
  </div>
);

const What: FC<CastingFormProps> = (props) => {
  const { model, entry, state } = props;
  return (
    <>
      {!entry && (
        <EntryFigure
          {...props}
          name="lengths"
          label="Lengths"
          hint={`Several at once: ${LENGTHS[model.system]}. Empty: one piece, called as below.`}
          width="line"
        />
      )}
      <EntryFigure
        {...props}
        name="name"
        label="Name"
        hint={entry ? undefined : 'With lengths it goes before each of them. Empty: Panel.'}
        width="line"
      />
      {model.mixes.length > 0 && (
        <SelectField
          name="mix"
          label="Cast from"
          options={model.mixes.map(({ id, name }) => ({ value: id, text: name }))}
          value={shownIn(state, 'mix', entry?.texts.mix)}
          errors={state.errors}
        />
      )}
    </>
  );
};

const Size: FC<CastingFormProps> = (props) => {
  const density = props.model.densityKgPerM3;
  const perVolume =
    props.model.system === 'US' ? `${Math.round(density * 0.06242796)} lb a cubic foot` : `${density} kg a cubic metre`;
  return (
    <fieldset class="form">
      <legend>Size and weight</legend>
      <div class="yard-figures">
        {props.entry && <EntryFigure {...props} name="length" label="Long" />}
        <EntryFigure {...props} name="height" label="High" />
        <EntryFigure {...props} name="thickness" label="Thick" />
      </div>
      <p class="hint">
        As you would say it: {SAID[props.model.system]}. All empty for a piece that no kit is made from by size.
      </p>
      <EntryFigure
        {...props}
        name="kg"
        label="Weight of one"
        hint={`Empty: worked out from the size at ${perVolume}, as fresh sand mortar with its mesh. Weigh one and put it right.`}
      />
    </fieldset>
  );
};

const WORK = /^(prep|fill|strip|clean)Minutes$|^stripCrew$|^rackSpaces$/;

const Work: FC<CastingFormProps> = (props) => (
  <Folded
    title="Work on one"
    said={props.entry ? workText(props.entry) : 'worked out by the length until you say'}
    state={props.state}
    has={(field) => WORK.test(field)}
  >
    <div class="yard-figures">
      <EntryFigure {...props} name="prepMinutes" label="Minutes to set up" />
      <EntryFigure {...props} name="fillMinutes" label="Minutes to fill" />
    </div>
    <div class="yard-figures">
      <EntryFigure {...props} name="stripMinutes" label="Minutes to strip" />
      <EntryFigure {...props} name="cleanMinutes" label="Minutes to clean" />
    </div>
    {props.entry?.measured.map((time) => (
      <p class="hint">
        {measuredHeading(time)}: {measuredText(time)} <a href={MEASURED}>What the work takes</a>
      </p>
    ))}
    {!props.entry && <p class="hint">What stays empty is worked out by the length, and marked as to check.</p>}
    <div class="yard-figures">
      <EntryFigure {...props} name="stripCrew" label="People to strip" hint="Empty: one." />
      <EntryFigure {...props} name="rackSpaces" label="Rack places" hint="Empty: one." />
    </div>
  </Folded>
);

/** Rows of materials, cuts and pieces of sheets. */
const CONTENTS = /^(part|cut|sheet)/;

const Contents: FC<CastingFormProps> = ({ entry, model, state }) => {
  const rows = { state, stored: entry?.texts ?? {}, materials: model.materials };
  return (
    <Folded
      title="What goes into one, beside the mix"
      said={entry ? contentsText(entry.contents) || 'nothing recorded' : ''}
      state={state}
      has={(field) => CONTENTS.test(field)}
    >
      {model.materials.length === 0 ? (
        <p class="hint">
          Mesh, spacers, sleeves: once they are in the stock book. <a href="/yard/stock/new">Add a material</a>
        </p>
      ) : (
        <>
          <PartRows {...rows} filled={entry?.rows.parts ?? 0} />
          <CutRows {...rows} filled={entry?.rows.cuts ?? 0} />
          <SheetRows {...rows} filled={entry?.rows.sheets ?? 0} example={model.sizesExample} />
          <MoreRows />
        </>
      )}
    </Folded>
  );
};

const After: FC<{ casting: YardCasting }> = ({ casting }) => (
  <section>
    <h2>No longer cast</h2>
    <RemoveForm action={removePath(CASTINGS, casting.id)} name={casting.name} />
  </section>
);

/** "set up 12, fill 7, strip 8 and clean 6 minutes" */
const workText = ({ texts, guesses }: YardCasting): string =>
  `set up ${texts.prepMinutes}, fill ${texts.fillMinutes}, strip ${texts.stripMinutes} and clean ${texts.cleanMinutes} minutes${guesses.some((figure) => WORK.test(figure)) ? ', to check' : ''}`;

const Beside: FC<{ casting: YardCasting; castings: YardCastingsModel['castings'] }> = ({ casting, castings }) => (
  <DrawnEntry shows=", from the front and from the end, to scale" facts={castingFacts(casting)} of={casting.name}>
    {casting.sizeMm && (
      <PieceDrawing size={casting.sizeMm} longestMm={longestOf(castings.map(({ sizeMm }) => sizeMm))} />
    )}
  </DrawnEntry>
);

/** One piece, or several lengths of it at once: size, weight, work, and what goes into it. */
export const CastingForm: FC<CastingFormProps & { notice: DoneNotice | null; address: string }> = (props) => {
  const { entry: casting, state, model, notice, address } = props;
  return (
    <EditPage
      answer={casting ? casting.name : 'Add what you cast.'}
      {...(casting
        ? { after: <After casting={casting} />, beside: <Beside casting={casting} castings={model.castings} /> }
        : { save: 'Add it' })}
      state={state}
      today={model.today}
      action={entryPath(CASTINGS, casting?.id ?? 'new')}
      back={CASTINGS}
      notice={notice}
      address={address}
    >
      {model.mixes.length === 0 && <MixFirst error={state.errors.mix} />}
      <What {...props} />
      <Size {...props} />
      <Work {...props} />
      <Contents {...props} />
    </EditPage>
  );
};
