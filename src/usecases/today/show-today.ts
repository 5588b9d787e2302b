import type { Tx } from '../../../db/open.ts';
import { recentHeads } from '../../../db/stores/change-store.ts';
import { guessesOfYard } from '../../../db/stores/figure-store.ts';
import { finishedPieces, type StoredFinished } from '../../../db/stores/finished-store.ts';
import { materialsInOrder, onTheirWay, type StoredMaterial } from '../../../db/stores/material-store.ts';
import { wetCuresOfMixes } from '../../../db/stores/mix-wet-cure-store.ts';
import { mouldsInOrder, type StoredMould } from '../../../db/stores/mould-store.ts';
import type { StoredOrder } from '../../../db/stores/order-store.ts';
import { piecesToMend } from '../../../db/stores/piece-to-mend-store.ts';
import { minutesOfSteps } from '../../../db/stores/recorded-step-store.ts';
import { countOfRecords, workRecords } from '../../../db/stores/work-record-store.ts';
import { fixedHours } from '../../../db/stores/yard-store.ts';
import { partWords } from '../../../shared/mould-part.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import { clockIn, dateOfDay, dayNumber, minuteOf } from '../../../shared/time.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { ENOUGH_STRIPS } from '../../engine/begin/measured-strips.ts';
import { pouredToCome } from '../../engine/book/as-of.ts';
import { curingTimesOf, pieceMayBeStripped } from '../../engine/book/curing-times.ts';
import { linesLeft, packMinutesOf } from '../../engine/book/goods.ts';
import { isMendedByDay, isOut } from '../../engine/book/mould-state.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import { customersByOrder } from '../core/customers-by-order.ts';
import { yieldThread } from '../core/yield-thread.ts';
import { openOrdersOf } from '../orders/open-orders.ts';
import { piecesToPack } from '../orders/pieces-to-pack.ts';
import { toMendFacts } from '../orders/to-mend-facts.ts';
import { wetCures } from '../pieces/wet-cures.ts';
import type { CachedPlan } from '../plan/cached-plan.ts';
import { hoursChangedOn } from '../plan/hours-changed.ts';
import { lateSteps } from '../plan/late-steps.ts';
import { lateWork, workOfPlan } from '../plan/late-work.ts';
import { currentPlan } from '../plan/make-plan.ts';
import { sparesPouredIn } from '../plan/spares-of-plan.ts';
import { leftField } from '../typed/left-typed.ts';
import { measuresOf, shownAmount } from '../typed/measures.ts';
import { bookOf } from '../typed/stock-book.ts';
import { watersOfYard } from '../yard/mix-water.ts';
import { stripFacts } from '../yard/strip-facts.ts';
import { begunFacts } from './begun-facts.ts';
import { doneOnDay } from './done-today.ts';
import { type EveningFacts, eveningFacts } from './evening-facts.ts';
import { fixedFacts } from './fixed-facts.ts';
import { hoursFacts } from './hours-facts.ts';
import { lastMixes } from './last-mix.ts';
import { lateFacts } from './late-facts.ts';
import { poursLeft } from './leave-out.ts';
import { notArrived } from './not-arrived.ts';
import { peopleFacts } from './people-facts.ts';
import { sessionForWall } from './session-for-wall.ts';
import { pieceKeyOf, type SessionStep } from './session-step.ts';
import { recipesOf, type Shown, sessionSteps } from './session-steps.ts';
import { sessionToShow } from './session-to-show.ts';
import { coveredNames, settingFacts } from './setting-facts.ts';
import type { EmptyMould, FullMould, PartAsked, ToBeMendedFacts, ToCountFacts, TodayModel } from './today-model.ts';
import { waitingFacts } from './waiting-facts.ts';
import { rainOnSession, warmthNow } from './weather-now.ts';

/** As many changes as a long day of work may leave. */
export const CHANGES_READ = 200;

/** Pieces in moulds that none of the steps strips. */
const otherFull = (yard: YardFile, plan: PlanFile, stripped: ReadonlySet<string>): FullMould[] => {
  const calendar = calendarOf(yard.yard.timeZone);
  const curing = curingTimesOf(yard);
  const customers = customersByOrder(yard);
  return yard.inMould
    .filter(({ mould }) => !stripped.has(mould))
    .map((piece) => {
      const strip = plan.strips.find(({ mould }) => mould === piece.mould);
      const order = piece.order ?? strip?.order;
      return {
        mould: piece.mould,
        piece: yard.castings.find(({ id }) => id === piece.casting)?.name ?? piece.casting,
        customer: order === undefined ? null : (customers.get(order) ?? `order ${order}`),
        filledAt: calendar.instantText(minuteOf(piece.filledAt)),
        mayFrom: calendar.instantText(pieceMayBeStripped(piece, curing)),
        planned: strip?.stripStart ?? null,
        pieceKey: pieceKeyOf(piece.mould, minuteOf(piece.filledAt)),
      };
    });
};

