import type { FC } from 'hono/jsx';
import type { FormState } from '../../src/usecases/plan/save-edit.ts';
import type { WeatherModel } from '../../src/usecases/yard/show-weather.ts';
import { dayText } from '../parts/day-text.ts';
import { TextField } from '../parts/field.tsx';
import { shownIn } from '../parts/form-state.tsx';
import type { DoneNotice } from '../parts/notice.tsx';
import { EditPage } from './edit-page.tsx';
import { YARD } from './sections.ts';
import { filledInText, weatherAnswer } from './temperature-words.ts';
import { WeatherForecast } from './weather-forecast.tsx';
import { WEATHER, WeatherFromFile } from './weather-from-file.tsx';

const FIELDS = [
  { what: 'low', label: 'Lowest' },
  { what: 'high', label: 'Highest' },
  { what: 'wind', label: 'Wind' },
  { what: 'humidity', label: 'Damp, %' },
  { what: 'rain', label: 'Rain' },
] as const;

const TIMES = [
  { name: 'coldestAt', label: 'Coldest at about' },
  { name: 'warmestAt', label: 'Warmest at about' },
] as const;

interface WeatherProps {
  model: WeatherModel;
  state: FormState;
  notice: DoneNotice | null;
  /** How many days a file or a forecast filled in; nothing of them has been saved. */
  filledIn?: number;
}

const Days: FC<WeatherProps> = ({ model, state }) => (
  <>
    {model.days.map((day) => (
      <fieldset class="weather-day">
        <legend>{dayText(day.date, model.today)}</legend>
        {FIELDS.map(({ what, label }) => {
          const name = `${what} ${day.date}`;
          return (
            <TextField
              {...{ name, label }}
              id={`${what}-${day.date}`}
              width="short"
              value={shownIn(state, name, day[what])}
              errors={state.errors}
            />
          );
        })}
      </fieldset>
    ))}
  </>
);

/** What the forecast says of the coming days: planned by the hour. */
export const WeatherPage: FC<WeatherProps> = (props) => (
  <EditPage
    answer={weatherAnswer(props.model)}
    note="As your forecast has it. These days are planned by the hour: how long a mix stays soft, when a piece may be stripped, frost at night. A day left empty is like its month. For planning only: on the day, the thermometer and the bag's data sheet decide."
    state={props.state}
    today={props.model.today}
    action={WEATHER}
    back={YARD}
    notice={props.notice}
    after={
      <>
        <WeatherForecast model={props.model} state={props.state} />
        <WeatherFromFile error={props.state.errors.file} />
      </>
    }
  >
    {props.filledIn !== undefined && <p class="message">{filledInText(props.filledIn)}</p>}
    <Days {...props} />
    <p class="hint">
      A number alone is{' '}
      {props.model.system === 'US' ? 'Fahrenheit, miles an hour and inches' : 'Celsius, km/h and millimetres'}. Wind,
      damp and rain plan nothing: they are asked for a word of warning when mortar dries too fast or is rained on.
    </p>
    <div class="field-row">
      {TIMES.map(({ name, label }) => (
        <TextField
          {...{ name, label }}
          width="short"
          value={shownIn(props.state, name, props.model[name])}
          errors={props.state.errors}
        />
      ))}
    </div>
  </EditPage>
);
