import type { Archive } from '../../../shared/archive.ts';
import { shortDayName } from '../../../shared/day-names.ts';
import { fullDayWords } from '../../../shared/day-words.ts';
import { type ExtraWindow, TASK_KINDS, type TaskKind, type WorkWindow } from '../../../shared/work.ts';
import { rhythmOfRule } from '../../engine/calendar/plain-rule.ts';
import { figureText, type NameOf, namesOf } from './figure-text.ts';
import { FIGURE_WORDS } from './figure-words.ts';

/** A figure that is another one. */
interface FigureChange {
  figure: string;
  from: string;
  to: string;
}

/** What is other of one kind of thing: names of what is new and what is gone, and which figures changed of what stays. */
export interface Difference {
  what: string;
  added: string[];
  gone: string[];
  changed: { name: string; figures: FigureChange[] }[];
}

type Entry = Record<string, unknown>;

const same = (one: unknown, other: unknown): boolean => JSON.stringify(one) === JSON.stringify(other);

const figureChanges = (before: Entry, after: Entry, nameOf: NameOf): FigureChange[] =>
  [...new Set([...Object.keys(before), ...Object.keys(after)])]
    .filter((figure) => !same(before[figure], after[figure]))
    .map((figure) => ({
      figure: FIGURE_WORDS[figure] ?? figure,
      from: figureText(before[figure], figure, nameOf),
      to: figureText(after[figure], figure, nameOf),
    }));

/** Lists whose entries have an id: they are followed from one to the other. */
const named = <E extends { id: string | number }>(
  what: string,
  [before, after]: readonly [readonly E[], readonly E[]],
  nameOf: NameOf,
  called: (entry: E) => string,
): Difference => {
  const was = new Map(before.map((entry) => [entry.id, entry]));
  const is = new Set(after.map(({ id }) => id));
  return {
    what,
    added: after.filter(({ id }) => !was.has(id)).map(called),
    gone: before.filter(({ id }) => !is.has(id)).map(called),
    changed: after.flatMap((entry) => {
      const old = was.get(entry.id);
      if (!old || same(old, entry)) return [];
      return [{ name: called(entry), figures: figureChanges(old as Entry, entry as Entry, nameOf) }];
    }),
  };
};

/** Lists whose entries are nothing but what they say: each is there or not. */
const counted = <E>(
  what: string,
  before: readonly E[],
  after: readonly E[],
  text: (entry: E) => string,
): Difference => {
  const without = (from: readonly E[], others: readonly E[]) => {
    const left = others.map((entry) => JSON.stringify(entry));
    return from.filter((entry) => {
      const at = left.indexOf(JSON.stringify(entry));
      if (at >= 0) left.splice(at, 1);
      return at < 0;
    });
  };
  return { what, added: without(after, before).map(text), gone: without(before, after).map(text), changed: [] };
};

const whole = (what: string, name: string, before: Entry, after: Entry, nameOf: NameOf): Difference => {
  const figures = figureChanges(before, after, nameOf);
  return { what, added: [], gone: [], changed: figures.length > 0 ? [{ name, figures }] : [] };
};

const MAY: Readonly<Record<TaskKind, string>> = {
  ...{ prep: 'setting up', batch: 'mixing and pouring', strip: 'stripping', pack: 'packing' },
};

/** "08:00" is "8:00" in a sentence. */
const spoken = (clock: string): string => clock.replace(/^0/, '');

const hoursText = ({ start, end, crew, allows }: Omit<ExtraWindow, 'date'>) => {
  const only = allows.length < TASK_KINDS.length ? `, only ${allows.map((kind) => MAY[kind]).join(', ')}` : '';
  return `${spoken(start)} to ${spoken(end)}${crew === 1 ? '' : `, ${crew} people`}${only}`;
};

/** "Wed, Sat", "Sat of every second week"; a rule that says more stays as it is written. */
const rhythmText = (window: WorkWindow): string => {
  const rhythm = rhythmOfRule(window);
  if (!rhythm) return window.rule;
  const text = rhythm.days.map(shortDayName).join(', ');
  return rhythm.everyWeeks === 2 ? `${text} of every second week` : text;
};

const workText = ({ from, until, ...window }: WorkWindow) =>
  `${rhythmText({ ...window, from })}, ${hoursText(window)}, from ${fullDayWords(from)}${until ? ` until ${fullDayWords(until)}` : ''}`;

/** Whether it is the demo is no figure of the yard. */
const yardOf = ({ yard: { now: _now, ...yard }, units, english, habits, costs }: Archive): Entry => {
  const { demo: _demo, ...kept } = habits ?? {};
  return { ...yard, units, english, ...kept, ...costs };
};

