import { listText } from '../../shared/list-text.ts';
import { countText, plural } from '../../shared/plural.ts';
import type { ToMendFacts } from '../../src/usecases/orders/to-mend-facts.ts';
import type { SessionHours } from '../../src/usecases/today/hours-facts.ts';
import type {
  AmountFacts,
  BatchStep,
  CoatStep,
  CutFacts,
  CutFrom,
  PackStep,
  PrepStep,
  SessionStep,
} from '../../src/usecases/today/session-step.ts';
import type { LateFacts, TodayModel } from '../../src/usecases/today/today-model.ts';
import type { RainFacts } from '../../src/usecases/today/weather-now.ts';
import { byClock, fromClock, hoursText, isNever } from '../parts/clock-text.ts';
import { dayText, onDayText } from '../parts/day-text.ts';
import { isMeasure, quantityText } from '../parts/quantity-text.ts';

/** "1 person, one more from 9:00 to 12:30". */
export const peopleText = ({ start, end, windows }: SessionHours): string => {
  const all = windows.filter((window) => window.start === start && window.end === end);
  const some = windows.filter((window) => !all.includes(window));
  const throughout = all.reduce((sum, { crew }) => sum + crew, 0);
  const rest = some.map((window) => `${window.crew}${throughout > 0 ? ' more' : ''} from ${hoursText(window)}`);
  return [...(throughout > 0 ? [countText(throughout, 'person', 'people')] : []), ...rest].join(', ');
};

/** "1 bag of Fast-setting mortar", "57 g of Citric acid", "4 × Corner clip". */
export const amountOfText = ({ quantity, unit, name }: AmountFacts): string =>
  unit === '' || unit === 'each'
    ? `${Number(quantity.toFixed(2))} × ${name}`
    : `${quantityText(quantity, unit)} of ${name}`;

/** "an offcut of 2232 mm", "a whole one", "2 whole ones". */
const stickText = ({ offcut, sticks }: CutFrom): string => {
  if (offcut === null) return sticks === 1 ? 'a whole one' : `${sticks} whole ones`;
  return sticks === 1 ? `an offcut of ${offcut}` : `${sticks} offcuts of ${offcut}`;
};

/** ", from a whole one", ": 3 from an offcut of 635 mm, 1 from a whole one". */
const fromText = (from: readonly CutFrom[]): string => {
  const [first, ...more] = from;
  if (!first) return '';
  if (more.length === 0) return `, from ${stickText(first)}`;
  return `: ${from.map((one) => `${one.count} from ${stickText(one)}`).join(', ')}`;
};

/** "4 × 190 mm of Sleeve pipe". */
export const cutText = ({ count, length, name, from }: CutFacts): string =>
  `${count} × ${length} of ${name}${fromText(from)}`;

/** "May be stripped now", "from 10:45" today, "from Sun 11 Apr, 7:30" on another day. */
export const mayText = (mayFrom: string, { today, now }: Pick<TodayModel, 'today' | 'now'>): string => {
  if (isNever(mayFrom, today)) return 'It is too cold for it to set';
  if (Date.parse(mayFrom) <= Date.parse(now)) return 'May be stripped now';
  const day = mayFrom.slice(0, 10) === today ? '' : `${dayText(mayFrom.slice(0, 10), today)}, `;
  return `May be stripped from ${day}${fromClock(mayFrom)}`;
};

/** "It has cured.", "Fit to go out from Tue 13 Apr, by plan.": of a piece that is to be mended first. */
export const curedText = ({ curedAt }: ToMendFacts, { today, now }: Pick<TodayModel, 'today' | 'now'>): string => {
  if (isNever(curedAt, today)) return 'It is too cold for it to cure.';
  if (Date.parse(curedAt) <= Date.parse(now)) return 'It has cured.';
  return `Once mended it is fit to go out from ${dayText(curedAt.slice(0, 10), today)}, by plan.`;
};

export const forText = (customer: string | null): string => (customer === null ? 'for stock' : `for ${customer}`);

/** "One to spare: Panel 900 in 900 no. 2. It goes to stock if every piece for an order is good." */
export const sparesTodayText = (spares: TodayModel['spares']): string =>
  `One to spare: ${listText(spares.map(({ name, mould }) => `${name} in ${mould}`))}. ${plural(spares.length, 'It goes', 'They go')} to stock if every piece for an order is good.`;

/** "Clean and coat 900 no. 2". */
export const coatText = ({ clean, mould }: CoatStep): string => `${clean ? 'Clean and coat' : 'Coat'} ${mould}`;

/** "The coat dries until 18:40. The mould is set up after that.", "… until Sun 11 Apr, 7:30 …" on another day. */
export const dryText = ({ dryFrom, until }: CoatStep): string => {
  if (Date.parse(dryFrom) === Date.parse(until)) return 'It can be set up at once.';
  const day =
    dryFrom.slice(0, 10) === until.slice(0, 10) ? '' : `${dayText(dryFrom.slice(0, 10), until.slice(0, 10))}, `;
  return `The coat dries until ${day}${fromClock(dryFrom)}. The mould is set up after that.`;
};

