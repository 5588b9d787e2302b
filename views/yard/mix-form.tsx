import type { FC } from 'hono/jsx';
import type { YardMix } from '../../src/usecases/yard/show-yard-mixes.ts';
import { Caution } from '../parts/caution.tsx';
import { ChoiceField } from '../parts/field.tsx';
import { Folded } from '../parts/folded.tsx';
import { shownIn } from '../parts/form-state.tsx';
import { EditPage } from './edit-page.tsx';
import { DrawnEntry } from './entry-facts.tsx';
import { EntryFigure } from './entry-figure.tsx';
import { BagFields, type MixFormProps } from './mix-bag.tsx';
import { MixPatterns, MixTimes } from './mix-times.tsx';
import { PRESET_NAMES } from './mix-words.ts';
import { MIXES, mixFacts, newMixPath, PresetButtons } from './mixes-page.tsx';
import { RemoveForm } from './remove.tsx';
import { entryPath, removePath } from './sections.ts';

const STEPS = [
  { value: '1', text: 'Whole bags' },
  { value: '0.5', text: 'Half bags too' },
];

const stepsOf = (stored: string) =>
  STEPS.some(({ value }) => value === stored) ? STEPS : [...STEPS, { value: stored, text: `Steps of ${stored} bags` }];

const Mixing: FC<MixFormProps> = (props) => {
  const stored = props.entry?.texts.bagStep ?? '1';
  return (
    <fieldset class="form">
      <legend>Mixing it</legend>
      <EntryFigure {...props} name="maxBags" label="Bags at once, at most" hint="What fits the mixer." />
      <ChoiceField
        name="bagStep"
        label="It is mixed in"
        choices={stepsOf(stored)}
        value={shownIn(props.state, 'bagStep', stored)}
        errors={props.state.errors}
      />
      <EntryFigure {...props} name="crew" label="People" hint="Who mix and fill together." />
      <div class="yard-figures">
        <EntryFigure {...props} name="mixMinutes" label="Minutes to mix" />
        <EntryFigure {...props} name="washMinutes" label="Minutes to wash up" />
      </div>
      <EntryFigure
        {...props}
        name="workingMinutes"
        label="Minutes until it stiffens"
        hint="From the end of mixing. All of it has to be in the moulds by then."
      />
      <EntryFigure
        {...props}
        name="attendMinutes"
        label="Minutes someone stays by it"
        hint="To keep it wet after the last fill. Empty: nobody has to."
      />
    </fieldset>
  );
};

const Reference: FC<MixFormProps> = (props) => {
  const { errors } = props.state;
  const wrong = errors.referenceCelsius ?? errors.demouldMinutes ?? errors.activationKelvin;
  return (
    <details class="message" open={Boolean(wrong)}>
      <summary>More: the figures behind the two days</summary>
      <div class="form">
        <p class="hint">They follow from the two days. Change these in place of the days, not both.</p>
        <div class="yard-figures">
          <EntryFigure {...props} name="referenceCelsius" label="At a temperature of" />
          <EntryFigure {...props} name="demouldMinutes" label="stripped after minutes" />
        </div>
        <EntryFigure
          {...props}
          name="activationKelvin"
          label="How much warmth counts, in kelvin"
          hint="The activation energy by the gas constant: the Q of ASTM C1074."
        />
      </div>
    </details>
  );
};

const Stripping: FC<MixFormProps> = (props) => (
  <fieldset class="form">
    <legend>When it can be stripped</legend>
    <div class="yard-figures">
      <EntryFigure {...props} name="coldCelsius" label="On a cold day of" />
      <EntryFigure {...props} name="coldMinutes" label="after minutes" />
    </div>
    <div class="yard-figures">
      <EntryFigure {...props} name="warmCelsius" label="On a warm day of" />
      <EntryFigure {...props} name="warmMinutes" label="after minutes" />
    </div>
    <p class="hint">What lies between and beyond is worked out from the two.</p>
    <div class="yard-figures">
      <EntryFigure {...props} name="wetCureHours" label="Hours it is kept wet after that" hint="Empty: not at all." />
      <EntryFigure
        {...props}
        name="wetCureMinutes"
        label="Minutes of a session for that"
        hint="At the beginning of each session within these hours. Empty: Today reminds of it, no minutes are planned."
      />
    </div>
    <Reference {...props} />
  </fieldset>
);

