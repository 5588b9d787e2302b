import type { FC } from 'hono/jsx';
import { type FieldErrors, TextField } from '../parts/field.tsx';

interface ToldProps {
  values: Readonly<Record<string, string | undefined>>;
  errors: FieldErrors;
  /** Ends their ids where a page has them several times. */
  of?: string;
}

/** What was different in a batch; none of it has to be told. */
export const ToldFields: FC<ToldProps> = ({ values, errors, of = '' }) => {
  const field = (name: string) => ({ name, id: `${name}${of}`, value: values[name] ?? '', errors });
  return (
    <>
      <TextField
        {...field('bagDates')}
        label="Date on the bags"
        hint="As it is printed; several with a semicolon between them. Left alone, they are those that came first."
        width="line"
      />
      <div class="field-row">
        <TextField {...field('water')} label="Water in all" hint="Where not by the recipe." width="short" />
        <TextField {...field('mortarCelsius')} label="Mortar" hint="Its temperature." width="short" />
        <TextField {...field('airCelsius')} label="Air" hint="Its temperature." width="short" />
      </div>
      <div class="field-row">
        <TextField {...field('by')} label="Mixed by" width="short" />
        <TextField {...field('note')} label="Note" width="line" />
      </div>
    </>
  );
};
