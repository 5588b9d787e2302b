import type { FC } from 'hono/jsx';
import type { ColdNights } from '../../src/usecases/today/cold-nights.ts';
import type { Drying } from '../../src/usecases/today/drying.ts';
import type { SessionStep } from '../../src/usecases/today/session-step.ts';
import { Mark } from '../parts/mark.tsx';

const MIXING = [
  'Mask on while you tip and mix dry.',
  'Goggles, long gloves and sleeves: wet mortar burns, and it is felt late. Rinse skin at once.',
  'Mixer on a residual-current device, nothing loose near it while it turns. Wash water stays out of drains.',
];
const ACID = 'Acid powder hurts eyes: goggles on before it is opened.';

/** Where something is cut. */
export const CUTTING =
  'Goggles on to cut, and nothing swept dry. Galvanised rod is ground outside, in moving air. Cap wire ends.';
const RAGS = 'Rags with oil in them can catch fire by themselves: spread them flat outside.';
const LIFTING = 'Two lift what is heavy, or a trolley does, close to the body.';
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

/**
 * What can hurt at a step, in a few words where the hand is. Common practice, no source; the page says below that data sheets
 * and local rules come first.
 */
export const stepCautions = (step: SessionStep): string[] => {
  switch (step.kind) {
    case 'batch':
      return [
        ...MIXING,
        ...(step.ingredients.some(({ name }) => /acid/i.test(name)) ? [ACID] : []),
        ...(step.drying ? [DRYING[step.drying]] : []),
        ...(step.coldNights ? [frostText(step.coldNights)] : []),
      ];
    case 'coat':
      return [RAGS];
    case 'prep':
      return [...(step.cuts.length + step.fittings.length > 0 ? [CUTTING] : []), RAGS];
    case 'strip':
      return [LIFTING, TOPPLING];
    case 'pack':
      return [LIFTING, TOPPLING, LOADING];
    default:
      return [];
  }
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
