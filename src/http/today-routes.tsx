import type { Context, Hono } from 'hono';
import type { RefusedWork } from '../../views/today/today-facts.ts';
import { TodayPage } from '../../views/today/today-page.tsx';
import type { Outcome, UseCaseContext } from '../usecases/core/context.ts';
import { packOrder } from '../usecases/orders/pack-order.ts';
import { unpackOrder } from '../usecases/orders/unpack-order.ts';
import { dateReading } from '../usecases/plan/date-reading.ts';
import { callOffWork } from '../usecases/today/call-off-work.ts';
import { giveUpLateWork } from '../usecases/today/give-up-late-work.ts';
import { mendPiece } from '../usecases/today/mend-piece.ts';
import { onePersonFewer } from '../usecases/today/one-person-fewer.ts';
import { planSessionAnew } from '../usecases/today/plan-session-anew.ts';
import { recordPour } from '../usecases/today/record-pour.ts';
import { recordPrep } from '../usecases/today/record-prep.ts';
import { recordStrip } from '../usecases/today/record-strip.ts';
import { scrapPiece } from '../usecases/today/scrap-piece.ts';
import { showToday } from '../usecases/today/show-today.ts';
import { stopAt } from '../usecases/today/stop-at.ts';
import { writeLateWork } from '../usecases/today/write-late-work.ts';
import { type FormFields, wholeTyped } from '../usecases/typed/form-fields.ts';
import { pourTyped } from '../usecases/typed/pour-form.ts';
import {
  mendTyped,
  noWorkTyped,
  packTyped,
  pieceTyped,
  prepTyped,
  sessionTyped,
  stripTyped,
} from '../usecases/typed/today-forms.ts';
import { fixHours } from '../usecases/yard/fix-hours.ts';
import { type Deed, type Done, deedRoutes } from './deed-routes.ts';
import { doneNotice } from './notice.ts';
import { page } from './page.tsx';
import type { Screens } from './screens.ts';

const PATH = '/today';

const todayPage = async (c: Context, context: UseCaseContext, refused: RefusedWork | null) => {
  const model = await showToday(context);
  const content = <TodayPage model={model} notice={await doneNotice(c, context)} refused={refused} />;
  const frame = { title: 'Today', at: 'today', yardName: model.yardName, place: 'yard' } as const;
  return page(c, frame, content, { status: refused ? 422 : 200 });
};

/** Reads the form, then does it. */
const after =
  <T,>(read: (fields: FormFields) => Outcome<T>, act: (context: UseCaseContext, read: T) => Done) =>
  async (context: UseCaseContext, fields: FormFields): Done => {
    const typed = read(fields);
    return typed.ok ? act(context, typed.value) : typed;
  };

const mended = async (context: UseCaseContext, fields: FormFields): Done => {
  const read = mendTyped(fields, await dateReading(context));
  return read.ok ? mendPiece(context, read.value.piece, read.value) : read;
};

const DEEDS: Readonly<Record<string, Deed>> = {
  prepared: { act: after(prepTyped, recordPrep), form: ({ mould }) => `prep ${mould}` },
  poured: { act: after(pourTyped, recordPour), form: ({ other, mould0 }) => (other ? 'other-pour' : `pour ${mould0}`) },
  stripped: { act: after(stripTyped, recordStrip), form: ({ mould }) => `strip ${mould}` },
  mended: { act: mended, form: ({ piece }) => `mend ${piece}` },
  scrapped: { act: after(pieceTyped, scrapPiece), form: ({ piece }) => `mend ${piece}` },
  packed: {
    act: after(packTyped, (context, { order, ...how }) => packOrder(context, order, how)),
    form: ({ order }) => `pack ${order}`,
  },
  unpacked: { act: (context, { order = '' }) => unpackOrder(context, order), form: ({ order }) => `unpack ${order}` },
  'as-planned': { act: (context) => writeLateWork(context), form: () => 'as-planned' },
  'not-done': { act: (context, { step }) => giveUpLateWork(context, step || null), form: () => 'not-done' },
  'no-work': { act: after(noWorkTyped, callOffWork), form: () => 'no-work' },
  'stop-at': { act: (context, { session = '', at = '' }) => stopAt(context, { session, at }), form: () => 'stop-at' },
  'one-fewer': {
    act: (context, { session = '', window }) => onePersonFewer(context, { session, window: wholeTyped(window) }),
    form: () => 'one-fewer',
  },
  'planned-anew': { act: after(sessionTyped, planSessionAnew), form: () => 'planned-anew' },
  'fixed-hours': { act: (context, { hours }) => fixHours(context, wholeTyped(hours)), form: () => 'fixed-hours' },
};

export const todayRoutes = (screens: Screens): Hono => deedRoutes(screens, PATH, DEEDS, todayPage);
