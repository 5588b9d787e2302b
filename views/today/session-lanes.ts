import { countText } from '../../shared/plural.ts';
import type { SessionStep } from '../../src/usecases/today/session-step.ts';
import type { TodayModel } from '../../src/usecases/today/today-model.ts';
import type { SessionLane } from '../charts/session-geometry.ts';
import { fromClock, hoursText } from '../parts/clock-text.ts';
import { stepText } from './today-text.ts';

/** How a kind of work is drawn: a mix as a pail, the rest by its pattern. */
type SpellDrawn = 'mix' | 'open' | 'hatched' | 'dotted' | 'wavy' | 'edge';

/** A spell of one kind of work in a lane, of one step or several, one right after another. */
export interface DrawnSpell {
  start: number;
  end: number;
  drawn: SpellDrawn;
  /** "set up", "strip 3"; the pieces of a mix stand in its pail. */
  word: string;
  pieces: number;
}

export interface DrawnLane extends SessionLane {
  hours: string;
  spells: readonly (DrawnSpell & { mix: boolean })[];
  /** All of it in words, in order of time. */
  facts: readonly string[];
}

const DRAWN: Record<SessionStep['kind'], { drawn: SpellDrawn; word: string }> = {
  batch: { drawn: 'mix', word: 'mix' },
  prep: { drawn: 'open', word: 'set up' },
  coat: { drawn: 'open', word: 'coat' },
  strip: { drawn: 'hatched', word: 'strip' },
  pack: { drawn: 'dotted', word: 'pack' },
  'set up': { drawn: 'edge', word: 'open' },
  'clear up': { drawn: 'edge', word: 'clear up' },
};

const MINUTE_MS = 60_000;
/** A pause that is shorter than this is not seen in the drawing. */
const PAUSE_MINUTES = 5;

/** Minutes since midnight, by the clock at the start of the session. */
export const minutesOfSession = ({ start }: { start: string }): ((instant: string) => number) => {
  const first = Number(start.slice(11, 13)) * 60 + Number(start.slice(14, 16));
  return (instant) => first + (Date.parse(instant) - Date.parse(start)) / MINUTE_MS;
};

const spellOf = (step: SessionStep, minute: (instant: string) => number): DrawnSpell => ({
  ...{ start: minute(step.at), end: minute(step.until), ...DRAWN[step.kind] },
  pieces: step.kind === 'batch' ? step.pours.length : 1,
});

/** Work of one kind in one go is one spell; every mix is one of its own. */
const joined = (spells: readonly DrawnSpell[]): DrawnSpell[] => {
  const runs: DrawnSpell[] = [];
  for (const spell of spells) {
    const last = runs.at(-1);
    const goesOn = last?.word === spell.word && spell.start - last.end <= PAUSE_MINUTES && spell.drawn !== 'mix';
    if (goesOn) Object.assign(last, { end: spell.end, pieces: last.pieces + spell.pieces });
    else runs.push({ ...spell });
  }
  return runs;
};

/** What somebody does from one instant to another, drawn and in words: "8:10 to 8:25 set up 900 no. 1". */
interface InLane {
  at: string;
  spell: DrawnSpell;
  fact: string;
}

const inLane = (step: SessionStep, minute: (instant: string) => number): InLane => ({
  at: step.at,
  spell: spellOf(step, minute),
  fact: `${fromClock(step.at)} to ${fromClock(step.until)} ${stepText(step)}`,
});

/** Minutes to keep wet what is out of its mould are no step, for nothing is recorded of them. */
const wetInLane = ({ start, end }: { start: string; end: string }, minute: (instant: string) => number): InLane => ({
  at: start,
  spell: { start: minute(start), end: minute(end), drawn: 'wavy', word: 'wet', pieces: 1 },
  fact: `${fromClock(start)} to ${fromClock(end)} keep wet what is out of its mould`,
});

/** The lanes of a session, a person each. */
export const sessionLanes = ({
  session,
  steps,
  people,
}: Pick<TodayModel, 'session' | 'steps' | 'people'>): DrawnLane[] => {
  if (!session) return [];
  const minute = minutesOfSession(session);
  const byName = new Map(steps.map((step) => [step.name, step]));
  return people.map((person) => {
    const own = [
      ...person.steps.flatMap((name) => byName.get(name) ?? []).map((step) => inLane(step, minute)),
      ...(person.wet ? [wetInLane(person.wet, minute)] : []),
    ].sort((a, b) => Date.parse(a.at) - Date.parse(b.at));
    const spells = joined(own.map(({ spell }) => spell));
    return {
      ...{ start: minute(person.start), end: minute(person.end), hours: hoursText(person) },
      spells: spells.map((spell) => ({ ...spell, mix: spell.drawn === 'mix' })),
      facts: own.map(({ fact }) => fact),
    };
  });
};

/** "What is left of the session, drawn to time: 2 people, 5 mixes." */
export const sessionTitle = ({
  steps,
  people,
  underWay,
}: Pick<TodayModel, 'steps' | 'people' | 'underWay'>): string => {
  const mixes = steps.filter(({ kind }) => kind === 'batch').length;
  const what = [countText(people.length, 'person', 'people'), ...(mixes > 0 ? [countText(mixes, 'mix', 'mixes')] : [])];
  return `${underWay ? 'What is left of the session' : 'The session'}, drawn to time: ${what.join(', ')}.`;
};
