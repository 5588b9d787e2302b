import type { StoreRows, WantedRows } from '../../../db/stores/store-rows.ts';
import type { MouldCondition } from '../../../shared/mould.ts';
import { partsInUse } from '../../../shared/mould-part.ts';
import { quoted } from '../../../shared/said-back.ts';
import { LONGEST_NAME, LONGEST_NOTE } from '../../../shared/text-limits.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { Cell } from '../../engine/csv/write-csv.ts';
import { type Reading, read, unread } from '../../engine/units/reading.ts';
import type { TableGround, TableRows } from './csv-ground.ts';
import { fitsIn, type RowReader, textNow } from './csv-row.ts';
import { CONDITION_WORDS } from './figure-text.ts';

type MouldRow = StoreRows['moulds'][number];
type Make = { casting: string; changeMinutes: number };

const plain = (text: string): string => text.trim().toLowerCase();

type PanelFinder = (name: string) => Reading<string>;

const panelFinder = ({ castings }: YardFile): PanelFinder => {
  return (name) => {
    const named = castings.filter((one) => plain(one.name) === plain(name) || one.id === name);
    const exact = named.find(({ id }) => id === name) ?? (named.length === 1 ? named[0] : undefined);
    if (exact) return read(exact.id);
    return named.length === 0
      ? unread(`no panel here is called ${quoted(name)}`)
      : unread(`${quoted(name)} could be several panels. Write ${named.map(({ id }) => id).join(' or ')}`);
  };
};

/** "Panel 900 (15)": its name, and the minutes to change over to it. */
const MAKE = /^(.*?)(?:\((\d{1,5})(?:\s*min(?:ute)?s?)?\))?$/s;

const makesRead = (text: string, find: PanelFinder): Reading<Make[]> => {
  const makes: Make[] = [];
  for (const part of text
    .split(';')
    .map((one) => one.trim())
    .filter(Boolean)) {
    const whole = find(part);
    const [, name = '', minutes] = MAKE.exec(part) ?? [];
    const panel = whole.ok ? whole : find(name.trim());
    if (!panel.ok) return panel;
    if (makes.some(({ casting }) => casting === panel.value)) return unread(`${quoted(part)} is there twice`);
    makes.push({ casting: panel.value, changeMinutes: whole.ok ? 0 : Number(minutes ?? 0) });
  }
  return makes.length > 0 ? read(makes) : unread('names no panel');
};

const CONDITIONS = Object.entries(CONDITION_WORDS) as [MouldCondition, string][];

const conditionRead = (text: string): Reading<MouldCondition> => {
  const found = CONDITIONS.find(([condition, word]) => word === text.toLowerCase() || condition === text.toLowerCase());
  return found ? read(found[0]) : unread(`${quoted(text)} is none of ${CONDITIONS.map(([, word]) => word).join(', ')}`);
};

/** A new mould is sealed as one for the same panel is, or as the first there is. */
const blank = (id: string, { held }: TableGround, setFor: string, position: number): MouldRow => {
  const like = held.moulds.find((one) => one.setFor === setFor) ?? held.moulds[0];
  return {
    ...{ id, position, setFor, condition: 'ready', prepped: false, repairedOn: null, turnsSinceOil: 0 },
    ...{ oilEveryTurns: null, oilMinutes: like?.oilMinutes ?? 0, oilDryMinutes: like?.oilDryMinutes ?? 0 },
    ...{ dryFrom: null, note: null, damageNote: null, emptiedAt: null, serviceEveryTurns: null },
    ...{ cost: null, costTurns: null, parts: null },
  };
};

const every = (row: RowReader, was: number | null): number | null => {
  if (!row.has('sealing coat every')) return was;
  const turns = row.whole('sealing coat every', null);
  if (turns === 0) row.wrong('sealing coat every', 'has to be at least 1. Leave it empty when it never is');
  return turns;
};

