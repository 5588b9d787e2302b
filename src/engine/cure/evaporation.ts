/** What makes a wet surface dry: °C of the mortar and of the air, humidity of the air in percent, wind in km/h half a metre over it. */
export interface DryingWeather {
  mortarCelsius: number;
  airCelsius: number;
  humidityPercent: number;
  windKmh: number;
}

/**
 * Water that a wet surface loses, in kg/m² an hour, never below 0: 5 ((Tc + 18)^2.5 - r (Ta + 18)^2.5)(V + 4) 10^-6. Source: Uno
 * 1998, ACI Materials Journal 95-M34, the chart of ACI 305R as a formula. What is lost in truth may be 40 % more or less (Hover
 * 2020, ACI SP-338): a reason to cover, never a proof that none is needed.
 *
 * Example: mortar of 30 °C in air of 35 °C at 40 % and 20 km/h: `evaporation({ mortarCelsius: 30, airCelsius: 35,
 * humidityPercent: 40, windKmh: 20 })` is 0.934.
 */
export const evaporation = ({ mortarCelsius, airCelsius, humidityPercent, windKmh }: DryingWeather): number => {
  const pull = (celsius: number) => Math.max(0, celsius + 18) ** 2.5;
  const lost = pull(mortarCelsius) - (humidityPercent / 100) * pull(airCelsius);
  return Math.max(0, 5 * lost * (windKmh + 4) * 1e-6);
};

/**
 * From how much evaporation on a word is due, in kg/m² an hour: half for mortar that bleeds little, as thin panels are cast of
 * (ACI 305R, from memory), all where anything is (ACI 305R-10: 1.0, or 0.2 lb/ft² an hour).
 */
export const DRIES_FAST = { soon: 0.5, atOnce: 1 } as const;
