import type { YardFile } from '../../../shared/yard-file.ts';
import { formsIn } from '../../support/page-form.ts';
import { type Season, settle } from './season.ts';

const markForm = (html: string, mould: string, mark: string) =>
  formsIn(html).find(({ action }) => action.split('?')[0] === `/moulds/${encodeURIComponent(mould)}/${mark}`);

/** Says that damaged moulds are mended on the day on which they were to be. */
export const mendDue = async (season: Season, due: Map<string, string>): Promise<void> => {
  for (const [mould, on] of due) {
    if (on > season.clock.today()) continue;
    due.delete(mould);
    const form = markForm(await season.visitor.page('/moulds'), mould, 'mended');
    if (form && (await season.visitor.send(form))) await settle(season, 'mould mended');
  }
};

/** A mould breaks; a piece in it is good. */
export const breakMould = async (
  season: Season,
  due: Map<string, string>,
  moulds: readonly string[],
): Promise<void> => {
  const broken = season.mishaps.broken(season.clock.today(), moulds);
  if (!broken || due.has(broken.mould)) return;
  const form = markForm(await season.visitor.page('/moulds'), broken.mould, 'damaged');
  const typed = { cameOut: 'good', note: 'Split', repairedOn: broken.mendedOn };
  if (!form || !(await season.visitor.send(form, form.buttons[0], typed))) return;
  due.set(broken.mould, broken.mendedOn);
  season.log(`broken: ${broken.mould} until ${broken.mendedOn}`);
  await settle(season, 'mould broken');
};

/** Nobody can work today: said on Today, where today has a session. */
export const loseDay = async (season: Season): Promise<void> => {
  const today = season.clock.today();
  if (!season.mishaps.isLost(today)) return;
  const form = formsIn(await season.visitor.page('/today')).find(({ action }) => action === '/today/no-work');
  if (form?.fields.date !== today || !(await season.visitor.send(form))) return;
  season.log('day lost');
  await settle(season, 'day lost');
};

/** Moulds that are damaged, with the day on which they are to be mended. */
export const damagedIn = ({ moulds }: YardFile): Map<string, string> =>
  new Map(
    moulds.flatMap(({ id, condition, repairedOn }): [string, string][] =>
      condition === 'damaged' && repairedOn ? [[id, repairedOn]] : [],
    ),
  );
