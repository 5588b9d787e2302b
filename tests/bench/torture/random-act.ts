import type { Archive } from '../../../shared/archive.ts';
import { formsIn, type PageForm } from '../../support/page-form.ts';
import type { Dice } from '../../support/random-yard/dice.ts';
import type { PageVisitor } from './page-visitor.ts';

/** A form of a page, filled in. */
export interface RandomAct {
  action: string;
  fields: Readonly<Record<string, string>>;
}

/** What chance has to know of the yard to fill a form in. */
export interface Known {
  dice: Dice;
  visitor: PageVisitor;
  yard: Archive;
  today: string;
  /** Changes that can be taken back, the last one at the end. */
  changes: readonly number[];
}

type Fields = Partial<Record<string, string>>;
type Fill = (form: PageForm, known: Known) => Fields | null;

const SOME_OPEN_ORDERS = 9;
const DAY_MS = 86_400_000;

const dayAfter = (today: string, days: number): string =>
  new Date(Date.parse(today) + days * DAY_MS).toISOString().slice(0, 10);

const nearly = (dice: Dice, quantity: number): string =>
  String(Math.max(0, Math.round((quantity + dice.whole(-3, 3)) * 10) / 10));

const whole = (dice: Dice, quantity: number): string => String(Math.max(0, Math.round(quantity) + dice.whole(-1, 1)));

const materialOf = ({ yard }: Known, id: string) => yard.materials.find((one) => one.id === id);

const counted: Fill = ({ fields }, known) => {
  const material = materialOf(known, fields.material ?? '');
  if (!material) return null;
  if (material.inSheets) {
    const rests = (material.rests ?? []).flatMap(({ widthMm, lengthMm, count }) =>
      Array(count).fill(`${widthMm} mm by ${lengthMm} mm`),
    );
    const there = known.dice.chance(0.3) ? [...rests.slice(1), `${known.dice.step(200, 900, 25)} mm by 650 mm`] : rests;
    return { counted: whole(known.dice, material.onHand), offcuts: there.join(', ') };
  }
  if (material.stickMm === undefined) return { counted: nearly(known.dice, material.onHand) };
  const offcuts = (material.offcuts ?? []).flatMap(({ lengthMm, count }) => Array(count).fill(`${lengthMm} mm`));
  const seen = known.dice.chance(0.3) ? [...offcuts.slice(1), `${known.dice.step(400, 1500, 50)} mm`] : offcuts;
  return { counted: whole(known.dice, material.onHand), offcuts: seen.join(', ') };
};

const arrived: Fill = ({ fields }, { dice, today, yard }) => {
  if (fields.came === undefined) return {};
  const came = Number(fields.came);
  const partly = dice.chance(0.3) && came > 1 ? { came: String(Math.ceil(came / 2)) } : {};
  const isDated = fields.useBy !== undefined && yard.materials.length > 0;
  return { ...partly, ...(isDated && dice.chance(0.7) ? { useBy: dayAfter(today, dice.whole(3, 60)) } : {}) };
};

/** A few things are counted on a walk, most of them otherwise than the book has them. */
const walked: Fill = ({ fields }, known) => {
  const { dice } = known;
  const rows = Object.keys(fields).flatMap((key) => /^stock(\d+)Id$/.exec(key)?.[1] ?? []);
  return Object.fromEntries(
    dice.some(rows, dice.whole(1, 4)).map((row): [string, string] => {
      const material = materialOf(known, fields[`stock${row}Id`]!)!;
      const isCut = material.stickMm !== undefined || material.inSheets;
      return [`stock${row}`, isCut ? whole(dice, material.onHand) : nearly(dice, material.onHand)];
    }),
  );
};

const poured: Fill = ({ fields }, { dice }) => {
  if (fields.other) return null;
  return fields.bags && dice.chance(0.15) ? { bags: String(Number(fields.bags) + dice.pick([0.5, 1])) } : {};
};

const seldom =
  (probability: number, fill: Fill = () => ({})): Fill =>
  (form, known) =>
    known.dice.chance(probability) ? fill(form, known) : null;

/** How forms are filled in, by where they are sent; no other form is touched. */
const FILLS: Readonly<Record<string, Fill>> = {
  ...{
    '/today/poured': poured,
    '/today/mixing': () => ({}),
    '/today/prepared': () => ({}),
    '/today/coated': () => ({}),
  },
  ...{ '/today/stripped': () => ({}), '/today/packed': () => ({}), '/today/before-it': () => ({}) },
  ...{ '/today/as-planned': () => ({}), '/today/not-done': seldom(0.2), '/today/thrown-away': seldom(0.2) },
  ...{ '/today/arrived': () => ({}), '/buying/arrived': arrived, '/buying/bought': () => ({}) },
  ...{ '/buying/trip-bought': () => ({}), '/buying/spoiled': () => ({}), '/buying/counted': seldom(0.3, counted) },
  '/buying/not-to-be-had': seldom(0.1, (form, { today }) => ('on' in form.fields ? { on: dayAfter(today, 9) } : {})),
  '/buying/new-day': seldom(0.3, (_form, { dice, today }) => ({ on: dayAfter(today, dice.whole(0, 5)) })),
  '/count': walked,
  '/orders': (_form, { dice }) => ({ customer: `Customer ${dice.whole(1, 999)}` }),
  ...{ 'hand-over': () => ({}), pack: () => ({}), unpack: () => ({}), cancel: seldom(0.4) },
  'hand-over-part': () => ({ part0: '1' }),
};

const fillOf = ({ action }: PageForm): Fill | undefined =>
  FILLS[action] ?? FILLS[action.replace(/^\/orders\/[^/]+\//, '')];

const newOrder = ({ dice, yard }: Known): string => {
  const kit = dice.pick(yard.kits).id;
  return `/orders/new?${new URLSearchParams({ what: `kit:${kit}`, number: String(dice.whole(1, 2)) })}`;
};

const pageToLookAt = (known: Known): string => {
  const { dice, yard } = known;
  const open = yard.orders.filter(({ status }) => status === 'open');
  const order = () => (open.length > 0 ? `/orders/${encodeURIComponent(dice.pick(open).id)}` : '/buying');
  const pages = [
    ...Array(10).fill(() => '/today'),
    ...Array(5).fill(() => '/buying'),
    ...[order, order, () => '/count'],
    ...(open.length < SOME_OPEN_ORDERS ? [newOrder, newOrder] : []),
  ] as ((of: Known) => string)[];
  return dice.pick(pages)(known);
};

const undo = ({ dice, changes }: Known): RandomAct | null => {
  if (changes.length === 0) return null;
  const change = changes.at(-1 - Math.min(dice.pick([0, 0, 0, 1, 3]), changes.length - 1))!;
  return { action: '/undo', fields: { change: String(change), back: '/today' } };
};

/** A form that stands on some page just now, as anybody could send it; null where chance found none. */
export const randomAct = async (known: Known): Promise<RandomAct | null> => {
  const { dice, visitor } = known;
  if (dice.chance(0.08)) return undo(known);
  const forms = formsIn(await visitor.page(pageToLookAt(known))).filter((form) => fillOf(form));
  if (forms.length === 0) return null;
  const form = dice.pick(forms);
  const filled = fillOf(form)!(form, known);
  if (!filled) return null;
  const button = form.buttons.length > 1 && dice.chance(0.15) ? dice.pick(form.buttons) : form.buttons[0];
  const pressed = button?.name ? { [button.name]: button.value } : {};
  const fields = { ...form.fields, ...pressed, ...filled } as Record<string, string>;
  return { action: button?.action ?? form.action, fields };
};
