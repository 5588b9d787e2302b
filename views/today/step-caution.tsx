import type { FC } from 'hono/jsx';
import type { ColdNights } from '../../src/usecases/today/cold-nights.ts';
import type { Drying } from '../../src/usecases/today/drying.ts';
import type { BatchStep, SessionStep } from '../../src/usecases/today/session-step.ts';
import { Mark } from '../parts/mark.tsx';
import { BAG_LIFTING, liftingText, pieceLiftText } from '../words/lifting-text.ts';
import { PLANNING_ONLY } from './work-words.ts';

const MIXING = [
  'Silica dust: mask on while you tip bags and mix dry.',
  'Goggles, long gloves and sleeves: wet mortar burns, and it is felt late. Rinse skin at once.',
  'Mixer on a residual-current device, no loose gloves or sleeves near it while it turns. Wash water stays out of drains.',
  'Stiffening: throw it away, never add water.',
  BAG_LIFTING,
];
/** Where it is weighed, and where it goes in. */
export const ACID = 'Acid powder hurts eyes: goggles on before it is opened.';

/** Where something is cut. */
export const CUTTING =
  'Goggles on to cut. Hard mortar is cut wet and nothing swept dry, for the silica dust. Galvanised rod is ground outside, in moving air. Cap wire ends.';
const RAGS = 'Rags with oil in them can catch fire by themselves: spread them flat outside.';
const CLEANING = 'Silica dust: moulds are scraped and wiped damp, and nothing swept dry. Mask on where it dusts.';
const TOPPLING = 'A panel on edge topples: lean it, strap it, and nobody stands on the falling side.';
const LOADING = 'Strap the load. Cap pin ends.';

/** Of the nights after a pour: "About 3 °C …". */
export const frostText = ({ celsius, byTheHour }: ColdNights): string => {
  const cold = byTheHour
    ? `Down to ${celsius} is expected in the nights after: that`
    : `About ${celsius} is expected in the days after: frost at night`;
  return `${cold} can ruin young pieces. Cover moulds and pieces against it, and pour into no frozen mould.`;
};

/** What to do where a wet surface dries fast: common practice, and ACI 305R. */
const DRYING: Readonly<Record<Drying, string>> = {
  soon: 'Sun and wind dry it fast today: cover each mould as soon as it is filled, and keep it in the shade.',
  atOnce:
    'It dries very fast today and may crack: wind break and shade up first, moulds damp, cool water, each mould covered the moment it is filled. Or begin earlier in the day.',
};

/** Whether something acid goes into a batch. Its name is all there is to know it by. */
export const hasAcid = ({ ingredients }: Pick<BatchStep, 'ingredients'>): boolean =>
  ingredients.some(({ name }) => /acid/i.test(name));

/** What can hurt at a kind of work, whatever the piece and the weather are. */
const atWork = (step: SessionStep): string[] => {
  switch (step.kind) {
    case 'batch':
      return [...MIXING, ...(hasAcid(step) ? [ACID] : [])];
    case 'coat':
      return [...(step.clean ? [CLEANING] : []), RAGS];
    case 'prep':
      return [
        ...(step.clean ? [CLEANING] : []),
        ...(step.cuts.length + step.fittings.length > 0 ? [CUTTING] : []),
        RAGS,
      ];
    case 'strip':
      return [TOPPLING, CLEANING];
    case 'pack':
      return [TOPPLING, LOADING];
    default:
      return [];
  }
};

/** What is lifted at a step that is heaviest, by name. */
const liftOf = (step: SessionStep) => (step.kind === 'strip' ? step.lift : step.kind === 'pack' ? step.heaviest : null);

const lifting = (step: SessionStep): string[] => {
  const lift = liftOf(step);
  if (!lift) return [];
  return [step.kind === 'pack' ? `${liftingText(lift)} (HSE INDG143.)` : pieceLiftText(lift)];
};

const byWeather = (step: SessionStep): string[] =>
  step.kind !== 'batch'
    ? []
    : [...(step.drying ? [DRYING[step.drying]] : []), ...(step.coldNights ? [frostText(step.coldNights)] : [])];

/**
 * What can hurt at a step, in a few words where the hand is. Common practice, no source but where one is named; the page says
 * below that data sheets and local rules come first.
 */
export const stepCautions = (step: SessionStep): string[] => [...lifting(step), ...atWork(step), ...byWeather(step)];

/** What can hurt, for paper: what it is said of, and all that is said of it. */
export interface PaperCaution {
  head: string;
  words: string;
}

const HEAVIEST_FIRST = ['more', 'two', 'one with care', 'one'];

/** Of all that is lifted what is hardest to lift. */
const hardest = (steps: readonly SessionStep[]) =>
  steps
    .flatMap((step) => liftOf(step) ?? [])
    .sort((a, b) => HEAVIEST_FIRST.indexOf(a.lifting) - HEAVIEST_FIRST.indexOf(b.lifting))[0];

const ON_PAPER: readonly { head: string; kinds: readonly SessionStep['kind'][] }[] = [
  { head: 'Mix', kinds: ['batch'] },
  { head: 'Coat, set up', kinds: ['coat', 'prep'] },
  { head: 'Strip, load', kinds: ['strip', 'pack'] },
];

/** The same for all steps of a session on paper, each thing once, and what is said there already not again; the weather stands beside it (`FrostLine`). */
export const paperCautions = (steps: readonly SessionStep[], saidAlready: readonly string[] = []): PaperCaution[] => {
  const said = new Set<string>(saidAlready);
  const once = (words: string): boolean => !said.has(words) && said.add(words) !== undefined;
  return ON_PAPER.flatMap(({ head, kinds }) => {
    const own = steps.filter(({ kind }) => kinds.includes(kind));
    const lift = hardest(own);
    const words = [
      ...(own.some(({ kind }) => kind === 'strip') ? [PLANNING_ONLY] : []),
      ...(lift ? [pieceLiftText(lift)] : []),
      ...own.flatMap(atWork).filter(once),
    ];
    return words.length === 0 ? [] : [{ head, words: words.join(' ') }];
  });
};

/** The same, beside the step that is due. */
export const StepCaution: FC<{ step: SessionStep }> = ({ step }) => {
  const cautions = stepCautions(step);
  return cautions.length === 0 ? null : (
    <div class="step-caution">
      <p>
        <Mark shape="triangle" /> <strong>Take care</strong>
      </p>
      <ul>
        {cautions.map((one) => (
          <li>{one}</li>
        ))}
      </ul>
    </div>
  );
};

interface PaperCautionsProps {
  steps: readonly SessionStep[];
  saidAlready?: readonly string[];
}

/** The same at the foot of a sheet of paper. */
export const PaperCautions: FC<PaperCautionsProps> = ({ steps, saidAlready = [] }) => (
  <p class="sheet-caution">
    {paperCautions(steps, saidAlready).map(({ head, words }) => (
      <>
        <strong>{head}:</strong> {words}{' '}
      </>
    ))}
    Data sheets and local rules come first.
  </p>
);
