import { faultsOn, formsIn, plainText } from '../../support/page-form.ts';
import type { Arrival } from './arrivals.ts';
import { buyAsSaid } from './buyer.ts';
import { dayOnPage, daysBetween } from './clock.ts';
import { type Season, settle } from './season.ts';
import { openPromise } from './tally.ts';
import type { After } from './visitor.ts';
import { dayFromNothing, exportedYard } from './yard-export.ts';

const lineOf = ({ what, number }: Arrival) => {
  const [kind, id] = [what.slice(0, what.indexOf(':')), what.slice(what.indexOf(':') + 1)];
  return kind === 'kit' ? { kit: id, quantity: number } : { casting: id, quantity: number };
};

const wordsOf = (html: string): string => plainText(/class="ready-line">([\s\S]*?)<\/p>/.exec(html)?.[1] ?? html);

/** Told that there is no time: a false "no" when a plan made from nothing has a day for it. */
const toldNo = async (season: Season, arrival: Arrival, words: string): Promise<void> => {
  season.tally.toldNo += 1;
  const day = season.standing && dayFromNothing(await exportedYard(season.visitor), season.standing, [lineOf(arrival)]);
  if (day) season.tally.falseNo += 1;
  season.log(`NO to ${arrival.customer}, ${arrival.number} ${arrival.what}: ${words}; from nothing: ${day}`);
};

/** The customer asks, is told a day by the page, and takes it: the order is written down with that day promised. */
export const serve = async (season: Season, arrival: Arrival): Promise<void> => {
  const { visitor, clock, tally } = season;
  const question = new URLSearchParams({ what: arrival.what, number: String(arrival.number) });
  await visitor.part(`/?${question}`, 'div#ready');
  await settle(season, 'time went by');
  const html = await visitor.page(`/orders/new?${question}`);
  const form = formsIn(html).find(({ action }) => action === '/orders');
  const promisedOn = dayOnPage(form?.fields.promisedOn ?? '', clock.today());
  if (!form || !promisedOn) return toldNo(season, arrival, wordsOf(html));
  const after = await visitor.send(form, form.buttons[0], { customer: arrival.customer });
  const id = /^\/orders\/([^?]+)/.exec(after?.location ?? '')?.[1];
  if (!id) return;
  const today = clock.today();
  const quotedDays = daysBetween(today, promisedOn);
  tally.orders += 1;
  tally.quotedDays.push(quotedDays);
  const facts = { id: decodeURIComponent(id), customer: arrival.customer, takenOn: today, quotedDays, promisedOn };
  season.promises.push(openPromise({ ...facts, isCounted: true }));
  season.log(`taken ${id}: ${arrival.number} ${arrival.what}, promised ${promisedOn}`);
  await settle(season, 'order taken');
  // The date hangs on what the notice says has to be ordered today.
  if ((await after?.page())?.includes('class="buy-today"')) await buyAsSaid(season);
};

/** Presses the button of an order's page that does something; tells whether it was done. */
export const pressOnOrder = async (season: Season, id: string, deed: string, typed: Record<string, string> = {}) => {
  const path = `/orders/${encodeURIComponent(id)}`;
  const html = await season.visitor.page(path);
  const form = formsIn(html).find(({ action }) => action === `${path}/${deed}`);
  if (form) return (await season.visitor.send(form, form.buttons[0], typed)) !== null;
  season.visitor.refused.push({ at: season.clock.now(), status: 200, act: `${deed} ${id}`, words: faultsOn(html) });
  return false;
};

/**
 * Changes an order by its form; `typed` is told what stands in the fields. Where other customers would get theirs too late the
 * customer takes the other day that the page offers.
 */
export const editOrder = async (
  season: Season,
  id: string,
  typed: (fields: Readonly<Record<string, string>>) => Record<string, string>,
): Promise<After | null> => {
  const path = `/orders/${encodeURIComponent(id)}/edit`;
  const form = formsIn(await season.visitor.page(path)).find(({ action }) => action === path);
  return form ? season.visitor.send(form, form.buttons[0], typed(form.fields), 'another day') : null;
};
