import type { StoredChange } from '../../../db/stores/change-store.ts';
import { dayNumber } from '../../../shared/time.ts';
import { HOURS_OF } from '../plan/hours-changed.ts';
import { promisesMoved } from '../plan/promises-moved.ts';
import { BETTER_PLAN, TIME_PASSED } from '../plan/record-remake.ts';

/** What can have held dates up, by what was recorded when they moved. */
export type HeldUpKind = 'moulds' | 'hours' | 'goods' | 'pieces' | 'work' | 'orders' | 'weather' | 'time' | 'figures';

/** How often it moved a date, and by how many days in all, each order by itself. */
export interface HeldUp {
  kind: HeldUpKind;
  changes: number;
  days: number;
}

/** By how the kind of a change begins. */
const KINDS: readonly (readonly [HeldUpKind, readonly string[]])[] = [
  ['moulds', ['mould ', 'moulds read in']],
  ['hours', [HOURS_OF, 'hours ', 'day of work', 'days off', 'fixed hours']],
  [
    'goods',
    [
      'delivery moved',
      'not coming',
      'not to be had',
      'arrived',
      'bought',
      'spoiled',
      'counted',
      'material ',
      'stock read in',
      'supplier',
    ],
  ],
  ['pieces', ['stripped', 'piece ', 'pieces counted', 'not hard yet']],
  [
    'work',
    [
      'poured',
      'as planned',
      'prepared',
      'mix',
      'coated',
      'packed',
      'unpacked',
      'not done',
      'left for',
      'planned anew',
      BETTER_PLAN,
    ],
  ],
  ['orders', ['order', 'date promised', 'date held', 'hold lapsed']],
  ['weather', ['weather', 'temperature']],
  ['time', [TIME_PASSED]],
];

const FIGURES = ['mix set', 'mix added', 'mix removed'];

const kindOf = (kind: string): HeldUpKind => {
  if (FIGURES.includes(kind)) return 'figures';
  return KINDS.find(([, beginnings]) => beginnings.some((one) => kind.startsWith(one)))?.[0] ?? 'figures';
};

/** Days by which a change moved orders with a date to later ones. */
const daysMoved = ({ before, after }: Pick<StoredChange, 'before' | 'after'>): number => {
  const withDate = new Set(after.flatMap(({ order, due }) => (due ? [order] : [])));
  return promisesMoved(before, after)
    .filter(({ order }) => withDate.has(order))
    .reduce((sum, { from, to }) => sum + (from && to ? Math.max(0, dayNumber(to) - dayNumber(from)) : 0), 0);
};

/** What held dates up, the most days first: by changes that nobody has undone. What moved nothing later is left out. */
export const heldUpOf = (changes: readonly Pick<StoredChange, 'kind' | 'before' | 'after'>[]): HeldUp[] => {
  const byKind = new Map<HeldUpKind, HeldUp>();
  for (const change of changes) {
    const days = daysMoved(change);
    // What is undone is left out: what takes its days back holds nothing up either.
    if (days === 0 || change.kind === 'undo') continue;
    const kind = kindOf(change.kind);
    const before = byKind.get(kind) ?? { kind, changes: 0, days: 0 };
    byKind.set(kind, { kind, changes: before.changes + 1, days: before.days + days });
  }
  return [...byKind.values()].sort((a, b) => b.days - a.days);
};