/** What there is to do to a mould, in order: "clean it, change it over from Panel 900, set it up for Panel 1200". */
export const prepText = ({ clean, changeFrom, piece }: PrepStep): string =>
  listText([
    ...(clean ? ['clean it'] : []),
    ...(changeFrom === null ? [] : [`change it over from ${changeFrom}`]),
    `set it up for ${piece}`,
  ]);

/** "180 of 300 minutes of it. It goes on Sat 17 Apr.", "The last 120 of 300 minutes." */
export const partText = ({ part, at }: PackStep): string | null => {
  if (part === null) return null;
  const { minutes, inAll, goesOn } = part;
  if (goesOn === null) return `The last ${minutes} of ${inAll} minutes.`;
  return `${minutes} of ${inAll} minutes of it. It goes on ${dayText(goesOn.slice(0, 10), at.slice(0, 10))}.`;
};

/** "Pack for Ann", "Begin packing for Ann", "Go on packing for Ann" */
export const packText = ({ customer, part }: PackStep): string => {
  if (part === null) return `Pack for ${customer}`;
  return part.before > 0 ? `Go on packing for ${customer}` : `Begin packing for ${customer}`;
};

/** What the button of a packing says: of one with more of its order to come, that this much is done. */
export const packedWord = ({ part }: Pick<PackStep, 'part'>): string => (part?.goesOn ? 'This much packed' : 'Packed');

const mouldsText = ({ pours }: BatchStep): string => listText(pours.map(({ mould }) => mould));

/** What a step is, in a few words: for the first line of the page. */
export const stepText = (step: SessionStep): string => {
  if (step.kind === 'coat') return `${step.clean ? 'clean and coat' : 'coat'} ${step.mould}`;
  if (step.kind === 'prep') return `set up ${step.mould}`;
  if (step.kind === 'batch') return `mix ${quantityText(step.bags, 'bag')} for ${mouldsText(step)}`;
  if (step.kind === 'strip') return `strip ${step.mould}`;
  if (step.kind === 'pack') return `${packText(step)[0]?.toLowerCase()}${packText(step).slice(1)}`;
  return EDGE_WORDS[step.kind].toLowerCase();
};

/** "pour 8 pieces, strip 2 and pack 1 order" */
export const workText = (steps: readonly SessionStep[]): string => {
  const pours = steps.flatMap((step) => (step.kind === 'batch' ? step.pours : [])).length;
  const strips = steps.filter(({ kind }) => kind === 'strip').length;
  const packs = steps.filter(({ kind }) => kind === 'pack').length;
  const preps = steps.filter(({ kind }) => kind === 'prep').length;
  const coats = steps.filter(({ kind }) => kind === 'coat').length;
  const parts = [
    ...(pours > 0 ? [`pour ${countText(pours, 'piece')}`] : []),
    ...(strips > 0 ? [`strip ${strips}`] : []),
    ...(packs > 0 ? [`pack ${countText(packs, 'order')}`] : []),
  ];
  if (parts.length > 0) return listText(parts);
  const readied = [
    ...(coats > 0 ? [`coat ${countText(coats, 'mould')}`] : []),
    ...(preps > 0 || coats === 0 ? [`set up ${countText(preps, 'mould')}`] : []),
  ];
  return listText(readied);
};

/**
 * From when to when a step is, in steps of five minutes: never before it may be done, and never before what ends at its
 * minute is over. "8:25 to 8:40"; of one that is shorter than that only when it begins.
 */
export const stepHours = ({ at, until }: Pick<SessionStep, 'at' | 'until'>): { from: string; to: string | null } => {
  const [from, to] = [fromClock(at), fromClock(until)];
  return { from, to: from === to ? null : to };
};

/** Whether the time of a step is over by the clock. */
export const isOver = ({ until }: Pick<SessionStep, 'until'>, { now }: Pick<TodayModel, 'now'>): boolean =>
  Date.parse(until) <= Date.parse(now);

export const isWork = ({ kind }: SessionStep): boolean => kind !== 'set up' && kind !== 'clear up';

/** "Under way until 9:30" */
export const underWayText = ({ until }: SessionStep): string => `Under way until ${fromClock(until)}`;

/** "today, 8:00 to 13:30", "Sat 10 Apr, 8:00 to 13:30": a session of which not all is recorded. */
export const lateSessionText = ({ date, hours }: Pick<LateFacts, 'date' | 'hours'>, today: string): string =>
  [date === today ? 'today' : dayText(date, today), ...(hours ? [hoursText(hours)] : [])].join(', ');

/** What becomes of work that is not recorded after its session, and in what order it can be. */
export const lateNote = (late: TodayModel['late']): string =>
  `The plan counts on it as it was planned, until you say how it was.${
    late.length > 1 ? ' Each session can be recorded once those before it are.' : ''
  }`;

