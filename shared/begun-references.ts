import { checkBatches, checkTurn, type Path, type Raw, type ReferenceCheck } from './firm-references.ts';
import { isInstant, minuteOf } from './time.ts';

const minuteIn = (x: Raw, key: string): number | undefined => {
  const text = x[key];
  return typeof text === 'string' && isInstant(text) ? minuteOf(text) : undefined;
};

/** What each kind of task is called, and where its times stand. */
const TIMES = [
  ['batches', 'start', 'end'],
  ['strips', 'stripStart', 'stripEnd'],
  ['packs', 'packStart', 'packEnd'],
  ['preps', 'prepStart', 'prepEnd'],
  ['coats', 'start', 'end'],
] as const;

const checkTimes = ({ fault, entries }: ReferenceCheck, begun: Raw, now: number | undefined): void => {
  if (now === undefined) return;
  for (const [list, start, end] of TIMES)
    for (const [x, path] of entries(begun, list, ['begun'])) {
      if ((minuteIn(x, start) ?? now) > now) fault([...path, start], 'is after now: it has not begun');
      if ((minuteIn(x, end) ?? now + 1) <= now) fault([...path, end], 'is not after now: it is over');
    }
};

const checkFills = ({ fault, entries }: ReferenceCheck, begun: Raw): void => {
  const batches = new Map(entries(begun, 'batches').map(([x]) => [x.id, x]));
  for (const [x, path] of entries(begun, 'pours', ['begun'])) {
    const batch = batches.get(x.batch) ?? {};
    const [from, to] = [minuteIn(batch, 'start'), minuteIn(batch, 'end')];
    if ((minuteIn(x, 'fillStart') ?? 0) < (from ?? 0)) fault([...path, 'fillStart'], 'is before its batch begins');
    if (to !== undefined && (minuteIn(x, 'fillEnd') ?? to) > to) fault([...path, 'fillEnd'], 'is after its batch ends');
    if (from !== undefined && (minuteIn(x, 'prepEnd') ?? from) > from)
      fault([...path, 'prepEnd'], 'is after its batch begins');
  }
};

/** Each mould and each order is in one task, and the mould is empty or full as that asks. */
const checkPlaces = ({ fault, entries }: ReferenceCheck, begun: Raw, inMould: Set<unknown>): void => {
  const taken = new Set<unknown>();
  const once = (x: Raw, key: string, path: Path): void => {
    if (taken.has(`${key} ${x[key]}`)) fault([...path, key], `"${x[key]}" is in two tasks at once`);
    taken.add(`${key} ${x[key]}`);
  };
  for (const list of ['pours', 'preps', 'coats', 'strips'])
    for (const [x, path] of entries(begun, list, ['begun'])) {
      once(x, 'mould', path);
      const full = inMould.has(x.mould);
      if (list === 'strips' && !full) fault([...path, 'mould'], `mould "${x.mould}" holds no piece`);
      if (list !== 'strips' && full) fault([...path, 'mould'], `mould "${x.mould}" holds a piece`);
    }
  for (const [x, path] of entries(begun, 'packs', ['begun'])) once(x, 'order', path);
};

const checkMakes = ({ fault, entries, named }: ReferenceCheck, begun: Raw): void => {
  for (const list of ['pours', 'preps'])
    for (const [x, path] of entries(begun, list, ['begun'])) {
      const mould = typeof x.mould === 'string' ? named.moulds.get(x.mould) : undefined;
      const known = typeof x.casting === 'string' && named.castings.has(x.casting);
      if (mould && known && !entries(mould, 'makes').some(([make]) => make.casting === x.casting))
        fault([...path, 'casting'], `mould "${x.mould}" does not make "${x.casting}"`);
    }
};

const checkCoats = ({ fault, entries, refers, named }: ReferenceCheck, begun: Raw): void => {
  for (const [x, path] of entries(begun, 'coats', ['begun'])) {
    const mould = refers(x, 'mould', path, named.moulds, 'mould');
    if (mould && mould.oilEveryTurns === undefined)
      fault([...path, 'mould'], `mould "${x.mould}" takes no sealing coat`);
  }
};

/** Finished pieces that are packed are there, enough of them, and nobody else's. */
const checkLots = ({ fault, entries }: ReferenceCheck, begun: Raw, finished: unknown): void => {
  const lots = Array.isArray(finished) ? finished : [];
  const taken = new Map<unknown, number>();
  for (const [pack, at] of entries(begun, 'packs', ['begun']))
    for (const [x, path] of entries(pack, 'fromFinished', at)) {
      const lot = lots[x.finished as number] as Raw | undefined;
      if (!lot) {
        fault([...path, 'finished'], `there is no finished[${x.finished}]`);
        continue;
      }
      const all = (taken.get(x.finished) ?? 0) + Number(x.count);
      taken.set(x.finished, all);
      if (all > Number(lot.count)) fault([...path, 'count'], `finished[${x.finished}] has only ${lot.count}`);
      if (lot.order !== undefined && lot.order !== pack.order)
        fault([...path, 'finished'], `finished[${x.finished}] is set aside for "${lot.order}"`);
    }
};

const checkOwnIds = ({ fault, entries }: ReferenceCheck, begun: Raw, keep: unknown): void => {
  for (const list of ['batches', 'pours']) {
    const fixed = new Set(entries(keep, list).map(([x]) => x.id));
    for (const [x, path] of entries(begun, list, ['begun']))
      if (fixed.has(x.id)) fault([...path, 'id'], `"${x.id}" is in keep too`);
  }
};

/**
 * Faults of what is under way (`begun`): names that are not there, tasks that have not begun or are over, moulds that
 * cannot be in that task, a mould or an order in two at once, and pieces that cannot be packed.
 *
 * Example: a strip that begins a minute after `now` is a fault at `begun.strips[0].stripStart`.
 */
export const begunFaults = (check: ReferenceCheck, begun: Raw, file: Raw): void => {
  const { fault, entries, refers, named } = check;
  checkBatches(check, begun, ['begun']);
  for (const [x, path] of entries(begun, 'strips', ['begun'])) {
    refers(x, 'mould', path, named.moulds, 'mould');
    if (x.pour !== undefined) fault([...path, 'pour'], 'has no place here: the piece is in its mould already');
  }
  for (const [x, path] of entries(begun, 'packs', ['begun'])) refers(x, 'order', path, named.orders, 'order');
  for (const [x, path] of entries(begun, 'preps', ['begun'])) checkTurn(check, x, path);
  checkCoats(check, begun);
  const yard = (typeof file.yard === 'object' && file.yard !== null ? file.yard : {}) as Raw;
  checkTimes(check, begun, minuteIn(yard, 'now'));
  checkFills(check, begun);
  checkPlaces(check, begun, new Set(entries(file, 'inMould').map(([x]) => x.mould)));
  checkMakes(check, begun);
  checkLots(check, begun, file.finished);
  checkOwnIds(check, begun, file.keep);
};
