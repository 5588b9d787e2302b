import type { Context, Hono } from 'hono';
import { partOfTodayPath } from '../../views/today/part-of-today.tsx';
import { SlipChoice, SlipDates, slipPage } from '../../views/today/running-late.tsx';
import { TodayPage } from '../../views/today/today-page.tsx';
import { countMaterial } from '../usecases/buying/count-material.ts';
import { receiveMaterial } from '../usecases/buying/receive-material.ts';
import type { UseCaseContext } from '../usecases/core/context.ts';
import { markMould } from '../usecases/moulds/mark-mould.ts';
import { packOrder } from '../usecases/orders/pack-order.ts';
import { unpackOrder } from '../usecases/orders/unpack-order.ts';
import { dateReading } from '../usecases/plan/date-reading.ts';
import { NOTHING_ELSE, type RefusedForm, saveEdit } from '../usecases/plan/save-edit.ts';
import { callOffWork } from '../usecases/today/call-off-work.ts';
import { coverPieces } from '../usecases/today/cover-pieces.ts';
import { endMixing } from '../usecases/today/end-mixing.ts';
import { giveUpLateWork } from '../usecases/today/give-up-late-work.ts';
import { leaveForAnotherDay } from '../usecases/today/leave-out.ts';
import { lookAgain } from '../usecases/today/look-again.ts';
import { mendPiece } from '../usecases/today/mend-piece.ts';
import { anotherHour, onePersonMore, runningLate } from '../usecases/today/more-hours.ts';
import { onePersonFewer } from '../usecases/today/one-person-fewer.ts';
import { planSessionAnew } from '../usecases/today/plan-session-anew.ts';
import { readThermometer } from '../usecases/today/read-thermometer.ts';
import { recordBefore } from '../usecases/today/record-before.ts';
import { recordCoat } from '../usecases/today/record-coat.ts';
import { recordPour } from '../usecases/today/record-pour.ts';
import { recordPrep } from '../usecases/today/record-prep.ts';
import { recordStrip } from '../usecases/today/record-strip.ts';
import { retimedSession } from '../usecases/today/retimed-session.ts';
import { scrapPiece } from '../usecases/today/scrap-piece.ts';
import { showToday } from '../usecases/today/show-today.ts';
import { type SlipModel, slipAnswer, slipAnswers } from '../usecases/today/slip-answers.ts';
import { startMixing } from '../usecases/today/start-mixing.ts';
import { stopAt } from '../usecases/today/stop-at.ts';
import { throwBatchAway } from '../usecases/today/throw-batch-away.ts';
import type { PartAsked } from '../usecases/today/today-model.ts';
import { writeLateWork } from '../usecases/today/write-late-work.ts';
import { type FormFields, wholeTyped } from '../usecases/typed/form-fields.ts';
import { pourTyped } from '../usecases/typed/pour-form.ts';
import { arrivedTyped, countTyped } from '../usecases/typed/purchase-form.ts';
import {
  asPlannedTyped,
  batchTyped,
  beforeTyped,
  coatTyped,
  coveredTyped,
  fewerTyped,
  fixedHoursTyped,
  mendTyped,
  mixedTyped,
  mouldNamed,
  notDoneTyped,
  noWorkTyped,
  orderNamed,
  packTyped,
  pieceTyped,
  prepTyped,
  sessionTyped,
  stopTyped,
  stripTyped,
  thrownTyped,
} from '../usecases/typed/today-forms.ts';
import { fixHours } from '../usecases/yard/fix-hours.ts';
import { errorsByField } from './form.ts';
import { atOnce, effectFirst, type Save, withDays } from './form-route.tsx';
import { formsOnPage, type PageForm } from './forms-on-page.tsx';
import { doneNotice } from './notice.ts';
import { page, wantsPart } from './page.tsx';
import type { Screens } from './screens.ts';
import { whoIsAt } from './this-device.ts';

const PATH = '/today';

const RUNNING_LATE = 'running-late';