/** Moulds a pour may go into just now, with what each makes. */
const emptyMoulds = (yard: YardFile): EmptyMould[] => {
  const full = new Set(yard.inMould.map(({ mould }) => mould));
  return yard.moulds
    .filter((mould) => !isOut(mould) && !full.has(mould.id))
    .map(({ id, setFor, makes }) => ({
      mould: id,
      setFor,
      makes: makes.map(({ casting }) => ({
        casting,
        piece: yard.castings.find((one) => one.id === casting)?.name ?? casting,
      })),
    }));
};

const packedOrders = (orders: readonly StoredOrder[]): TodayModel['packed'] =>
  orders
    .filter(({ packedAt }) => packedAt !== null)
    .map(({ id, customer }) => ({ order: id, customer: customer?.name ?? `order ${id}` }));

const packedInPart = ({ orders, kits }: YardFile): TodayModel['packedInPart'] =>
  orders.flatMap((order) =>
    order.packedMinutes === undefined
      ? []
      : [
          {
            ...{ order: order.id, customer: order.customer ?? `order ${order.id}` },
            ...{ minutes: order.packedMinutes, inAll: packMinutesOf(order, { kits }) },
          },
        ],
  );

/** For how long which mixes keep pieces wet; and all that was done, where any does, for that may be weeks ago. */
const wetSeen = async (tx: Tx) => {
  const hours = await wetCuresOfMixes(tx);
  return { hours, records: hours.size === 0 ? [] : await workRecords(tx) };
};

/** All that was done, where some of it was a look at a piece that was not hard: a mix may take another time than was thought. */
const hardSeen = async (tx: Tx) => {
  const isAsked = (await countOfRecords(tx, 'not hard')) >= ENOUGH_STRIPS;
  return { records: isAsked ? await workRecords(tx) : [], guesses: isAsked ? await guessesOfYard(tx) : [] };
};

/** What each order that is to be packed may be packed of. */
const toPack = (
  steps: readonly SessionStep[],
  stood: readonly StoredFinished[],
  yard: YardFile,
  plan: PlanFile,
): TodayModel['toPack'] =>
  Object.fromEntries(
    steps.flatMap((step) => (step.kind === 'pack' ? [[step.order, piecesToPack(stood, yard, plan, step.order)]] : [])),
  );

/** Materials of which more was taken than the stock book had: somebody has to count them. */
const toCount = (
  materials: readonly StoredMaterial[],
  { materials: inBook }: YardFile,
  system: UnitSystem,
): ToCountFacts[] =>
  materials
    .filter(({ shortBy }) => shortBy > 0)
    .map(({ id: material, name, unit, shortBy }) => {
      const shown = shownAmount({ unit, quantity: shortBy }, system);
      const found = inBook.find((one) => one.id === material);
      const book = found ? bookOf(found) : '';
      const offcuts = found ? leftField(found, system) : null;
      return { material, name, unit: shown.unit, shortBy: shown.quantity, offcuts, book };
    });

/** Damaged moulds whose day to be mended has come: the plan counts on them, and nobody said that they are. */
const toBeMended = (moulds: readonly StoredMould[], day: string): ToBeMendedFacts[] =>
  moulds.flatMap(({ id: mould, condition, repairedOn, damageNote, parts }) => {
    if (repairedOn === null || !isMendedByDay({ condition, repairedOn }, day)) return [];
    const broken = (parts ?? []).filter((one) => one.condition === 'broken').map(partWords);
    return [{ mould, by: repairedOn, note: [damageNote, ...broken].filter(Boolean).join('; ') || null }];
  });

/** The data as they are recorded, times to come and all. */
const fileOf = ({ file }: CachedPlan, now: string): YardFile => ({ ...file, yard: { ...file.yard, now } });

const overdueNames = (yard: YardFile, { stored }: CachedPlan): string[] => {
  const late = lateWork(yard, workOfPlan(stored));
  return late ? lateSteps(late).map(({ name }) => name) : [];
};

/** Of the next session in which something is mixed, where that is tomorrow, or the next that has anything to do on any day. */
const eveningBefore = async (
  context: UseCaseContext,
  { plan, yard }: { plan: PlanFile; yard: YardFile },
  day: string,
  shown: Shown,
): Promise<EveningFacts | null> => {
  const session = sessionForWall(plan, yard);
  if (!session || session.day <= dayNumber(day)) return null;
  const isNext = sessionToShow(plan, yard).session?.start === session.start;
  if (!isNext && session.day !== dayNumber(day) + 1) return null;
  const spares = await sparesPouredIn(context, { plan, yard }, session);
  return eveningFacts(plan, yard, session, { ...shown, spares });
};

