import { guessesOfYard } from '../../../db/stores/figure-store.ts';
import { workRecords } from '../../../db/stores/work-record-store.ts';
import type { FigureOf } from '../../../shared/figure.ts';
import type { WorkRecord } from '../../../shared/work-record.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { ENOUGH_STRIPS } from '../../engine/begin/measured-strips.ts';
import { ENOUGH_MEASURED, type MeasuredTime, measuredTimes, withMeasured } from '../../engine/begin/measured-times.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import type { PageHead } from '../core/page-parts.ts';
import { currentPlan } from '../plan/make-plan.ts';
import { measuresOf } from '../typed/measures.ts';
import { type StripFacts, stripFacts } from './strip-facts.ts';

/** A figure that would be another one. */
export interface FigureChange extends FigureOf {
  /** Whose it is, by its name. */
  name: string;
  before: number;
  after: number;
}

/** A time that was measured, as the page has it. */
export interface MeasuredFacts extends Pick<MeasuredTime, 'what' | 'id' | 'count' | 'figure' | 'minutes'> {
  name: string;
  /** So many are measured that it may be taken over. */
  enough: boolean;
  /** Nobody has confirmed the figure yet. */
  guessed: boolean;
  /** What taking it over would change; none where the figures say so already. */
  changes: readonly FigureChange[];
}

/** What the work really takes. */
export interface MeasuredModel extends PageHead {
  enough: number;
  times: readonly MeasuredFacts[];
  /** Of fewer strips nothing is taken over. */
  enoughStrips: number;
  strips: readonly StripFacts[];
}

const FIGURES = ['mixMinutes', 'fillMinutes', 'prepMinutes', 'cleanMinutes', 'stripMinutes'] as const;

type Timed = { id: string; name: string } & Partial<Record<(typeof FIGURES)[number], number>>;

const changesOf = (kind: 'mix' | 'casting', before: readonly Timed[], after: readonly Timed[]): FigureChange[] =>
  before.flatMap((one, place) =>
    FIGURES.flatMap((figure) => {
      const [was, is] = [one[figure], after[place]?.[figure]];
      return was === undefined || is === undefined || was === is
        ? []
        : [{ kind, id: one.id, name: one.name, figure, before: was, after: is }];
    }),
  );

/** What a time can be of. */
export const namedIn = (
  { mixes, castings }: YardFile,
  what: MeasuredTime['what'],
): readonly { id: string; name: string }[] => (what === 'batch' || what === 'mix' ? mixes : castings);

/** What taking over a time that was measured would change. */
export const figureChanges = (yard: YardFile, measured: MeasuredTime): FigureChange[] => {
  const after = withMeasured(yard, measured);
  return [...changesOf('mix', yard.mixes, after.mixes), ...changesOf('casting', yard.castings, after.castings)];
};

/** What was measured by all that was recorded, with what it would change. */
export const measuredFacts = (
  yard: YardFile,
  records: readonly WorkRecord[],
  guesses: readonly FigureOf[],
): MeasuredFacts[] =>
  measuredTimes(records, yard).map((measured) => {
    const changes = figureChanges(yard, measured);
    const isGuess = (figure: FigureChange) =>
      guesses.some((one) => one.kind === figure.kind && one.id === figure.id && one.figure === figure.figure);
    const named = namedIn(yard, measured.what).find(({ id }) => id === measured.id);
    const enough = measured.count >= ENOUGH_MEASURED;
    return { ...measured, name: named?.name ?? measured.id, enough, guessed: changes.some(isGuess), changes };
  });

/** What the yard's work took, where both ends were tapped, beside the figures that dates rest on. */
export const showMeasured = async (context: UseCaseContext): Promise<MeasuredModel> => {
  const { yard } = await currentPlan(context);
  const { records, guesses, system } = await context.database.read(async (tx) => ({
    records: await workRecords(tx),
    guesses: await guessesOfYard(tx),
    system: (await measuresOf(tx)).system,
  }));
  return {
    ...{ yardName: yard.yard.name, today: today(yard.yard.timeZone, context.now), enough: ENOUGH_MEASURED },
    times: measuredFacts(yard, records, guesses),
    ...{ enoughStrips: ENOUGH_STRIPS, strips: stripFacts(yard, records, { guesses, system }) },
  };
};
