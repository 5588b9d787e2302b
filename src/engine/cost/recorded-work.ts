import type { PouredRecord } from '../../../shared/batch-record.ts';
import type { Casting } from '../../../shared/casting.ts';
import type { Mix } from '../../../shared/mix.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { WorkRecord } from '../../../shared/work-record.ts';

/** Minutes of one person's work, and whether they were measured: both ends of it were tapped. Else by the yard's figures. */
export interface RecordedMinutes {
  minutes: number;
  measured: boolean;
}

type Timed = { workedFrom?: string | undefined; tappedAt?: string | undefined };

const tapped = (from: string | undefined, to: string | undefined): number | null => {
  if (from === undefined || to === undefined) return null;
  const minutes = minuteOf(to) - minuteOf(from);
  return minutes > 0 ? minutes : null;
};

const orFigure = (measured: number | null, figure: number): RecordedMinutes => ({
  ...{ minutes: measured ?? figure, measured: measured !== null },
});

const timed = ({ workedFrom, tappedAt }: Timed = {}): number | null => tapped(workedFrom, tappedAt);

/** What each piece of a recorded batch took of mixing, filling and washing out: its share by weight where it was measured. */
export const minutesOfRecorded = (
  record: Pick<PouredRecord, 'mixedFrom' | 'tappedAt'>,
  { mix, castings }: { mix: Mix; castings: readonly Casting[] },
): RecordedMinutes[] => {
  const kg = castings.reduce((sum, casting) => sum + casting.kg, 0);
  const measured = tapped(record.mixedFrom, record.tappedAt);
  return castings.map((casting) => {
    const share = kg > 0 ? casting.kg / kg : 1 / castings.length;
    const alone = mix.mixMinutes * share + casting.fillMinutes;
    const { minutes, measured: isMeasured } = orFigure(measured === null ? null : measured * share, alone);
    return { minutes: (minutes + mix.washMinutes * share) * mix.crew, measured: isMeasured };
  });
};

type SetUp = Extract<WorkRecord, { kind: 'set up' }>;
type Stripped = Extract<WorkRecord, { kind: 'stripped' }>;

/** What setting its mould up took before a piece was poured, and stripping it. */
export const minutesAroundPour = (
  casting: Casting,
  { setUp, stripped }: { setUp: SetUp | undefined; stripped: Stripped | undefined },
): RecordedMinutes[] => {
  const strip = orFigure(timed(stripped), casting.stripMinutes);
  return [
    orFigure(timed(setUp), casting.cleanMinutes + casting.prepMinutes),
    { ...strip, minutes: strip.minutes * casting.stripCrew },
  ];
};