const inOrder = (steps: readonly SessionStep[]): SessionStep[] =>
  [...steps].sort((a, b) => minuteOf(a.at) - minuteOf(b.at));

/** The session under way or the next one, step by step, with what was done today and what else can be written down. */
export const showToday = async (
  context: UseCaseContext,
  part: PartAsked = { list: '', from: 0 },
): Promise<TodayModel> => {
  const { plan, yard, cached, revision } = await currentPlan(context);
  const calendar = calendarOf(yard.yard.timeZone);
  const now = minuteOf(context.now);
  const { session, underWay, idle } = sessionToShow(plan, yard);
  const { changes, toMend, hours, system, waters, materials, coming, moulds, stood, covered, wet, hard } =
    await context.database.read(async (tx) => ({
      changes: await recentHeads(tx, CHANGES_READ),
      toMend: await piecesToMend(tx),
      hours: await fixedHours(tx),
      system: (await measuresOf(tx)).system,
      waters: await watersOfYard(tx),
      materials: await materialsInOrder(tx),
      coming: await onTheirWay(tx),
      moulds: await mouldsInOrder(tx),
      stood: await finishedPieces(tx),
      covered: await minutesOfSteps(tx, coveredNames(yard)),
      wet: await wetSeen(tx),
      hard: await hardSeen(tx),
    }));
  const orders = await openOrdersOf(context, cached);
  const steps = session ? sessionSteps(plan, yard, session, { system, waters }) : [];
  await yieldThread();
  const begun = begunFacts(yard, cached.stored, steps, { system, waters });
  const late = lateFacts(yard, cached.stored, { system, waters });
  const lateSteps = late.flatMap(({ lines }) => lines.map(({ step }) => step));
  const day = today(yard.yard.timeZone, context.now);
  // Only what the list of today strips has its button there.
  const listed = session && dateOfDay(session.day) === day ? [...lateSteps, ...steps] : lateSteps;
  const hoursOrNone = session && hoursFacts(session, calendar);
  const stripped = new Set(listed.flatMap((step) => (step.kind === 'strip' && step.inMould ? [step.mould] : [])));
  return {
    yardName: yard.yard.name,
    today: day,
    ...{ now: calendar.instantText(now), clock: context.now },
    ...{ revision, part },
    session: hoursOrNone,
    underWay,
    fixed: fixedFacts(yard, session, hours),
    idle: idle && hoursFacts(idle, calendar),
    steps,
    people: session ? peopleFacts(session, steps, calendar) : [],
    spares: session ? await sparesPouredIn(context, { plan, yard }, session) : [],
    recipes: recipesOf(steps, yard, { system, waters }),
    evening: await eveningBefore(context, { plan, yard }, day, { system, waters }),
    overdue: overdueNames(yard, cached),
    begun,
    late,
    warmth: warmthNow(yard, { session: hoursOrNone, steps }, { day, now, system }),
    rain: rainOnSession(yard, { session: hoursOrNone, steps }, system),
    waiting: waitingFacts(inOrder([...lateSteps, ...steps]), context.now),
    lastMix: session
      ? lastMixes(plan, yard, session).map(({ mix, at }) => ({ mix, at: calendar.instantText(at) }))
      : [],
    otherFull: otherFull(yard, plan, stripped),
    setting: settingFacts(yard, now, covered),
    toCome: pouredToCome(fileOf(cached, context.now)).map(({ mould, filledAt }) => ({
      ...{ mould, filledAt: calendar.instantText(minuteOf(filledAt)) },
    })),
    emptyMoulds: emptyMoulds(yard),
    toCount: toCount(materials, yard, system),
    toBeMended: toBeMended(moulds, day),
    notArrived: notArrived(coming, materials, {
      ...{ day, system, deliveredBy: yard.yard.deliveredBy, clock: clockIn(yard.yard.timeZone, context.now) },
    }),
    orders: yard.orders
      .filter((order) => linesLeft(order).length > 0)
      .map(({ id, customer }) => ({ order: id, customer: customer ?? `order ${id}` })),
    toLeave: session ? poursLeft(yard, plan, session) : [],
    packed: packedOrders(orders),
    packedInPart: packedInPart(yard),
    toPack: toPack([...lateSteps, ...steps], stood, yard, plan),
    toMend: toMendFacts(toMend, yard),
    wetCures: wetCures(yard, wet.records, wet.hours, now),
    hardOtherwise: stripFacts(yard, hard.records, { ...hard, system }).filter(
      ({ enough, changes }) => enough && changes.length > 0,
    ),
    done: doneOnDay(changes, now, calendar),
    hoursChanged: hoursChangedOn(changes, day),
  };
};
