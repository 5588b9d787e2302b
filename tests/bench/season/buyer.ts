import { materialsInOrder } from '../../../db/stores/material-store.ts';
import { formsIn, type PageForm, plainText } from '../../support/page-form.ts';
import { dayOnPage, daysAfter } from './clock.ts';
import { type Season, settle } from './season.ts';

const BUYING = '/buying';
const BOUGHT = '/buying/bought';

interface BuyingLine {
  form: PageForm;
  /** The form that gives it another day; null where it has none. */
  newDay: PageForm | null;
  /** The day by which to order it, or on which it is to come. */
  on: string | null;
}

const linesOn = (html: string, today: string, action: string): BuyingLine[] =>
  html
    .split('<form class="buy"')
    .slice(1)
    .flatMap((chunk) => {
      const text = plainText(/<p class="buy-by[^"]*">([\s\S]*?)<\/p>/.exec(chunk)?.[1] ?? '');
      const [form, ...others] = formsIn(`<form class="buy"${chunk}`);
      const newDay = others.find((one) => one.action === '/buying/new-day') ?? null;
      return form?.action === action ? [{ form, newDay, on: dayOnPage(text, today) }] : [];
    });

/** What is bought of one supplier on one day is one way. */
const countWay = async ({ database, clock, ways, tally }: Season, { fields }: PageForm): Promise<void> => {
  const materials = await database.read(materialsInOrder);
  const of = materials.find(({ id }) => id === fields.material);
  ways.add(`${clock.today()} ${of?.supplier ?? ''}`);
  tally.bought += 1;
  tally.ways = ways.size;
};

/** Sends the forms of all lines that are due, one after another, each from the page that the one before led to. */
const sendDue = async (season: Season, html: string, action: string, isDue: (line: BuyingLine) => boolean) => {
  let page = html;
  const tried = new Set<string>();
  for (;;) {
    const keyOf = ({ form }: BuyingLine) => `${form.fields.goods ?? ''} ${form.fields.line ?? ''}`;
    const line = linesOn(page, season.clock.today(), action).find((one) => isDue(one) && !tried.has(keyOf(one)));
    if (!line) return { page, sent: tried.size };
    tried.add(keyOf(line));
    const after = await season.visitor.send(line.form);
    if (after && action === BOUGHT) await countWay(season, line.form);
    if (after) page = await after.page();
  }
};

/** The day on which goods come: late, where the day on which they were to come has it so, and once at most. */
const comesOn = ({ mishaps, toldLate }: Season, { form, on }: BuyingLine): string | null =>
  on === null || toldLate.has(form.fields.goods ?? '') ? on : daysAfter(on, mishaps.deliveryLate(on));

/** Goods that were to be there today and are not: the supplier says when they come, and the maker writes it down. */
const tellLate = async (season: Season, html: string): Promise<string> => {
  const today = season.clock.today();
  let page = html;
  for (const line of linesOn(html, today, '/buying/arrived')) {
    const [{ form, newDay, on }, day] = [line, comesOn(season, line)];
    if (on === null || day === null || on > today || day <= today || !newDay) continue;
    const after = await season.visitor.send(newDay, newDay.buttons[0], { on: day });
    season.toldLate.add(form.fields.goods ?? '');
    season.log(`late: goods ${form.fields.goods} of ${on} come on ${day}`);
    await settle(season, 'delivery late');
    if (after) page = await after.page();
  }
  return page;
};

/** The maker's look at Buying, in the morning and when an order was taken that hangs on it: what is there today has arrived, what is to be ordered today is bought. */
export const buyAsSaid = async (season: Season): Promise<void> => {
  const today = season.clock.today();
  const hasCome = (line: BuyingLine): boolean => {
    const day = comesOn(season, line);
    return day !== null && day <= today;
  };
  const html = await season.visitor.page(BUYING);
  await settle(season, 'time went by');
  const arrived = await sendDue(season, html, '/buying/arrived', hasCome);
  if (arrived.sent > 0) await settle(season, 'arrived');
  const page = await tellLate(season, arrived.page);
  const isToBuy = ({ on }: BuyingLine): boolean => on !== null && on <= today;
  const bought = await sendDue(season, page, BOUGHT, isToBuy);
  if (bought.sent > 0) await settle(season, 'bought');
};
