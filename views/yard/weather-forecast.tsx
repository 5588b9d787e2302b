import type { FC } from 'hono/jsx';
import type { FormState } from '../../src/usecases/plan/save-edit.ts';
import type { WeatherModel } from '../../src/usecases/yard/show-weather.ts';
import { Button } from '../parts/button.tsx';
import { TextField, Wrong } from '../parts/field.tsx';
import { shownIn } from '../parts/form-state.tsx';
import { WEATHER } from './weather-from-file.tsx';

export const FORECAST = `${WEATHER}/forecast`;
export const FORECAST_ON = `${FORECAST}/on`;
export const FORECAST_OFF = `${FORECAST}/off`;

const FIELDS = [
  { name: 'latitude', label: 'Latitude, degrees north' },
  { name: 'longitude', label: 'Longitude, degrees east' },
  { name: 'contact', label: 'E-mail address' },
] as const;

/** Asks the service that was switched on, or says what switching it on means. */
export const WeatherForecast: FC<{ model: Pick<WeatherModel, 'forecast'>; state: FormState }> = ({
  model: { forecast },
  state,
}) => (
  <section>
    <h2>From a forecast</h2>
    {forecast ? (
      <>
        <p class="hint">
          It fills in the days above, for you to look at. Data from MET Norway, the Norwegian Meteorological Institute
          (CC BY 4.0), for {forecast.latitude}, {forecast.longitude}.
        </p>
        <Wrong message={state.errors.forecast} name="forecast" />
        <div class="buttons">
          <form method="post" action={FORECAST}>
            <Button>Ask the forecast</Button>
          </form>
          <form method="post" action={FORECAST_OFF}>
            <Button kind="quiet">Switch it off</Button>
          </form>
        </div>
      </>
    ) : (
      <details class="message" open={FIELDS.some(({ name }) => state.errors[name] !== undefined)}>
        <summary>Off. Switch it on?</summary>
        <p>
          When you ask, this program asks MET Norway, the Norwegian Meteorological Institute, for the forecast of your
          place. It sends the place to about a kilometre and your e-mail address, as their terms ask for. Nothing else
          leaves this machine, and nothing is asked until you do.
        </p>
        <form class="form" method="post" action={FORECAST_ON}>
          {FIELDS.map(({ name, label }) => (
            <TextField {...{ name, label }} value={shownIn(state, name, '')} errors={state.errors} />
          ))}
          <div class="buttons">
            <Button>Switch it on</Button>
          </div>
        </form>
      </details>
    )}
  </section>
);