/** The slip that a form asked about: not worked out yet, or sent on with what it does no longer in sight. */
const slipOf = async (context: UseCaseContext, refused: RefusedForm | null): Promise<SlipModel | null> => {
  if (refused?.form !== RUNNING_LATE || !refused.effect) return null;
  const { typed, effect } = refused;
  const retimed = await retimedSession(context, typed);
  if (!retimed.ok) return null;
  return { retimed: retimed.value, answers: effect.isComing ? [] : [{ without: typed.without ?? '', effect }] };
};

/** Which part of which long list an address asks for. */
const partAsked = (query: URLSearchParams): PartAsked => ({
  list: query.get('list') ?? '',
  from: wholeTyped(query.get('from') ?? undefined) ?? 0,
});

/** Whoever went on in a long list goes on there once something of it is recorded. */
const backInList = (c: Context): string => {
  const page = c.req.header('HX-Current-URL') ?? c.req.header('Referer') ?? '';
  const asked = URL.canParse(page) ? partAsked(new URL(page).searchParams) : { list: '', from: 0 };
  const { list } = asked;
  return /^[\w-]+$/.test(list) ? partOfTodayPath(list, asked.from) : PATH;
};

const todayPage = async (c: Context, context: UseCaseContext, refused: RefusedForm | null, known?: SlipModel) => {
  const model = await showToday(context, partAsked(new URLSearchParams(c.req.query())));
  const slip = known ?? (await slipOf(context, refused));
  const waiting = slip?.answers.length === 0 ? { withoutScript: slipPage(refused?.typed ?? {}) } : {};
  const frame = { title: 'Today', at: 'today', yardName: model.yardName, place: 'yard', ...waiting } as const;
  const notice = await doneNotice(c, context);
  const content = <TodayPage {...{ model, notice, refused, slip }} who={whoIsAt(c)} />;
  return { frame, content };
};

/** A mould that is mended needs no more words. */
const NO_DETAILS = { note: '', repairedOn: null, cameOut: null };

/** What a slip does to its session is shown at once; the page asks for what it does to dates. Sent with that in sight it is done. */
const slipFirst: Save<unknown> = async (context, fields) => {
  if (fields.seen !== undefined) return saveEdit(context, runningLate(context, fields), fields.seen);
  const retimed = await retimedSession(context, fields);
  if (!retimed.ok) return { kind: 'refused', faults: retimed.faults };
  return { kind: 'moves', effect: { ...NOTHING_ELSE, moved: [], seen: '', isComing: true } };
};

