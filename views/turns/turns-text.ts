import { listText } from '../../shared/list-text.ts';
import { countText } from '../../shared/plural.ts';
import type { MouldTurns, TurnFacts } from '../../src/usecases/turns/turns-of-plan.ts';
import { fromClock, fromMomentText, hoursText, momentText } from '../parts/clock-text.ts';
import { clockText, dayText } from '../parts/day-text.ts';
import type { TurnsShown } from './turns-shown.ts';

export const whomText = ({ customer }: TurnFacts): string => customer ?? 'Stock';

/** "9:10 to 11:20", or with the day where the strip is on another one; "in it since Sat 3 Apr" for an earlier pour. */
export const spellText = ({ pouredAt, strippedAt }: TurnFacts, today: string, boxed: 'pour' | 'before'): string => {
  if (boxed === 'before') return `in since ${dayText(pouredAt.slice(0, 10), today)}`;
  if (strippedAt === null) return `${clockText(pouredAt)}, stays in`;
  const sameDay = strippedAt.slice(0, 10) === pouredAt.slice(0, 10);
  return `${clockText(pouredAt)} to ${sameDay ? fromClock(strippedAt) : dayText(strippedAt.slice(0, 10), today)}`;
};

/** Everything about a turn in one sentence, for those who hear the chart. */
export const turnSentence = (turn: TurnFacts, today: string): string => {
  const strip = turn.strippedAt === null ? 'stays in the mould' : `stripped ${fromMomentText(turn.strippedAt, today)}`;
  return `${whomText(turn)}: ${turn.piece} in ${turn.mould}, poured ${momentText(turn.pouredAt, today)}, ${strip}`;
};

/** "out of use until Sat 17 Apr" */
export const outText = ({ outOfUse }: MouldTurns, today: string): string =>
  outOfUse?.until ? `out of use until ${dayText(outOfUse.until, today)}` : 'out of use';

const outNote = (moulds: readonly MouldTurns[], today: string): string => {
  const out = moulds.filter(({ outOfUse }) => outOfUse !== null);
  return out.length === 0 ? '' : `${listText(out.map((mould) => `${mould.mould} is ${outText(mould, today)}`))}.`;
};

/** "24 turns in 10 moulds, Sat 10 Apr to Sat 24 Apr." */
export const turnsAnswer = ({ turns, sessions }: TurnsShown, today: string): string => {
  const [first, last] = [sessions[0], sessions.at(-1)];
  if (!first || !last) return 'No mould has anything to do.';
  const moulds = new Set(turns.map(({ mould }) => mould)).size;
  const days =
    first.date === last.date
      ? dayText(first.date, today)
      : `${dayText(first.date, today)} to ${dayText(last.date, today)}`;
  return `${countText(turns.length, 'turn')} in ${countText(moulds, 'mould')}, ${days}.`;
};

export const turnsNote = ({ moulds, turns }: TurnsShown, today: string): string => {
  const idle = moulds.filter(({ mould, outOfUse }) => !outOfUse && !turns.some((turn) => turn.mould === mould));
  const idleNote = idle.length === 0 ? '' : `Nothing is planned for ${listText(idle.map(({ mould }) => mould))}.`;
  return [outNote(moulds, today), idleNote].filter(Boolean).join(' ');
};

/** A text that fits a width, by a cautious guess of how wide its letters are. */
export const fitted = (text: string, width: number, letterWidth: number): string => {
  const most = Math.max(1, Math.floor(width / letterWidth));
  return text.length <= most ? text : `${text.slice(0, most - 1).trimEnd()}…`;
};

/** Letters of the end that stay where a name is cut in its middle: "plot 30". */
const END = 7;

/**
 * As `fitted`, but in the middle where another of the texts would then read the same: "Allotme…plot 30" beside
 * "Allotme…plot 12".
 */
export const fittedApart = (text: string, others: readonly string[], width: number, letterWidth: number): string => {
  const cut = fitted(text, width, letterWidth);
  const most = Math.max(1, Math.floor(width / letterWidth));
  const isAlike = others.some((other) => other !== text && fitted(other, width, letterWidth) === cut);
  if (!isAlike || cut === text || most <= END + 1) return cut;
  return `${text.slice(0, most - END - 1).trimEnd()}…${text.slice(-END).trimStart()}`;
};

/** "16:30 to 17:15"; "from 16:30" where there is no room for that. */
export const hoursFitted = (session: { start: string; end: string }, width: number, letterWidth: number): string => {
  const hours = hoursText(session);
  return hours.length * letterWidth <= width ? hours : `from ${clockText(session.start)}`;
};
