import { expect, test } from 'vitest';
import { formsIn } from '../support/page-form.ts';
import { brokenWithin, linesWithoutLink, misleadingLinks } from '../support/page-links.ts';
import { plannedYard, saturday } from '../support/planned-yard.ts';
import { demoScreens, screensOn, screensOver, type TestScreens } from '../support/screens.ts';

const WRONG_OF: Readonly<Record<string, string>> = {
  ...{ on: '31 Feb', at: '25:99', time: '99:99', bags: '-1', date: '2027-02-30', wantedOn: '1 Jan 2040' },
  ...{ promisedOn: '1 Jan 2040', heldUntil: '1 Apr 2027', fitFrom: '31 Apr', from: '31 Apr', to: '30 Feb', came: '0' },
  ...{ quantity: '0', counted: '-1', hours: '-1', number: '0', order: 'none', repairedOn: '31 Apr' },
};

/** What people type that cannot be, in each field of a form at once; the last is sent by no page. */
const TYPED: readonly { what: string; hidden?: true; typed: (name: string, value: string) => string }[] = [
  { what: 'nothing', typed: () => '' },
  { what: 'rubbish', typed: (_name, value) => (value === '' ? '?' : `${value} ?`) },
  { what: 'what cannot be', typed: (name, value) => WRONG_OF[name] ?? value },
  { what: 'nothing at all', hidden: true, typed: () => '' },
  { what: 'another thing', hidden: true, typed: (_name, value) => `${value} ?` },
];

interface Walked {
  refused: number;
  wrong: string[];
  /** What was wrong and leads nowhere. */
  unlinked: string[];
}

/** So many forms of one address differ in nothing but what they are about. */
const FORMS_OF_ONE_ADDRESS = 2;

const hiddenIn = (html: string): Set<string>[] =>
  [...html.matchAll(/<form\b[^>]*method="post"[^>]*>([\s\S]*?)<\/form>/g)].map(
    ([, inside = '']) => new Set([...inside.matchAll(/type="hidden" name="([^"]+)"/g)].map(([, name]) => name!)),
  );

/** Sends each form of a page as nobody should, and says what of the pages that come back leads nowhere. */
const walk = async ({ get, post }: TestScreens, path: string): Promise<Walked> => {
  const walked: Walked = { refused: 0, wrong: [], unlinked: [] };
  const page = await (await get(path)).text();
  const look = (what: string, html: string) =>
    walked.wrong.push(...[...brokenWithin(html), ...misleadingLinks(html)].map((one) => `${path} ${what}: ${one}`));
  look('as it is', page);
  const sent = new Map<string, number>();
  const hidden = hiddenIn(page);
  for (const [place, { action, fields, buttons }] of formsIn(page).entries()) {
    const about = [action.split('/').at(-1), ...Object.keys(fields).sort()].join(' ');
    const times = sent.get(about) ?? 0;
    sent.set(about, times + 1);
    if (times >= FORMS_OF_ONE_ADDRESS || action === '/undo') continue;
    for (const to of new Set([action, ...buttons.flatMap((button) => button.action ?? [])]))
      for (const { what, hidden: isAll, typed } of TYPED) {
        const isLeft = (name: string) => !isAll && hidden[place]!.has(name);
        const form = Object.entries(fields).map(([name, value]) => [name, isLeft(name) ? value : typed(name, value)]);
        const answer = await post(to, Object.fromEntries(form));
        // What could be after all is taken back, so that the next form is one of the same page.
        const change = new URL(answer.headers.get('Location') ?? '/', 'http://x').searchParams.get('done');
        if (change) await post('/undo', { change, back: path });
        if (answer.status !== 422) continue;
        walked.refused += 1;
        const html = await answer.text();
        look(`${to} with ${what}`, html);
        const isThere = formsIn(html).some(
          (form) => form.action === action && [...hidden[place]!].every((name) => form.fields[name] === fields[name]),
        );
        if (!isAll && isThere)
          walked.unlinked.push(...linesWithoutLink(html).map((words) => `${to} with ${what}: ${words}`));
      }
  }
  return walked;
};

/** The planned yard while a session is under way, with a piece to mend and an order that is packed. */
const underWay = async () => {
  const yard = plannedYard({
    yard: { ...plannedYard().yard, now: saturday('07:30') },
    finished: [{ casting: 'panel-900', count: 2 }],
    orders: [
      ...plannedYard().orders,
      { id: '27-002', customer: 'Ann', due: '2027-05-01', lines: [{ casting: 'panel-900', quantity: 4 }] },
    ],
    materials: plannedYard().materials.map((one) => ({ ...one, onHand: 20 })),
  });
  const { database, get, post } = await screensOver(yard);
  await get('/today');
  await post('/today/packed', { order: '27-001' });
  return database;
};

test.each(['07:40', '08:31', '10:30', '12:30'])(
  'whatever is wrong on Today at %s is led to',
  async (clock) => {
    const { refused, wrong, unlinked } = await walk(screensOn(await underWay(), saturday(clock)), '/today');
    expect(wrong).toEqual([]);
    expect(unlinked).toEqual([]);
    expect(refused).toBeGreaterThan(10);
  },
  60_000,
);

test.each([
  ['/today', 10],
  ['/buying', 10],
  ['/moulds', 4],
  ['/orders/27-010', 2],
  ['/orders/27-010/edit', 2],
  ['/orders/new', 2],
  ['/yard/about', 1],
  ['/yard/panels/new', 1],
  ['/yard/kits/new', 1],
  ['/yard/moulds/new', 1],
  ['/yard/mixes/new', 1],
  ['/yard/stock/new', 1],
  ['/yard/hours/new', 1],
  ['/yard/hours/off/new', 1],
  ['/yard/temperatures/new', 1],
  ['/begin', 1],
  ['/begin/four', 1],
  ['/begin/session', 0],
  ['/yard/guesses', 0],
])(
  'whatever is wrong on %s of the demo is led to',
  async (path, least) => {
    const { refused, wrong, unlinked } = await walk(await demoScreens(), path);
    expect(wrong).toEqual([]);
    expect(unlinked).toEqual([]);
    expect(refused).toBeGreaterThanOrEqual(least);
  },
  60_000,
);