const GoingOut: FC<MixFormProps> = (props) => (
  <fieldset class="form">
    <legend>When it is fit to go out, by plan</legend>
    <EntryFigure
      {...props}
      name="cureHours"
      label={`Hours at ${props.mix?.reference ?? props.model.reference}`}
      hint="Colder days take longer, warmer ones less. For planning only: it says nothing about the strength of a piece."
    />
  </fieldset>
);

const WEATHER = ['minCelsius', 'maxCelsius', 'protectHours'];

/** "not under 5 °C, not over 30 °C" */
const weatherText = ({ minCelsius, maxCelsius, protectHours }: Readonly<Record<string, string | undefined>>): string =>
  [
    ...(minCelsius ? [`not under ${minCelsius}`] : []),
    ...(maxCelsius ? [`not over ${maxCelsius}`] : []),
    ...(protectHours && protectHours !== '0' ? [`no frost for ${protectHours} hours`] : []),
  ].join(', ') || 'any';

const Weather: FC<MixFormProps> = (props) => (
  <Folded
    title="Weather it needs"
    said={weatherText(props.entry?.texts ?? {})}
    state={props.state}
    has={(field) => WEATHER.includes(field)}
  >
    <div class="yard-figures">
      <EntryFigure {...props} name="minCelsius" label="Not poured under" hint="Empty: no limit." />
      <EntryFigure {...props} name="maxCelsius" label="Not poured over" hint="Empty: no limit." />
    </div>
    <EntryFigure
      {...props}
      name="protectHours"
      label="Hours it is kept from frost"
      hint="So long after a pour no day may be colder than the first of these. Empty: not at all."
    />
  </Folded>
);

const PRESET_NOTE =
  'The figures are cautious guesses. Check your bag’s data sheet and put in what it says: what you change counts as said.';

const BACK_NOTE = 'Once it is added you are back at what you cast, with all that you typed there.';

const noteOf = ({ mix, preset, back }: MixFormProps): string | null => {
  const guessed = mix && mix.guesses.length > 0 ? "What is marked is to be checked. See your bag's data sheet." : null;
  return [back === null ? null : BACK_NOTE, preset ? PRESET_NOTE : guessed].filter(Boolean).join(' ') || null;
};

const answerOf = ({ mix, preset }: MixFormProps): string => {
  if (mix) return mix.name;
  return preset ? `Add a mix, starting from ${PRESET_NAMES[preset.key]}.` : 'Add a mix.';
};

const After: FC<MixFormProps> = ({ mix, preset, model, back }) => (
  <>
    <Caution kinds={['dust', 'wet']} />
    {mix ? (
      <section>
        <h2>No longer mixed</h2>
        <RemoveForm action={removePath(MIXES, mix.id)} name={mix.name} />
      </section>
    ) : (
      !preset && (
        <section>
          <h2>No figures at hand?</h2>
          <div class="buttons">
            <PresetButtons presets={model.presets} back={back} />
          </div>
        </section>
      )
    )}
  </>
);

const Beside: FC<{ mix: YardMix }> = ({ mix }) => (
  <DrawnEntry shows=": from the first bag to the strip, to time" facts={mixFacts(mix)} of={mix.name}>
    <MixPatterns />
    <MixTimes mix={mix} />
  </DrawnEntry>
);

/** One mix, in the order in which a maker thinks of it. */
export const MixForm: FC<Omit<MixFormProps, 'entry'>> = ({ mix, preset, state, model, back }) => {
  const props = { mix, preset, state, model, back, entry: mix ?? preset };
  const note = noteOf(props);
  return (
    <EditPage
      answer={answerOf(props)}
      {...(note ? { note } : {})}
      {...(mix ? {} : { save: 'Add it' })}
      state={state}
      today={model.today}
      action={mix ? entryPath(MIXES, mix.id) : newMixPath(back)}
      back={back ?? MIXES}
      after={<After {...props} />}
      {...(mix ? { beside: <Beside mix={mix} /> } : {})}
    >
      {preset && <input type="hidden" name="from" value={preset.key} />}
      <EntryFigure {...props} name="name" label="Name" width="line" />
      <BagFields {...props} />
      <Mixing {...props} />
      <Stripping {...props} />
      <GoingOut {...props} />
      <Weather {...props} />
    </EditPage>
  );
};
