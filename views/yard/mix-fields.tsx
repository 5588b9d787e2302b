import type { FC } from 'hono/jsx';
import type { FormState } from '../../src/usecases/save-edit.ts';
import type { PresetShown, YardMix, YardMixesModel } from '../../src/usecases/show-yard-mixes.ts';
import { TextField } from '../parts/field.tsx';
import { shownIn } from '../parts/form-state.tsx';

export interface MixFormProps {
  model: YardMixesModel;
  /** None while it is added. */
  mix: YardMix | null;
  /** What an added one starts from; null from nothing. */
  preset: PresetShown | null;
  state: FormState;
}

/** What the form is filled in from. */
export const storedIn = ({ mix, preset }: MixFormProps): Readonly<Record<string, string>> =>
  mix?.texts ?? preset?.texts ?? {};

/** Fields whose figure is the rate with warmth: one guess in all of them. */
const RATE = ['coldMinutes', 'warmMinutes', 'demouldMinutes', 'activationKelvin'];
/** What is said by somebody, or chosen, and no figure of the bag. */
const NO_GUESS = ['name', 'bagName', 'bagStep', 'coldCelsius', 'warmCelsius', 'referenceCelsius'];

const isGuess = (props: MixFormProps, name: string): boolean => {
  const { mix, preset, state } = props;
  if (mix) return mix.guesses.includes(RATE.includes(name) ? 'demouldMinutes' : name);
  if (!preset || NO_GUESS.includes(name)) return false;
  return preset.texts[name] !== undefined && shownIn(state, name, preset.texts[name]) === preset.texts[name];
};

interface FigureProps extends MixFormProps {
  name: string;
  label: string;
  hint?: string;
  width?: 'short' | 'line';
}

/** One figure of a mix, marked while it is a guess. */
export const MixFigure: FC<FigureProps> = (props) => {
  const { name, label, hint, width = 'short', state } = props;
  return (
    <TextField
      {...{ name, label, width, errors: state.errors }}
      {...(hint ? { hint } : {})}
      value={shownIn(state, name, storedIn(props)[name])}
      guess={isGuess(props, name)}
    />
  );
};
