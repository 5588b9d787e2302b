import { countText } from '../../shared/plural.ts';
import type { MixStrengthModel, StrengthStage } from '../../src/usecases/yard/show-mix-strength.ts';
import { dayText } from '../parts/day-text.ts';

type Cement = NonNullable<MixStrengthModel['cement']>;

/** As it stands on a bag: EN 1992-1-1, 3.1.2(6) for the classes, ASTM C150 for the types. */
export const CEMENT_NAMES: Readonly<Record<Cement, string>> = {
  R: '42.5 R, 52.5 N or 52.5 R',
  N: '32.5 R or 42.5 N',
  S: '32.5 N',
  I: 'Type I',
  III: 'Type III',
};

/** Where the curve of a cement stands. */
export const curveSource = (cement: Cement): string =>
  cement === 'I' || cement === 'III' ? 'ACI 209R-92, kept moist' : 'EN 1992-1-1';

const percent = (share: number): string => `${Math.floor(share * 100 + 1e-9)} %`;

/** "about 78 % of its 28-day strength"; never more than the curve says. */
export const strengthText = ({ strength }: Pick<StrengthStage, 'strength'>): string => {
  if ('share' in strength)
    return strength.share >= 1 ? 'its full 28-day strength' : `about ${percent(strength.share)} of its 28-day strength`;
  return strength.unknown === 'frost' ? 'not known: no curve holds in frost' : 'not known: too young for any curve';
};

const DAY_HOURS = 24;

/** "3 hours", "7 days": whole days from two on. */
export const ageText = (hours: number): string =>
  hours >= 2 * DAY_HOURS ? countText(Math.round(hours / DAY_HOURS), 'day') : countText(hours, 'hour');

/** "About 78 % of its 28-day strength by Mon 12 Apr." */
export const strengthAnswer = (stage: StrengthStage, today: string): string => {
  const by = `by ${dayText(stage.day, today)}`;
  if ('share' in stage.strength) {
    const has = strengthText(stage);
    return `${has.charAt(0).toUpperCase()}${has.slice(1)} ${by}.`;
  }
  return stage.strength.unknown === 'frost' ? `No curve holds in frost ${by}.` : `Too young for any curve ${by}.`;
};

/** What the drawing of a curve shows. */
export const strengthTitle = 'Share of its 28-day strength, day by day, and when it has it';

/** What a mark of the curve is. */
export const STAGE_MARKS: Readonly<Record<StrengthStage['at'], string>> = {
  stripped: 'stripped',
  out: 'fit to go out',
};

/** "half", "70 %" */
export const shareMark = (share: number): string => (share === 0.5 ? 'half' : percent(share));

export const shareText = (share: number): string => `${shareMark(share)} of its 28-day strength`;
