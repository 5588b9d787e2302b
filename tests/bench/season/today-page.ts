import { formsIn, type PageForm } from '../../support/page-form.ts';
import type { SeasonClock } from './clock.ts';

/** One line of the list on Today, as the page shows it. */
export interface ShownStep {
  /** "prep", "batch", "strip", "pack". */
  kind: string;
  /** Minutes, by the clock times written beside it, in steps of five. */
  start: number;
  end: number;
  /** The form that says it is done as planned; null where the page has none yet. */
  done: PageForm | null;
  /** What it is, told apart from the others of its day. */
  key: string;
}

const DONE = ['/today/coated', '/today/prepared', '/today/poured', '/today/stripped', '/today/packed'];

const keyOf = (kind: string, chunk: string): string =>
  `${kind} ${(/<p class="step-what">([\s\S]*?)<\/p>/.exec(chunk)?.[1] ?? '').replace(/<[^>]+>/g, '')} ${[
    ...chunk.matchAll(/<strong>([^<]*)<\/strong>/g),
  ]
    .map(([, mould]) => mould)
    .join(',')}`;

const stepIn = (chunk: string, clock: SeasonClock): ShownStep[] => {
  const kind = chunk.slice(0, chunk.indexOf('"'));
  const [, from, to] = /class="step-time">\s*(\d+:\d\d)(?:\s*<span[^>]*> to (\d+:\d\d))?/.exec(chunk) ?? [];
  if (!from || kind === 'set-up' || kind === 'clear-up') return [];
  const today = clock.today();
  const done = formsIn(chunk).find(({ action }) => DONE.includes(action)) ?? null;
  const at = (text: string) => clock.at(today, text.padStart(5, '0'));
  return [{ kind, start: at(from), end: at(to ?? from), done, key: keyOf(kind, chunk) }];
};

/** What was planned for a session that is over, and the form that says that it was done. */
const LATE = /<section id="late">[\s\S]*?<\/section>/;

/** The lists of steps of a page, each up to where it ends: lists within it are closed before. */
const listsIn = (html: string): string[] =>
  html
    .split(/<ol class="steps[^"]*">/)
    .slice(1)
    .map((rest) => {
      let open = 1;
      for (const { 0: tag, index } of rest.matchAll(/<ol\b|<\/ol>/g)) {
        open += tag === '</ol>' ? -1 : 1;
        if (open === 0) return rest.slice(0, index);
      }
      return rest;
    });

/** The steps that Today lists for today, in order; none where it shows the session of another day. */
export const stepsOn = (html: string, clock: SeasonClock): ShownStep[] => {
  if (!html.includes('>Step by step</h2>')) return [];
  return listsIn(html.replace(LATE, ''))
    .flatMap((list) => list.split('<li class="step step-').slice(1))
    .flatMap((chunk) => stepIn(chunk, clock))
    .sort((a, b) => a.start - b.start || a.end - b.end);
};

/** "All as planned" of late work, where the page asks about it. */
export const lateFormOn = (html: string): PageForm | null =>
  formsIn(LATE.exec(html)?.[0] ?? '').find(({ action }) => action === '/today/as-planned') ?? null;

/** "Not done" of the first line of late work. */
export const notDoneFormOn = (html: string): PageForm | null =>
  formsIn(LATE.exec(html)?.[0] ?? '').find(({ action, fields }) => action === '/today/not-done' && fields.step) ?? null;
