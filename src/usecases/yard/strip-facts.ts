import type { FigureOf } from '../../../shared/figure.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import type { WorkRecord } from '../../../shared/work-record.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { ENOUGH_STRIPS, type MeasuredStrips, measuredStrips } from '../../engine/begin/measured-strips.ts';
import { temperatureSaid } from '../../engine/units/temperature.ts';
import { stripMinutesAt } from '../typed/mix-figures.ts';

/** At one temperature, how long a piece stays in its mould by the figures, and as it was measured. */
interface StripsAt {
  at: string;
  before: number;
  after: number;
}

/** What strips said of a mix, as pages have it. */
export interface StripFacts {
  mix: string;
  name: string;
  count: number;
  /** "9 °C to 21 °C", or one of them. */
  warmth: string;
  /** The mix's own temperature, and the minutes there: as measured, and by the figures. */
  at: string;
  minutes: MeasuredStrips['minutes'];
  figure: number;
  enough: boolean;
  guessed: boolean;
  /** What taking it over would change, at the mix's own temperature and on a cold day; none where the figures say so. */
  changes: readonly StripsAt[];
  /** Names what would be taken over. */
  key: string;
}

/** A cold day to say what a rate does by. */
const COLD_CELSIUS = 10;

/** Names figures of a mix as they were measured. */
export const stripKey = ({ demouldMinutes, activationKelvin }: MeasuredStrips): string =>
  `${demouldMinutes} ${activationKelvin}`;

const factsOf = (
  yard: YardFile,
  measured: MeasuredStrips,
  { guesses, system }: { guesses: readonly FigureOf[]; system: UnitSystem },
): StripFacts => {
  const mix = yard.mixes.find(({ id }) => id === measured.mix)!;
  const { demouldMinutes, activationKelvin, coldest, warmest } = measured;
  const text = (celsius: number) => temperatureSaid(celsius, system);
  const after = { ...mix, demouldMinutes, activationKelvin };
  const changes = [...new Set([mix.referenceCelsius, COLD_CELSIUS])].map((celsius) => ({
    at: text(celsius),
    ...{ before: stripMinutesAt(mix, celsius), after: stripMinutesAt(after, celsius) },
  }));
  return {
    ...{ mix: mix.id, name: mix.name, count: measured.count, at: text(mix.referenceCelsius) },
    warmth: text(coldest) === text(warmest) ? text(coldest) : `${text(coldest)} to ${text(warmest)}`,
    ...{ minutes: measured.minutes, figure: measured.figure, enough: measured.count >= ENOUGH_STRIPS },
    guessed: guesses.some((one) => one.kind === 'mix' && one.id === mix.id && one.figure === 'demouldMinutes'),
    changes: changes.filter((one) => one.before !== one.after),
    key: stripKey(measured),
  };
};

/** What strips say of when pieces are hard, of each mix that they say anything of. */
export const stripFacts = (
  yard: YardFile,
  records: readonly WorkRecord[],
  how: { guesses: readonly FigureOf[]; system: UnitSystem },
): StripFacts[] => measuredStrips(records, yard).map((measured) => factsOf(yard, measured, how));
