import type { UnitSystem } from '../../../shared/units.ts';
import { MASS } from './mass.ts';
import { measuredBy } from './material-unit.ts';
import { exact, type Measure, unitNamed } from './measure.ts';
import { VOLUME } from './volume.ts';

/** Up to an amount, in the small unit, it is measured to such steps. */
interface Step {
  below: number;
  step: number;
}

/** What a jug or a kitchen scale is read by: a small unit, and a large one with its own figure or beside the small one. */
interface Tool {
  small: string;
  large: string;
  /** Small units in a large one. */
  ratio: number;
  /** "4 qt 8 fl oz", not "4.25 qt". */
  both: boolean;
  /** From so many small units over on, the next large one is filled and that much less taken: what is over is not counted up to it. */
  lessFrom: number;
  steps: readonly Step[];
}

const steps = (...pairs: [below: number, step: number][]): Step[] => pairs.map(([below, step]) => ({ below, step }));
const REST = Number.POSITIVE_INFINITY;

/** Common practice without a source: the marks of jugs and pails, and kitchen scales that show whole grams. */
const TOOLS: ReadonlyMap<Measure, Readonly<Record<UnitSystem, Tool>>> = new Map([
  [
    VOLUME,
    {
      metric: {
        ...{ small: 'ml', large: 'l', ratio: 1000, both: false, lessFrom: REST },
        steps: steps([20, 1], [100, 5], [1000, 10], [3000, 50], [REST, 100]),
      },
      US: {
        ...{ small: 'fl oz', large: 'qt', ratio: 32, both: true, lessFrom: 28 },
        steps: steps([1, 0.1], [4, 0.5], [32, 1], [REST, 2]),
      },
    },
  ],
  [
    MASS,
    {
      metric: {
        ...{ small: 'g', large: 'kg', ratio: 1000, both: false, lessFrom: REST },
        steps: steps([1, 0.1], [100, 1], [1000, 5], [10_000, 50], [REST, 100]),
      },
      US: {
        ...{ small: 'oz', large: 'lb', ratio: 16, both: true, lessFrom: REST },
        steps: steps([16, 0.1], [REST, 0.5]),
      },
    },
  ],
]);

/** To the nearest step, never to nothing. */
const stepped = (amount: number, list: readonly Step[]): number => {
  const { step } = list.find(({ below }) => amount < below) ?? { step: 1 };
  return exact(Math.max(1, Math.round(exact(amount / step))) * step);
};

const written = (amount: number, { small, large, ratio, both, lessFrom }: Tool): string => {
  if (amount < ratio) return `${amount} ${small}`;
  if (!both) return `${exact(amount / ratio)} ${large}`;
  const rest = exact(amount % ratio);
  if (rest >= lessFrom) return `${Math.ceil(amount / ratio)} ${large} less ${exact(ratio - rest)} ${small}`;
  return [`${Math.floor(amount / ratio)} ${large}`, ...(rest > 0 ? [`${rest} ${small}`] : [])].join(' ');
};

/**
 * An amount as it is measured out at the mixer, in the yard's units and to what jugs and kitchen scales show: no more
 * is promised than can be poured or weighed. Null where the unit is neither a volume nor a weight ("bag"), or there is
 * nothing to measure.
 *
 * Example: `measureOutText(9.4, 'l', 'metric')` is "9.4 l", `measureOutText(0.1796, 'l', 'metric')` is "180 ml",
 * `measureOutText(4.7, 'l', 'US')` is "5 qt less 2 fl oz".
 */
export const measureOutText = (quantity: number, unit: string, system: UnitSystem): string | null => {
  const known = measuredBy(unit);
  const tool = known && TOOLS.get(known.measure)?.[system];
  const size = tool && unitNamed(tool.small, known.measure)?.size;
  if (!tool || !size || !(quantity > 0)) return null;
  return written(stepped(exact((quantity * known.unit.size) / size), tool.steps), tool);
};