/** Work of the session under way whose time is over, and which is not recorded. */
const overdueSteps = (model: TodayModel): SessionStep[] =>
  model.steps.filter((step) => isWork(step) && isOver(step, model));

/** "Next session Sat 17 Apr, 8:00 to 12:00: strip 1." */
const nextText = ({ session, steps, today }: Pick<TodayModel, 'session' | 'steps' | 'today'>): string => {
  if (!session) return 'No session has anything to do.';
  if (session.date === today) return `Today, ${hoursText(session)}: ${workText(steps)}.`;
  return `Next session ${dayText(session.date, today)}, ${hoursText(session)}: ${workText(steps)}.`;
};

const lateSteps = ({ late }: Pick<TodayModel, 'late'>): SessionStep[] =>
  late.flatMap(({ lines }) => lines.map(({ step }) => step));

/** "To be recorded, of Sat 10 Apr: pour 4 pieces and strip 2.", "To be recorded, of 3 sessions: …" */
const lateText = ({ late, today }: Pick<TodayModel, 'late' | 'today'>): string => {
  const [first] = late;
  const day = first && first.date !== today ? `, of ${dayText(first.date, today)}` : '';
  const which = late.length > 1 ? `, of ${late.length} sessions` : day;
  return `To be recorded${which}: ${workText(lateSteps({ late }))}.`;
};

/**
 * The first line: what is under way or comes next while a session is, what of sessions before is not recorded, else when
 * the next one is and what it is for.
 */
export const todayAnswer = (model: TodayModel): string => {
  const next = model.steps.find((step) => isWork(step) && (!model.underWay || !isOver(step, model)));
  const begun = model.begun.find(({ step }) => step === next || !model.steps.includes(step))?.step;
  if (begun) return `${underWayText(begun)}: ${stepText(begun)}.`;
  if (model.underWay && next) return `Next, ${fromClock(next.at)}: ${stepText(next)}.`;
  if (model.underWay) return `To be recorded: ${workText(overdueSteps(model))}.`;
  return model.late.length > 0 ? lateText(model) : nextText(model);
};

/** "9:10 to 9:20 one person keeps wet what is out of its mould." */
const wetText = ({ wet }: SessionHours): string =>
  wet ? `${hoursText(wet)} one person keeps wet what is out of its mould.` : '';

/** Who is there, by when the last mix has to be begun, and when pieces are wetted. */
export const todayNote = ({
  session,
  lastMix,
  idle,
  today,
}: Pick<TodayModel, 'session' | 'lastMix' | 'idle' | 'today'>): string => {
  const idleText = idle ? `Nothing is planned for today's hours, ${hoursText(idle)}.` : '';
  if (!session) return idleText || 'The list fills when an order is taken.';
  const mixes = lastMix.map(({ mix, at }) => `Last mix of ${mix} by ${byClock(at)}.`);
  const day = session.date === today ? '' : `${dayText(session.date, today)}: `;
  return [idleText, `${day}${peopleText(session)}.`, ...mixes, wetText(session)].filter(Boolean).join(' ');
};

/** Below the first line; what that line does not say of work that is over, and of what comes next. */
export const belowAnswer = (model: TodayModel): string | undefined => {
  const overdue = model.underWay ? overdueSteps(model) : [];
  const open = overdue.length > 0 && overdue.length < model.steps.filter(isWork).length;
  const note = open ? `${todayNote(model)} Not recorded yet: ${workText(overdue)}.` : todayNote(model);
  if (model.late.length === 0) return note;
  if (model.underWay) return `${note} ${lateText(model)}`;
  return model.session ? `${nextText(model)} ${todayNote(model)}` : undefined;
};

/** What is weighed or measured is fetched to a tenth, never too little; bags and pieces as they are used. */
const fetched = (one: AmountFacts): AmountFacts =>
  isMeasure(one.unit) ? { ...one, quantity: Math.ceil(one.quantity * 10 - 1e-6) / 10 } : one;

/** Everything that goes into the mixes of a session, to have it at hand. */
export const toHaveReady = (steps: readonly SessionStep[]): AmountFacts[] => {
  const sums = new Map<string, AmountFacts>();
  for (const step of steps)
    for (const { name, unit, quantity } of step.kind === 'batch' ? [...step.ingredients, ...step.fittings] : [])
      sums.set(name, { name, unit, quantity: quantity + (sums.get(name)?.quantity ?? 0) });
  return [...sums.values()].map(fetched);
};

/** The ends of a session: a mould is set up, a yard is opened. */
export const EDGE_WORDS = { 'set up': 'Open the yard', 'clear up': 'Clear up' };

/** "Rain is expected today: 8 mm.", "Rain is expected on Saturday: 8 mm." */
export const rainText = ({ date, amount }: RainFacts, today: string): string =>
  `Rain is expected ${onDayText(date, today)}: ${amount}.`;
