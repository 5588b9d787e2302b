import type { FC } from 'hono/jsx';
import type { FormState } from '../../src/usecases/plan/save-edit.ts';
import { TextField } from '../parts/field.tsx';
import { shownIn } from '../parts/form-state.tsx';

/** What a form of "Your yard" is filled in from: its texts by field, and the fields whose figure nobody has confirmed. */
interface FilledIn {
  texts: Readonly<Record<string, string>>;
  guesses: readonly string[];
}

export interface EntryFormProps<Model, Entry extends FilledIn = FilledIn> {
  model: Model;
  /** None while it is added. */
  entry: Entry | null;
  state: FormState;
}

interface EntryFigureProps {
  entry: FilledIn | null;
  state: FormState;
  name: string;
  label: string;
  hint?: string;
  width?: 'short' | 'line';
  list?: string;
}

/** One figure of an entry, marked while it is a guess: what is typed over it is none. */
export const EntryFigure: FC<EntryFigureProps> = ({ entry, state, name, label, hint, width = 'short', list }) => {
  const stored = entry?.texts[name];
  const value = shownIn(state, name, stored);
  const guess = value === stored && Boolean(entry?.guesses.includes(name));
  return <TextField {...{ name, label, hint, width, list, value, guess }} errors={state.errors} />;
};
