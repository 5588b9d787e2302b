import type { Context, Hono } from 'hono';
import type { Fault } from '../../shared/fault.ts';
import { isDate } from '../../shared/time.ts';
import type { RefusedWork } from '../../views/today/today-facts.ts';
import { TodayPage } from '../../views/today/today-page.tsx';
import type { UseCaseContext } from '../usecases/core/context.ts';
import { packOrder } from '../usecases/orders/pack-order.ts';
import { unpackOrder } from '../usecases/orders/unpack-order.ts';
import { callOffWork } from '../usecases/today/call-off-work.ts';
import { giveUpLateWork } from '../usecases/today/give-up-late-work.ts';
import { mendPiece } from '../usecases/today/mend-piece.ts';
import { onePersonFewer } from '../usecases/today/one-person-fewer.ts';
import { planSessionAnew } from '../usecases/today/plan-session-anew.ts';
import { type Filled, recordPour } from '../usecases/today/record-pour.ts';
import { recordPrep } from '../usecases/today/record-prep.ts';
import { recordStrip } from '../usecases/today/record-strip.ts';
import { scrapPiece } from '../usecases/today/scrap-piece.ts';
import { showToday } from '../usecases/today/show-today.ts';
import { stopAt } from '../usecases/today/stop-at.ts';
import { writeLateWork } from '../usecases/today/write-late-work.ts';
import { dateReading } from '../usecases/typed/measures.ts';
import { fixHours } from '../usecases/yard/fix-hours.ts';
import { amountTyped } from './amount-typed.ts';
import type { Screens } from './app.ts';
import { cameOutTyped } from './came-out-typed.ts';
import { type Deed, type Done, deedRoutes } from './deed-routes.ts';
import { type Typed, wholeTyped } from './form.ts';
import { doneNotice } from './notice.ts';
import { dateTyped } from './order-form.ts';
import { page } from './page.tsx';

const PATH = '/today';
/** More moulds than one batch ever fills, and than a form of this page has rows. */
const MOST_ROWS = 200;

const todayPage = async (c: Context, context: UseCaseContext, refused: RefusedWork | null) => {
  const model = await showToday(context);
  const content = <TodayPage model={model} notice={await doneNotice(c, context)} refused={refused} />;
  const frame = { title: 'Today', at: 'today', yardName: model.yardName, place: 'yard' } as const;
  return page(c, frame, content, { status: refused ? 422 : 200 });
};

/** The ticked rows of a form: which mould was filled, with what, for whom. */
const filledRows = (typed: Typed): Filled[] =>
  Array.from({ length: MOST_ROWS }, (_, row) => row)
    .filter((row) => typed[`filled${row}`] === 'yes')
    .map((row) => ({
      mould: typed[`mould${row}`] ?? '',
      casting: typed[`casting${row}`] ?? '',
      order: typed[`order${row}`] || typed.order || null,
      sealed: typed[`sealed${row}`] === 'yes',
    }));

/** Which of the pieces to mend; 0 stands for none of them. */
const pieceTyped = ({ piece }: Typed): number => wholeTyped(piece) ?? 0;

const poured = async (context: UseCaseContext, typed: Typed): Done => {
  const { amount, faults } = amountTyped(typed, 'bags');
  const pours = filledRows(typed);
  const all: Fault[] = [...(pours.length > 0 ? [] : [{ path: 'pours', message: 'Tick what was poured.' }]), ...faults];
  if (all.length > 0) return { ok: false, faults: all };
  return recordPour(context, { pours, bags: amount, filledAt: typed.at || typed.filledAt || null });
};

const stripped = async (context: UseCaseContext, typed: Typed): Done => {
  const cameOut = cameOutTyped(typed);
  if (cameOut === null)
    return { ok: false, faults: [{ path: 'mould', message: 'Say how the piece came out. Nothing was changed.' }] };
  return recordStrip(context, { mould: typed.mould ?? '', cameOut, reason: typed.reason ?? '', at: typed.at || null });
};

const mended = async (context: UseCaseContext, typed: Typed): Done => {
  const { date, faults } = dateTyped(typed, 'fitFrom', await dateReading(context));
  return faults.length > 0 ? { ok: false, faults } : mendPiece(context, pieceTyped(typed), { fitFrom: date });
};

const noWork = async (context: UseCaseContext, { date = '' }: Typed): Done =>
  isDate(date)
    ? callOffWork(context, date)
    : { ok: false, faults: [{ path: 'date', message: 'That date does not exist. Nothing was changed.' }] };

const DEEDS: Readonly<Record<string, Deed>> = {
  prepared: {
    act: (context, { mould = '', casting = '', sealed, at }) =>
      recordPrep(context, { mould, casting, sealed: sealed === 'yes', at: at || null }),
    form: ({ mould }) => `prep ${mould}`,
  },
  poured: { act: poured, form: ({ other, mould0 }) => (other ? 'other-pour' : `pour ${mould0}`) },
  stripped: { act: stripped, form: ({ mould }) => `strip ${mould}` },
  mended: { act: mended, form: ({ piece }) => `mend ${piece}` },
  scrapped: { act: (context, typed) => scrapPiece(context, pieceTyped(typed)), form: ({ piece }) => `mend ${piece}` },
  packed: {
    act: (context, { order = '', evenShort, at }) =>
      packOrder(context, order, { evenShort: evenShort === 'yes', at: at || null }),
    form: ({ order }) => `pack ${order}`,
  },
  unpacked: { act: (context, { order = '' }) => unpackOrder(context, order), form: ({ order }) => `unpack ${order}` },
  'as-planned': { act: (context) => writeLateWork(context), form: () => 'as-planned' },
  'not-done': { act: (context, { step }) => giveUpLateWork(context, step || null), form: () => 'not-done' },
  'no-work': { act: noWork, form: () => 'no-work' },
  'stop-at': { act: (context, { session = '', at = '' }) => stopAt(context, { session, at }), form: () => 'stop-at' },
  'one-fewer': {
    act: (context, { session = '', window }) => onePersonFewer(context, { session, window: wholeTyped(window) }),
    form: () => 'one-fewer',
  },
  'planned-anew': { act: (context, { session = '' }) => planSessionAnew(context, session), form: () => 'planned-anew' },
  'fixed-hours': { act: (context, { hours }) => fixHours(context, wholeTyped(hours)), form: () => 'fixed-hours' },
};

export const todayRoutes = (screens: Screens): Hono => deedRoutes(screens, PATH, DEEDS, todayPage);
