import type { Hono } from 'hono';
import type { Database } from '../../db/open.ts';
import { createApp } from '../../src/http/app.ts';
import { type SeasonClock, seasonClock } from '../bench/season/clock.ts';
import { type ShownStep, stepsOn } from '../bench/season/today-page.ts';
import { formsIn, type PageForm, plainText } from './page-form.ts';
import { smallYard } from './small-yard.ts';
import { yardContext } from './yard-context.ts';

/** A piece as the hands know it: what they scratched into it, and the bag that they opened for it. */
export interface HandPiece {
  mould: string;
  /** The minute at which they said that its mould was full. */
  at: number;
  /** The date of the bag; null of bags that came before anybody noted when. */
  bag: string | null;
  is: 'in its mould' | 'on the rack' | 'scrapped' | 'packed';
  order: string | null;
}

/** A yard that works by its pages, with a log of its own that no program reads. */
export interface RecallYard {
  app: Hono;
  database: Database;
  clock: SeasonClock;
  log: HandPiece[];
  /** Bags on the pallet in the order in which they are opened, by the date on them or the day they came. */
  bags: (string | null)[];
  /** Which of these are dates on bags. */
  dates: Set<string>;
  /** What the pages refused, in their words. */
  refused: string[];
}

const MIX = { ...smallYard().mixes[0]!, yieldKgPerBag: 27.5 };
const PAIR = { kit: 'pair', quantity: 1 };

/** Three moulds, two bags of an unknown day and deliveries on two days, six orders of two panels each, work every day. */
export const recallYard = async (): Promise<RecallYard> => {
  const yard = smallYard({
    work: [{ rule: 'FREQ=DAILY', from: '2027-01-02', start: '08:00', end: '13:00' }],
    materials: [
      { id: 'mortar', name: 'Fast-setting mortar', unit: 'bag', onHand: 2 },
      { id: 'rod', name: 'Rod 12 mm', unit: 'stick', onHand: 9, stickMm: 3000, leadDays: 3, kerfMm: 3 },
    ],
    incoming: [
      { material: 'mortar', quantity: 3, on: '2027-04-09' },
      { material: 'mortar', quantity: 9, on: '2027-04-10' },
    ],
    mixes: [MIX],
    moulds: [1, 2, 3].map((no) => ({
      id: `900 no. ${no}`,
      makes: [{ casting: 'panel-900' }],
      setFor: 'panel-900',
      condition: 'ready' as const,
    })),
    orders: [1, 2, 3, 4, 5, 6].map((no) => ({ id: `27-00${no}`, customer: `Garden ${no}`, lines: [PAIR] })),
  });
  const { database } = await yardContext(yard);
  const clock = seasonClock('Europe/Dublin', Date.parse('2027-04-09T06:55:00Z') / 60_000);
  const app = createApp({ database, now: () => clock.now() });
  return { app, database, clock, log: [], bags: [null, null], dates: new Set(), refused: [] };
};

/** Looks at a page. */
export const look = async ({ app }: RecallYard, path: string): Promise<string> => (await app.request(path)).text();

/** Sends a form with its first button; the number of the change, or null where it was refused. */
export const send = async (yard: RecallYard, form: PageForm, typed: Record<string, string> = {}) => {
  const [button] = form.buttons;
  const pressed = button?.name ? { [button.name]: button.value } : {};
  const body = new URLSearchParams({ ...form.fields, ...pressed, ...typed });
  const answer = await yard.app.request(form.action, { method: 'POST', body });
  const location = answer.headers.get('Location');
  if (answer.status === 303 && location) return new URL(location, 'http://yard').searchParams.get('done');
  yard.refused.push(`${form.action} ${plainText(await answer.text()).slice(0, 400)}`);
  return null;
};

/** The next step of today that can be said to be done, with the page it stands on. */
export const nextStep = async (yard: RecallYard): Promise<{ step: ShownStep; html: string } | null> => {
  const html = await look(yard, '/today');
  const [step] = stepsOn(html, yard.clock)
    .filter(({ done }) => done)
    .sort((a, b) => a.end - b.end || a.start - b.start);
  return step ? { step, html } : null;
};

/**
 * What is on its way has come: so many of the delivery whose day it is, with the date on its bags where they have one. Bags without
 * a date stand first on the pallet, then the soonest.
 */
export const takeIn = async (yard: RecallYard, count: number, date: string | null = null): Promise<void> => {
  const form = formsIn(await look(yard, '/buying')).find(({ action }) => action === '/buying/arrived');
  if (!form || (await send(yard, form, { came: String(count), ...(date === null ? {} : { useBy: date }) })) === null)
    return;
  if (date !== null) yard.dates.add(date);
  const came = Array<string>(count).fill(date ?? yard.clock.today());
  const rank = (bag: string | null) => (bag !== null && yard.dates.has(bag) ? bag : '');
  yard.bags = [...yard.bags, ...came].sort((a, b) => (rank(a) < rank(b) ? -1 : Number(rank(a) > rank(b))));
};

/** The piece that a label on the page is of, by the mark the hands read on it. */
export const pieceOnLabel = ({ log, clock }: RecallYard, label: string): HandPiece | undefined => {
  const [, mould = '', day = '', time = ''] = /: (.+) of \w+ (\d+) \w+, (\d+:\d\d)/.exec(label) ?? [];
  const at = clock.at(`2027-04-${day.padStart(2, '0')}`, time.padStart(5, '0'));
  return log
    .filter((piece) => piece.mould === mould && piece.is === 'on the rack')
    .sort((a, b) => Math.abs(a.at - at) - Math.abs(b.at - at))[0];
};

/** The pieces a form of a packing offers, each with its box, its label and whether it is ticked. */
export const boxesIn = (html: string, order: string) => {
  const form =
    html.split('action="/today/packed"').find((part) => part.includes(`name="order" value="${order}"`)) ?? '';
  return [
    ...form.matchAll(/<input type="checkbox" name="(piece:\d+)" value="yes"([^>]*)\/>\s*<span>([\s\S]*?)<\/span>/g),
  ].map(([, name = '', rest = '', label = '']) => ({
    name,
    ticked: rest.includes('checked'),
    label: plainText(label),
  }));
};
