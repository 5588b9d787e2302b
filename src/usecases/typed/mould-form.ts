import type { Mould } from '../../../shared/mould.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { mouldKind } from '../../engine/book/mould-kind.ts';
import type { Outcome } from '../core/context.ts';
import { type FieldWords, fitsYardFile, sayAt } from './fits-yard-file.ts';
import type { FormFields } from './form-fields.ts';
import { TypedReader } from './typed-reader.ts';

type Coat = Pick<Mould, 'oilMinutes' | 'oilDryMinutes'> & { oilEveryTurns: number | null };

/** The most that are added at once: a slip of the hand makes no thousand moulds. */
const MOST_AT_ONCE = 50;
const MOST_TURNS = 1000;

const coatTyped = (reader: TypedReader): Coat => ({
  oilEveryTurns: reader.wholeOrNone('oilEveryTurns', 'After how many turns? Leave it empty for never.', {
    ...{ least: 1, most: MOST_TURNS },
  }),
  oilMinutes: reader.wholeOrNone('oilMinutes', 'How many minutes?', { most: 1440 }) ?? 0,
  oilDryMinutes: reader.wholeOrNone('oilDryMinutes', 'How many minutes?', { most: 10_080 }) ?? 0,
});

/** The number painted on a mould of a kind, 0 where none is. */
const numberOf = (id: string, kind: string): number =>
  mouldKind(id) === kind ? Number(/(\d+)$/.exec(id.slice(kind.length))?.[1] ?? 0) : 0;

/** `nextNames('1100', 2, …)` where there is a 1100 no. 1 is 1100 no. 2 and 1100 no. 3. */
const nextNames = (kind: string, count: number, moulds: readonly Pick<Mould, 'id'>[]): string[] => {
  const last = Math.max(0, ...moulds.map(({ id }) => numberOf(id, kind)));
  return Array.from({ length: count }, (_, n) => `${kind} no. ${last + n + 1}`);
};

export interface NewMoulds {
  names: string[];
  casting: string;
  coat: Coat;
  note: string | null;
}

/** Several new moulds of one kind. */
export const newMouldsTyped = (typed: FormFields, yard: YardFile): Outcome<NewMoulds> => {
  const reader = new TypedReader(typed);
  const kind = mouldKind(reader.words('kind', 'What is painted on them? 1100, for one.'));
  const count = reader.whole('count', 'How many moulds?', { least: 1, most: MOST_AT_ONCE });
  const castings = yard.castings.map(({ id }) => id);
  const casting = castings.length > 0 ? reader.choice('casting', castings, 'Choose what they make.') : '';
  if (castings.length === 0) reader.refuse('casting', 'Nothing is cast yet. Say that first.');
  const names = nextNames(kind, count, yard.moulds);
  return reader.outcome({ names, casting, coat: coatTyped(reader), note: reader.text('note') || null });
};

export interface MouldEdited {
  id: string;
  makes: Mould['makes'];
  setFor: string;
  turnsSinceOil: number;
  coat: Coat;
  note: string | null;
  /** Null: nobody says how often it is to be looked over. */
  serviceEveryTurns: number | null;
}

/** What it makes, in the order it had, and what is new after that. */
const makesTyped = (reader: TypedReader, mould: Mould, yard: YardFile): Mould['makes'] => {
  const before = mould.makes.map(({ casting }) => casting);
  const others = yard.castings.map(({ id }) => id).filter((id) => !before.includes(id));
  return reader.ticked('makes', [...before, ...others]).map((casting) => ({
    casting,
    changeMinutes: reader.wholeOrNone(`change:${casting}`, 'How many minutes?', { most: 1440 }) ?? 0,
  }));
};

export const mouldTyped = (typed: FormFields, mould: Mould, yard: YardFile): Outcome<MouldEdited> => {
  const reader = new TypedReader(typed);
  const id = reader.words('id', 'What is painted on it? 1100 no. 2, for one.');
  if (id !== mould.id && yard.moulds.some((one) => one.id === id))
    reader.refuse('id', `There is a mould ${id} already.`);
  if (/^new$/i.test(id)) reader.refuse('id', 'Call it something else.');
  const makes = makesTyped(reader, mould, yard);
  if (makes.length === 0) reader.refuse('makes', 'Tick at least one thing that it makes.');
  const only = makes.length === 1 ? makes[0]?.casting : undefined;
  const turnsSinceOil = reader.wholeOrNone('turnsSinceOil', 'How many turns?', { most: MOST_TURNS }) ?? 0;
  const edited = { id, makes, setFor: only ?? reader.text('setFor'), turnsSinceOil };
  const serviceEveryTurns = reader.wholeOrNone('serviceEveryTurns', 'After how many turns? Leave it empty for never.', {
    ...{ least: 1, most: MOST_TURNS },
  });
  const note = reader.text('note') || null;
  return reader.outcome({ ...edited, coat: coatTyped(reader), note, serviceEveryTurns });
};

/** How a mould stands in a yard file. */
export const asMould = (facts: Omit<Mould, keyof Coat>, { oilEveryTurns, ...coat }: Coat): Mould => ({
  ...facts,
  ...coat,
  ...(oilEveryTurns === null ? {} : { oilEveryTurns }),
});

const WORDS: FieldWords = {
  setFor: sayAt('setFor', 'Choose one of those it makes.'),
  'inMould[].casting': sayAt('makes', 'The piece that is in it just now has to stay ticked. Strip it first.'),
};

/** The yard with one mould put in place of another. */
export const withMould = (yard: YardFile, old: string, mould: Mould): Outcome<YardFile> => {
  const place = yard.moulds.findIndex(({ id }) => id === old);
  const moulds = yard.moulds.map((one, index) => (index === place ? mould : one));
  const inMould = yard.inMould.map((piece) => (piece.mould === old ? { ...piece, mould: mould.id } : piece));
  return fitsYardFile({ ...yard, moulds, inMould }, `moulds[${place}]`, WORDS);
};