const changed = (row: RowReader, was: MouldRow, makes: readonly Make[], find: PanelFinder): MouldRow => {
  const first = makes[0]?.casting ?? was.setFor;
  const setFor = row.has('set for')
    ? row.read('set for', first, find)
    : makes.some((one) => one.casting === was.setFor)
      ? was.setFor
      : first;
  if (!makes.some(({ casting }) => casting === setFor)) row.wrong('set for', 'is not among what the mould makes');
  const condition = row.has('condition')
    ? row.read('condition', 'ready' as MouldCondition, conditionRead)
    : was.condition;
  const isOut = condition === 'damaged' || condition === 'retired';
  const asItWas = condition === was.condition && setFor === was.setFor;
  return {
    ...was,
    ...{ setFor, condition, prepped: asItWas && was.prepped },
    ...(condition === was.condition ? {} : { repairedOn: null, damageNote: null }),
    parts: was.parts && !isOut ? partsInUse(was.parts) : was.parts,
    turnsSinceOil: row.has('turns since sealing coat') ? row.whole('turns since sealing coat', 0) : was.turnsSinceOil,
    oilEveryTurns: every(row, was.oilEveryTurns),
    note: textNow(row, 'note', was.note, LONGEST_NOTE),
  };
};

const makesOf = (row: RowReader, held: readonly Make[], isNew: boolean, find: PanelFinder): readonly Make[] | null => {
  if (row.has('makes') && row.text('makes') !== '') return row.read('makes', null, (text) => makesRead(text, find));
  if (!isNew && !row.has('makes')) return held;
  row.wrong('makes', 'say which panels it makes');
  return null;
};

export const mouldRowsOf: TableRows = (rows, ground) => {
  const { held, yard } = ground;
  const find = panelFinder(yard);
  const moulds = new Map(held.moulds.map((row) => [row.id, row]));
  const makes = new Map<string, readonly Make[]>(yard.moulds.map((one) => [one.id, one.makes]));
  const filled = new Map(held.piecesInMould.map((piece) => [piece.mould, piece.casting]));
  const seen = new Set<string>();
  let place = Math.max(-1, ...held.moulds.map(({ position }) => position));
  for (const row of rows) {
    const id = row.text('mould');
    if (id === '') row.wrong('mould', 'say what is painted on it');
    else if (seen.has(id)) row.wrong('mould', `${id} is there twice`);
    seen.add(id);
    const was = moulds.get(id);
    if (!was) fitsIn(row, 'mould', LONGEST_NAME);
    const own = makesOf(row, makes.get(id) ?? [], !was, find);
    if (own === null || id === '') continue;
    const piece = filled.get(id);
    if (piece !== undefined && !own.some(({ casting }) => casting === piece))
      row.wrong('makes', 'it holds a piece that is not among these. Strip it first');
    if (!was) place += 1;
    moulds.set(id, changed(row, was ?? blank(id, ground, own[0]?.casting ?? '', place), own, find));
    makes.set(id, own);
  }
  const mouldMakes = [...makes].flatMap(([mould, own]) =>
    own.map(({ casting, changeMinutes }, position) => ({ mould, casting, changeMinutes, position })),
  );
  return { moulds: [...moulds.values()], mouldMakes } satisfies Partial<WantedRows>;
};

/** The moulds, a row each. */
export const mouldCells = ({ held, yard }: Pick<TableGround, 'held' | 'yard'>): Cell[][] => {
  const find = panelFinder(yard);
  const nameOf = (id: string) => {
    const name = yard.castings.find((one) => one.id === id)?.name ?? id;
    const found = find(name);
    return found.ok && found.value === id && !/[;)]/.test(name) && name.trim() === name ? name : id;
  };
  const notes = new Map(held.moulds.map(({ id, note }) => [id, note]));
  return yard.moulds.map((mould) => [
    mould.id,
    mould.makes
      .map(({ casting, changeMinutes }) => `${nameOf(casting)}${changeMinutes > 0 ? ` (${changeMinutes})` : ''}`)
      .join('; '),
    nameOf(mould.setFor),
    CONDITION_WORDS[mould.condition],
    mould.turnsSinceOil,
    mould.oilEveryTurns ?? null,
    notes.get(mould.id) ?? null,
  ]);
};
