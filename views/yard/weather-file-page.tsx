import type { FC } from 'hono/jsx';
import { WIND_UNITS } from '../../shared/temperature.ts';
import type { UnitSystem } from '../../shared/units.ts';
import type { WeatherTable } from '../../shared/weather-table.ts';
import type { WeatherChoice } from '../../src/usecases/files/weather-file.ts';
import { Answer } from '../parts/answer.tsx';
import { Button, ButtonLink } from '../parts/button.tsx';
import { FormErrors, SelectField } from '../parts/field.tsx';
import { WEATHER, WEATHER_FILE } from './weather-from-file.tsx';

const COLUMNS = [
  { name: 'date', label: 'The date' },
  { name: 'low', label: 'Lowest' },
  { name: 'high', label: 'Highest' },
  { name: 'wind', label: 'Wind' },
  { name: 'humidity', label: 'Damp, %' },
  { name: 'rain', label: 'Rain' },
] as const;

const TEMPERATURES: readonly { value: UnitSystem; text: string }[] = [
  { value: 'metric', text: 'Celsius' },
  { value: 'US', text: 'Fahrenheit' },
];
const RAINS: readonly { value: UnitSystem; text: string }[] = [
  { value: 'metric', text: 'millimetres' },
  { value: 'US', text: 'inches' },
];

interface WeatherFileProps {
  table: WeatherTable;
  choice: WeatherChoice;
  errors: Readonly<Record<string, string>>;
}

const FIRST_ROWS = 3;

/** Which column of a file says what: chosen by the maker where the names alone do not say. */
export const WeatherFilePage: FC<WeatherFileProps> = ({ table, choice, errors }) => (
  <>
    <FormErrors errors={errors} lead="The file was not read yet. Nothing was changed." />
    <Answer note="Bare numbers are taken in the units chosen here.">Which column is which?</Answer>
    <form class="form" method="post" action={WEATHER_FILE}>
      <input type="hidden" name="table" value={JSON.stringify(table)} />
      <div class="field-row">
        {COLUMNS.map(({ name, label }) => (
          <SelectField
            {...{ name, label, errors }}
            value={String(choice.columns[name] ?? '')}
            options={[
              { value: '', text: 'not there' },
              ...table.header.map((column, at) => ({ value: String(at), text: column || `column ${at + 1}` })),
            ]}
          />
        ))}
      </div>
      <div class="field-row">
        <SelectField name="temperatures" label="Temperatures in" value={choice.temperatures} options={TEMPERATURES} />
        <SelectField
          name="windUnit"
          label="Wind in"
          value={choice.wind}
          options={WIND_UNITS.map((unit) => ({ value: unit, text: unit }))}
        />
        <SelectField name="rainUnit" label="Rain in" value={choice.rain} options={RAINS} />
      </div>
      <div class="buttons">
        <Button kind="main">Fill in the days</Button>
        <ButtonLink href={WEATHER} kind="quiet">
          Cancel
        </ButtonLink>
      </div>
    </form>
    <section class="scroll" aria-label="The first rows of the file">
      <table>
        <caption>The first rows of the coming days</caption>
        <thead>
          <tr>
            {table.header.map((column) => (
              <th scope="col">{column}</th>
            ))}
          </tr>
        </thead>
        <tbody>
          {table.rows.slice(0, FIRST_ROWS).map((cells) => (
            <tr>
              {table.header.map((_, at) => (
                <td>{cells[at] ?? ''}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  </>
);