const FORMS: Readonly<Record<string, PageForm>> = {
  coated: { save: atOnce(withDays(coatTyped), recordCoat), form: ({ step }) => `coat ${step}` },
  prepared: { save: atOnce(withDays(prepTyped), recordPrep), form: ({ step }) => `prep ${step}` },
  poured: {
    save: atOnce(withDays(pourTyped), recordPour),
    form: ({ other, step }) => (other ? 'other-pour' : `pour ${step}`),
  },
  mixing: { save: atOnce(batchTyped, startMixing), form: ({ mould, at }) => `mix ${mould} ${at}` },
  mixed: { save: atOnce(mixedTyped, endMixing), form: ({ moulds }) => `mixed ${moulds}` },
  covered: { save: atOnce(withDays(coveredTyped), coverPieces), form: () => 'covered' },
  'thrown-away': { save: atOnce(thrownTyped, throwBatchAway), form: () => 'thrown-away' },
  'not-hard': { save: atOnce(mouldNamed, lookAgain), form: ({ mould }) => `not hard ${mould}` },
  stripped: { save: atOnce(withDays(stripTyped), recordStrip), form: ({ mould }) => `strip ${mould}` },
  mended: {
    save: atOnce(withDays(mendTyped), (context, { piece, fitFrom }) => mendPiece(context, piece, { fitFrom })),
    form: ({ piece }) => `mend ${piece}`,
  },
  scrapped: { save: atOnce(pieceTyped, scrapPiece), form: ({ piece }) => `mend ${piece}` },
  packed: {
    save: atOnce(withDays(packTyped), (context, { order, ...how }) => packOrder(context, order, how)),
    form: ({ order }) => `pack ${order}`,
  },
  unpacked: { save: atOnce(orderNamed, unpackOrder), form: ({ order }) => `unpack ${order}` },
  'as-planned': {
    save: atOnce(asPlannedTyped, writeLateWork),
    form: () => 'as-planned',
  },
  'before-it': { save: atOnce(beforeTyped, recordBefore), form: ({ before }) => `before ${before}` },
  'not-done': { save: atOnce(notDoneTyped, giveUpLateWork), form: () => 'not-done' },
  counted: {
    save: atOnce(countTyped, (context, { material, counted, ...also }) =>
      countMaterial(context, material, counted, also),
    ),
    form: ({ material }) => `count ${material}`,
  },
  arrived: {
    save: atOnce(arrivedTyped, (context, { goods, came }) => receiveMaterial(context, goods, came)),
    form: ({ goods }) => `arrived ${goods}`,
  },
  'mould-mended': {
    save: atOnce(mouldNamed, (context, mould) => markMould(context, mould, 'mended', NO_DETAILS)),
    form: ({ mould }) => `mended ${mould}`,
  },
  'no-work': { save: atOnce(noWorkTyped, callOffWork), form: () => 'no-work' },
  'stop-at': { save: atOnce(stopTyped, stopAt), form: () => 'stop-at' },
  'one-fewer': { save: atOnce(fewerTyped, onePersonFewer), form: () => 'one-fewer' },
  'another-hour': { save: effectFirst((fields, _c, at) => anotherHour(at, fields)), form: () => 'another-hour' },
  'one-more': { save: effectFirst((fields, _c, at) => onePersonMore(at, fields)), form: () => 'one-more' },
  'running-late': { save: slipFirst, form: () => RUNNING_LATE },
  thermometer: { save: effectFirst((fields, _c, at) => readThermometer(at, fields)), form: () => 'thermometer' },
  'left-out': {
    save: effectFirst((fields, _c, at) => leaveForAnotherDay(at, fields)),
    form: ({ without }) => `leave ${without}`,
  },
  'planned-anew': { save: atOnce(sessionTyped, planSessionAnew), form: () => 'planned-anew' },
  'fixed-hours': { save: atOnce(fixedHoursTyped, fixHours), form: () => 'fixed-hours' },
};

/** What was asked about a slip, as it stands in an address. */
const slipAsked = (c: Context): FormFields => ({
  ...{ session: c.req.query('session') ?? '', at: c.req.query('at') ?? '' },
  ...(c.req.query('without') ? { without: c.req.query('without') } : {}),
});

/** What a slip does to dates, or what leaving out the rest of an order would do, for the page that asks by itself. */
const slipPart = async (c: Context, context: UseCaseContext, typed: FormFields) => {
  const answer = await slipAnswer(context, typed);
  if (!answer.ok) return page(c, { title: 'Today' }, <p>{answer.faults[0]?.message}</p>);
  const { today } = await dateReading(context);
  const retimed = typed.without === undefined ? null : await retimedSession(context, typed);
  const left = retimed?.ok ? retimed.value.toLeave.find(({ order }) => order === typed.without) : undefined;
  const shown = { typed, today, effect: answer.value.effect };
  return page(c, { title: 'Today' }, left ? <SlipChoice {...shown} left={left} /> : <SlipDates {...shown} />);
};

/** The same of all that could be done, on the whole page: where no script asks. */
const slipAnswered = async (c: Context, screens: Screens) => {
  const [context, typed] = [screens.context(), slipAsked(c)];
  if (wantsPart(c)) return slipPart(c, context, typed);
  const asked = await slipAnswers(context, typed);
  const refused = { form: RUNNING_LATE, errors: asked.ok ? {} : errorsByField(asked.faults), typed, effect: null };
  const { frame, content } = await todayPage(c, context, refused, asked.ok ? asked.value : undefined);
  return page(c, frame, content, { status: asked.ok ? 200 : 422 });
};

export const todayRoutes = (screens: Screens): Hono =>
  formsOnPage(screens, { path: PATH, show: todayPage, next: backInList }, FORMS).get(`${PATH}/running-late`, (c) =>
    slipAnswered(c, screens),
  );
