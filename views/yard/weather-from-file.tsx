import type { FC } from 'hono/jsx';
import { Button } from '../parts/button.tsx';
import { Field } from '../parts/field.tsx';
import { YARD } from './sections.ts';

export const WEATHER = `${YARD}/weather`;
export const WEATHER_FILE = `${WEATHER}/file`;

/** Chooses a file whose days fill in the form; nothing is saved by it. */
export const WeatherFromFile: FC<{ error?: string | undefined }> = ({ error }) => (
  <section>
    <h2>From a file</h2>
    <form class="form" method="post" action={WEATHER_FILE} enctype="multipart/form-data">
      <Field
        name="file"
        label="A CSV with a row a day, or a row an hour"
        hint="It fills in the days above, for you to look at. Nothing is saved by it."
        errors={{ file: error }}
      >
        <input id="file" name="file" type="file" accept=".csv,.txt,.tsv" aria-describedby="file-hint" />
      </Field>
      <div class="buttons">
        <Button>Read it</Button>
      </div>
    </form>
  </section>
);
