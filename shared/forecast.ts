import { z } from 'zod';

const NO_PLACE = 'is no place on earth';

/** A place in degrees, north and east above zero, and an address by which the service can reach whoever asks it. */
export const forecastPlace = z.strictObject({
  latitude: z.number().min(-90, NO_PLACE).max(90, NO_PLACE),
  longitude: z.number().min(-180, NO_PLACE).max(180, NO_PLACE),
  contact: z.email('is no e-mail address').max(120, 'is too long'),
});
/** For which place a forecast is asked, once read. */
export type ForecastPlace = z.infer<typeof forecastPlace>;

const amount = z.object({ details: z.object({ precipitation_amount: z.number().min(0).optional() }).optional() });

/**
 * A forecast as MET Norway's Locationforecast 2.0 answers ("complete", GeoJSON): what holds at an instant, and what falls in the
 * hours after it; by the hour for two days, then every six hours. Source of the names: its documentation and general forecast format.
 */
export const forecastAnswer = z.object({
  properties: z.object({
    timeseries: z
      .array(
        z.object({
          time: z.iso.datetime(),
          data: z.object({
            instant: z.object({
              details: z.object({
                air_temperature: z.number(),
                wind_speed: z.number().min(0).optional(),
                relative_humidity: z.number().min(0).max(100).optional(),
              }),
            }),
            next_1_hours: amount.optional(),
            next_6_hours: z
              .object({
                details: z.object({
                  precipitation_amount: z.number().min(0).optional(),
                  air_temperature_min: z.number().optional(),
                  air_temperature_max: z.number().optional(),
                }),
              })
              .optional(),
          }),
        }),
      )
      .max(1000),
  }),
});
/** An answer once read: only what is asked of it. */
export type ForecastAnswer = z.infer<typeof forecastAnswer>;
