import { type PageButton, type PageForm, plainText } from '../../support/page-form.ts';
import { promiseOf, type Season, settle } from './season.ts';
import { lateFormOn, notDoneFormOn, type ShownStep, stepsOn } from './today-page.ts';

const TODAY = '/today';

/** Looks at Today; reading it may make the plan anew, since time has gone by. */
const look = async (season: Season): Promise<string> => {
  const html = await season.visitor.page(TODAY);
  await settle(season, 'time went by');
  return html;
};

const scrapForm = ({ done }: ShownStep): PageForm => ({
  ...done!,
  fields: { mould: done!.fields.mould ?? '', reason: 'crack' },
});

const SCRAP: PageButton = { words: 'Scrap', name: 'cameOut', value: 'scrap' };

const markReady = (season: Season, step: ShownStep): void => {
  const promise = promiseOf(season, step.done?.fields.order ?? '');
  if (step.kind === 'pack' && promise) promise.readyOn = season.clock.today();
};

/** Says that a step is done, at the time at which it ends by the page, and gives the page after it. */
const doStep = async (season: Season, step: ShownStep): Promise<string | null> => {
  const { clock, mishaps, visitor } = season;
  clock.setOn(step.end);
  const isReject = step.kind === 'strip' && mishaps.isReject(step.done!.fields.mould ?? '', clock.today());
  const after = isReject ? await visitor.send(scrapForm(step), SCRAP) : await visitor.send(step.done!);
  if (!after) return null;
  markReady(season, step);
  await settle(season, isReject ? 'piece scrapped' : 'work as planned');
  return after.page();
};

/** Says of the first line of late work that it was not done: what could not be is in the way of the others. */
const giveUpFirst = async (season: Season): Promise<void> => {
  const form = notDoneFormOn(await season.visitor.page(TODAY));
  if (!form) return;
  season.tally.givenUp += 1;
  await season.visitor.send(form);
  await settle(season, 'not done');
};

/** What is left over after a session is said to be done as planned, but for what could not be done. */
const tapLate = async (season: Season, html: string): Promise<string> => {
  const form = lateFormOn(html);
  if (!form) return html;
  season.tally.lateTaps += 1;
  season.log(`late work: ${plainText(/<section id="late">[\s\S]*?<\/section>/.exec(html)?.[0] ?? '').slice(0, 300)}`);
  const after = await season.visitor.send(form);
  await settle(season, 'work as planned');
  if (after) return after.page();
  await giveUpFirst(season);
  return look(season);
};

const nextOf = (steps: readonly ShownStep[], refused: ReadonlySet<string>): ShownStep | undefined =>
  steps.filter(({ done, key }) => done && !refused.has(key)).sort((a, b) => a.end - b.end || a.start - b.start)[0];

const EARLY_LOOK_MINUTES = 5;

/**
 * Follows Today step by step up to a minute: looks at the list when the next step is to begin, and says that each is done
 * when it ends by the page. A step that is refused is left for the rest of this stretch.
 */
export const workUntil = async (season: Season, until: number): Promise<void> => {
  const refused = new Set<string>();
  let html = await tapLate(season, await look(season));
  for (;;) {
    const steps = stepsOn(html, season.clock);
    const next = nextOf(steps, refused);
    if (!next || next.end > until) break;
    const begins = Math.min(...steps.filter(({ done }) => done).map(({ start }) => start));
    if (begins > season.clock.minute + EARLY_LOOK_MINUTES) {
      season.clock.setOn(begins);
      html = await look(season);
      continue;
    }
    const after = await doStep(season, next);
    if (after === null) refused.add(next.key);
    html = await tapLate(season, after ?? (await look(season)));
  }
  season.clock.setOn(until);
};

/** Steps that have begun by the page and are not done yet. */
export const underWay = async (season: Season): Promise<string[]> =>
  stepsOn(await look(season), season.clock)
    .filter(({ start, end }) => start < season.clock.minute && season.clock.minute < end)
    .map(({ key }) => key);

/** Counts the steps under way that are not on Today any more. */
export const countVanished = async (season: Season, before: readonly string[], act: string): Promise<void> => {
  if (before.length === 0) return;
  const now = new Set(stepsOn(await look(season), season.clock).map(({ key }) => key));
  const gone = before.filter((key) => !now.has(key));
  season.tally.vanished += gone.length;
  if (gone.length > 0) season.log(`VANISHED after ${act}: ${gone.join('; ')}`);
};
