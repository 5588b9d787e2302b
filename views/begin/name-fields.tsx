import type { FC } from 'hono/jsx';
import { described, Field, TextField } from '../parts/field.tsx';
import type { BeginProps } from './begin-props.ts';

/** What the yard is called and which clock it goes by. With script an empty zone is filled in with the machine's own. */
export const NameFields: FC<BeginProps> = ({ model, errors, typed }) => {
  const hint = 'City of your zone, such as Europe/Dublin or America/Chicago.';
  return (
    <>
      <TextField name="name" label="What is the yard called?" value={typed.name ?? ''} errors={errors} />
      <Field name="timeZone" label="Time zone" hint={hint} errors={errors}>
        <input
          {...described('timeZone', errors, hint)}
          type="text"
          list="zones"
          value={typed.timeZone ?? ''}
          autocomplete="off"
          data-own-zone
        />
      </Field>
      <datalist id="zones">
        {model.zones.map((zone) => (
          <option value={zone} />
        ))}
      </datalist>
    </>
  );
};
