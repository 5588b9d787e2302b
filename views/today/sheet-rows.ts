import type { SessionHours } from '../../src/usecases/today/hours-facts.ts';
import type {
  BatchStep,
  CoatStep,
  PackStep,
  PrepStep,
  SessionStep,
  StripStep,
} from '../../src/usecases/today/session-step.ts';
import { byClock, fromClock } from '../parts/clock-text.ts';
import { slipText } from './slip-text.ts';
import { EDGE_WORDS, forText } from './today-text.ts';

type Wetting = NonNullable<SessionHours['wet']>;

/** One line of the sheet for the wall: from when, what kind of work, and on what. */
export interface SheetRow {
  at: string;
  work: string;
  what: string[];
  /** "Under way until 8:40"; null where it is still to come. */
  begun: string | null;
}

/** "900 no. 2 (dry at 9:05)": nothing is done in it before. */
const coated = ({ mould, clean, dryFrom, until }: CoatStep): string => {
  const dry = Date.parse(dryFrom) === Date.parse(until) ? [] : [`dry at ${fromClock(dryFrom)}`];
  const besides = [...(clean ? ['to clean'] : []), ...dry];
  return besides.length > 0 ? `${mould} (${besides.join(', ')})` : mould;
};

/** "900 no. 1", "900 no. 2 (to clean, for Panel 600)": what is to be done, not how it stands. */
const prepared = ({ mould, clean, changeFrom, piece }: PrepStep): string => {
  const besides = [...(clean ? ['to clean'] : []), ...(changeFrom === null ? [] : [`for ${piece}`])];
  return besides.length > 0 ? `${mould} (${besides.join(', ')})` : mould;
};

const stripped = ({ mould, customer }: StripStep): string =>
  customer === null ? mould : `${mould} (${forText(customer)})`;

/** What goes into a batch, said once on top for all batches of a mix that are alike. */
export interface SheetRecipe {
  mix: string;
  slip: string;
}

/** What most batches of each mix are made of, where more than one is. */
export const sheetRecipes = (steps: readonly SessionStep[]): SheetRecipe[] => {
  const counts = new Map<string, Map<string, number>>();
  for (const step of steps) {
    if (step.kind !== 'batch') continue;
    const slips = counts.get(step.mix) ?? new Map<string, number>();
    counts.set(step.mix, slips.set(slipText(step), (slips.get(slipText(step)) ?? 0) + 1));
  }
  return [...counts].flatMap(([mix, slips]) => {
    const [slip, count] = [...slips].sort(([, a], [, b]) => b - a)[0]!;
    return count > 1 ? [{ mix, slip }] : [];
  });
};

const mixed = (step: BatchStep, recipes: readonly SheetRecipe[]): string[] => [
  recipes.some(({ mix, slip }) => mix === step.mix && slip === slipText(step))
    ? `${step.mix} as on top. Pour by ${byClock(step.usableUntil)}:`
    : `${step.mix}: ${slipText(step)}. Pour by ${byClock(step.usableUntil)}:`,
  ...step.pours.map(({ mould, customer }) => `${mould}${customer === null ? '' : ` (${forText(customer)})`}`),
];

/** "School garden", "School garden (180 of 300 minutes)" */
const packed = ({ customer, part }: PackStep): string =>
  part === null ? customer : `${customer} (${part.goesOn ? '' : 'the last '}${part.minutes} of ${part.inAll} minutes)`;

const workOf = (step: SessionStep, recipes: readonly SheetRecipe[]): Pick<SheetRow, 'work' | 'what'> => {
  if (step.kind === 'coat') return { work: 'Coat', what: [coated(step)] };
  if (step.kind === 'prep') return { work: 'Set up', what: [prepared(step)] };
  if (step.kind === 'strip') return { work: 'Strip', what: [stripped(step)] };
  if (step.kind === 'batch') return { work: 'Mix', what: mixed(step, recipes) };
  if (step.kind === 'pack') return { work: 'Pack', what: [packed(step)] };
  return { work: EDGE_WORDS[step.kind], what: [] };
};

const rowOf = (step: SessionStep, begun: readonly string[], recipes: readonly SheetRecipe[]): SheetRow => ({
  at: fromClock(step.at),
  ...workOf(step, recipes),
  begun: begun.includes(step.name) ? `Under way until ${fromClock(step.until)}` : null,
});

const JOINED = ['Coat', 'Set up', 'Strip'];

/** Moulds prepared or stripped one after another share a line, but for one that is under way. */
const isJoined = (row: SheetRow, last: SheetRow | undefined): last is SheetRow =>
  last !== undefined &&
  last.work === row.work &&
  last.begun === null &&
  row.begun === null &&
  JOINED.includes(row.work);

/** Minutes to keep pieces wet are no step, for nothing is recorded of them; on the wall they are a line like the others. */
const wetRow = ({ start }: Wetting): SheetRow => ({
  ...{ at: fromClock(start), work: 'Keep wet', what: ['what is out of its mould'], begun: null },
});

/**
 * The steps of a session as lines for the wall; `begun` names those that are under way, `wet` is when what is out of its mould is
 * kept wet, where the plan has minutes for it.
 */
export const sheetRows = (steps: readonly SessionStep[], begun: readonly string[], wet?: Wetting): SheetRow[] => {
  const rows: SheetRow[] = [];
  const recipes = sheetRecipes(steps);
  const before = steps.filter(({ at }) => wet && Date.parse(at) < Date.parse(wet.start));
  const asRow = (step: SessionStep) => rowOf(step, begun, recipes);
  const inTime = [...before.map(asRow), ...(wet ? [wetRow(wet)] : []), ...steps.slice(before.length).map(asRow)];
  for (const row of inTime) {
    const last = rows.at(-1);
    if (isJoined(row, last)) last.what.push(...row.what);
    else rows.push(row);
  }
  return rows;
};

export interface MouldTurns {
  mould: string;
  /** Each with the time at which it is filled. */
  turns: string[];
}

/** How often each mould is filled in the session, and when, in the order of the first time. */
export const sheetTurns = (steps: readonly SessionStep[]): MouldTurns[] => {
  const moulds = new Map<string, string[]>();
  for (const step of steps)
    for (const pour of step.kind === 'batch' ? step.pours : [])
      moulds.set(pour.mould, [...(moulds.get(pour.mould) ?? []), fromClock(pour.at)]);
  return [...moulds].map(([mould, turns]) => ({ mould, turns }));
};