const lists = (before: Archive, after: Archive, nameOf: NameOf): Difference[] => [
  counted('Hours', before.work, after.work, workText),
  counted('Days off', before.closed, after.closed, fullDayWords),
  counted('Hours of single days', before.extra, after.extra, (one) => `${fullDayWords(one.date)}, ${hoursText(one)}`),
  counted(
    'Temperatures',
    before.temperatures,
    after.temperatures,
    ({ from, celsius }) => `${celsius} °C from ${fullDayWords(from)}`,
  ),
  counted(
    'Weather',
    before.weather?.days ?? [],
    after.weather?.days ?? [],
    ({ date, minCelsius, maxCelsius }) => `${minCelsius} to ${maxCelsius} °C on ${fullDayWords(date)}`,
  ),
  counted('Bought', before.incoming, after.incoming, ({ material, quantity, on, arrivedOn }) => {
    const when = arrivedOn ? `arrived ${fullDayWords(arrivedOn)}` : `due ${fullDayWords(on)}`;
    return `${quantity} × ${nameOf(material)}, ${when}`;
  }),
  counted(
    'Pieces in the yard',
    before.finished,
    after.finished,
    ({ count, casting, order }) => `${count} × ${nameOf(casting)}${order ? ` for ${order}` : ''}`,
  ),
  counted(
    'Poured and not stripped',
    before.inMould,
    after.inMould,
    ({ mould, casting }) => `${nameOf(casting)} in ${mould}`,
  ),
  counted(
    'Pieces to mend',
    before.toMend ?? [],
    after.toMend ?? [],
    ({ mould, casting }) => `${nameOf(casting)} from ${mould}`,
  ),
];

const byCount = (what: string, before: number, after: number, changed: boolean): Difference => ({
  ...{ what, added: [], gone: [] },
  changed: changed
    ? [{ name: 'Entries', figures: [{ figure: 'in all', from: String(before), to: String(after) }] }]
    : [],
});

/** Tasks that have begun and are not recorded; set-ups go with their batches. */
const notRecorded = ({ unanswered }: Archive): number => {
  if (!unanswered) return 0;
  const { batches, strips, orders, coats = [] } = unanswered;
  return batches.length + strips.length + orders.length + coats.length;
};

const quiet = (before: Archive, after: Archive): Difference[] => {
  const figures = ({ guesses, typed }: Archive) => guesses.length + typed.length;
  const figuresDiffer = !same([before.guesses, before.typed], [after.guesses, after.typed]);
  return [
    byCount(
      'Fixed pours',
      before.keep?.pours.length ?? 0,
      after.keep?.pours.length ?? 0,
      !same(before.keep, after.keep),
    ),
    byCount('Figures to check, and figures as they were typed', figures(before), figures(after), figuresDiffer),
    byCount(
      'Work not recorded yet',
      notRecorded(before),
      notRecorded(after),
      !same(before.unanswered, after.unanswered),
    ),
    byCount(
      'Batches, strips and marks',
      before.workDone?.length ?? 0,
      after.workDone?.length ?? 0,
      !same(before.workDone, after.workDone),
    ),
    byCount(
      'Lines of the stock book',
      before.stockBook?.length ?? 0,
      after.stockBook?.length ?? 0,
      !same(before.stockBook, after.stockBook),
    ),
    byCount(
      'Prices and payments of orders',
      before.orderMoney?.length ?? 0,
      after.orderMoney?.length ?? 0,
      !same(before.orderMoney, after.orderMoney),
    ),
    byCount('What was done', before.log.changes.length, after.log.changes.length, !same(before.log, after.log)),
  ];
};

/** Nothing is new, gone or another figure, and still something is other. */
const OTHER_ORDER: Difference = {
  ...{ what: 'Lists', added: [], gone: [] },
  changed: [{ name: 'All', figures: [{ figure: 'their order', from: 'as it is', to: 'another one' }] }],
};

const asSaid = ({ yard: _yard, habits: _habits, ...rest }: Archive) => rest;

/** They are known by their names. */
const suppliersIn = ({ suppliers = [] }: Archive) => suppliers.map(({ name, ...facts }) => ({ id: name, ...facts }));

/** Everything that is other after a file was read in, by kind, in a maker's order. */
export const archiveDifferences = (before: Archive, after: Archive): Difference[] => {
  const nameOf = namesOf(before, after);
  const both = <K extends keyof Archive>(key: K) => [before[key], after[key]] as [Archive[K], Archive[K]];
  const people = new Map([...before.customers, ...after.customers].map(({ id, name }) => [id, name]));
  const orders = both('orders').map((list) =>
    list.map((order) => ({
      ...order,
      customer: order.customer === undefined ? undefined : people.get(order.customer),
    })),
  );
  type Named = (typeof orders)[number];
  const [was = [], is = []] = orders as [Named, Named];
  const differences = [
    whole('The yard', after.yard.name, yardOf(before), yardOf(after), nameOf),
    named('Orders', [was, is], nameOf, ({ id, customer }) => (customer ? `${id} ${customer}` : id)),
    named('Customers', both('customers'), nameOf, ({ name }) => name),
    named('Panels', both('castings'), nameOf, ({ name }) => name),
    named('Moulds', both('moulds'), nameOf, ({ id }) => id),
    named('Mixes', both('mixes'), nameOf, ({ name }) => name),
    named('Kits', both('kits'), nameOf, ({ name }) => name),
    named('Stock', both('materials'), nameOf, ({ name }) => name),
    named('Suppliers', [suppliersIn(before), suppliersIn(after)], nameOf, ({ id }) => id),
    ...lists(before, after, nameOf),
    ...quiet(before, after),
  ];
  const other = differences.filter(({ added, gone, changed }) => added.length + gone.length + changed.length > 0);
  return other.length > 0 || same(asSaid(before), asSaid(after)) ? other : [OTHER_ORDER];
};
