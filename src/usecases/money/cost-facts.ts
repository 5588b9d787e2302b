import type { CostKind } from '../../../shared/money.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { Cost, MissingFigure } from '../../engine/cost/cost.ts';
import { fromMinor } from '../../engine/cost/minor-units.ts';

/** What a cost is shown as: few enough parts to be read, in the yard's money. They come to the total. */
export const COST_GROUPS = ['materials', 'thrown away', 'work', 'moulds', 'sessions', 'scrap'] as const;
type CostGroup = (typeof COST_GROUPS)[number];

const GROUP_OF: Readonly<Record<CostKind, CostGroup>> = {
  ...{ mix: 'materials', goods: 'materials', cuts: 'materials' },
  ...{ 'thrown away': 'thrown away', 'cut waste': 'thrown away' },
  ...{ work: 'work', mould: 'moulds', session: 'sessions', rejects: 'scrap' },
};

/** A cost as pages speak of it. */
export interface CostFacts {
  groups: Readonly<Record<CostGroup, number>>;
  total: number;
}

/** The parts of a cost, as they are shown. */
export const costFacts = ({ parts, total }: Pick<Cost, 'parts' | 'total'>, currency: string): CostFacts => {
  const minor = Object.fromEntries(COST_GROUPS.map((group) => [group, 0])) as Record<CostGroup, number>;
  for (const [kind, group] of Object.entries(GROUP_OF)) minor[group] += parts[kind as CostKind];
  const groups = Object.fromEntries(COST_GROUPS.map((group) => [group, fromMinor(minor[group], currency)]));
  return { groups: groups as CostFacts['groups'], total: fromMinor(total, currency) };
};

/** Figures that nobody said: of which materials the price, of how many moulds the cost, and which others. */
export interface MissingFacts {
  prices: readonly string[];
  moulds: number;
  others: readonly Exclude<MissingFigure['what'], 'price' | 'mould'>[];
}

const OTHERS = ['wage', 'session', 'rejects'] as const;

/** What is missing in several costs, each said once. */
export const missingFacts = (
  costs: readonly Pick<Cost, 'missing'>[],
  { materials }: Pick<YardFile, 'materials'>,
): MissingFacts => {
  const all = costs.flatMap(({ missing }) => missing);
  const idsOf = (kind: MissingFigure['what']) => new Set(all.flatMap(({ what, id }) => (what === kind ? id : [])));
  const unpriced = idsOf('price');
  return {
    prices: materials.filter(({ id }) => unpriced.has(id)).map(({ name }) => name),
    moulds: idsOf('mould').size,
    others: OTHERS.filter((one) => all.some(({ what }) => what === one)),
  };
};
