import { begunFaults } from './begun-references.ts';
import { type Fault, pathText } from './fault.ts';
import { keepFaults, type Path, type Raw } from './firm-references.ts';
import { lotFaults } from './lot-references.ts';
import { goesOnSheet, isSheet, sheetFaults } from './sheet-faults.ts';
import { isInstant, minuteOf } from './time.ts';

const EPSILON = 1e-9;
const isRecord = (x: unknown): x is Raw => typeof x === 'object' && x !== null && !Array.isArray(x);
const num = (x: unknown): number | undefined => (typeof x === 'number' && Number.isFinite(x) ? x : undefined);

/**
 * The faults of a yard file that no single field shows: references to what is not there, ids given twice, and figures
 * that do not fit each other (yard-file.md, "Faults"). Works on the raw input, so that these are reported beside
 * faults of shape, all at once; never throws.
 *
 * Example: `referenceFaults({ kits: [{ id: 'a' }, { id: 'a' }] })` is `[{ path: 'kits[1].id', message: '"a" is given
 * twice' }]`.
 */
export const referenceFaults = (input: unknown): Fault[] => {
  if (!isRecord(input)) return [];
  const faults: Fault[] = [];
  const fault = (path: Path, message: string) => faults.push({ path: pathText(path), message });
  /** Entries of a list that are objects, each with its path; anything else is a fault of shape, reported elsewhere. */
  const entries = (holder: unknown, key: string, at: Path = []): [Raw, Path][] => {
    const list = isRecord(holder) ? holder[key] : undefined;
    if (!Array.isArray(list)) return [];
    return list.flatMap((x, i): [Raw, Path][] => (isRecord(x) ? [[x, [...at, key, i]]] : []));
  };
  const index = (key: string, holder: unknown = input, at: Path = []): Map<string, Raw> => {
    const map = new Map<string, Raw>();
    for (const [x, path] of entries(holder, key, at)) {
      if (typeof x.id !== 'string') continue;
      if (map.has(x.id)) fault([...path, 'id'], `"${x.id}" is given twice`);
      else map.set(x.id, x);
    }
    return map;
  };
  const refers = (x: Raw, key: string, path: Path, map: Map<string, Raw>, kind: string): Raw | undefined => {
    const id = x[key];
    if (typeof id !== 'string') return undefined;
    if (!map.has(id)) fault([...path, key], `no ${kind} named "${id}"`);
    return map.get(id);
  };

  const materials = index('materials');
  const mixes = index('mixes');
  const castings = index('castings');
  const moulds = index('moulds');
  const kits = index('kits');
  const orders = index('orders');

  const checkQuantities = (holder: Raw, key: string, at: Path) => {
    for (const [x, path] of entries(holder, key, at)) refers(x, 'material', path, materials, 'material');
  };
  const checkCuts = (holder: Raw, at: Path) => {
    for (const [x, path] of entries(holder, 'cuts', at)) {
      const from = refers(x, 'material', path, materials, 'material');
      if (!from) continue;
      const stick = num(from.stickMm);
      const length = num(x.lengthMm);
      if (from.stickMm === undefined) fault([...path, 'material'], `"${from.id}" has no stickMm to cut from`);
      else if (stick !== undefined && length !== undefined && length > stick)
        fault([...path, 'lengthMm'], `${length} mm is longer than a stick of "${from.id}" (${stick} mm)`);
    }
  };

  for (const [x, path] of entries(input, 'materials')) {
    if (x.stickMm === undefined && entries(x, 'offcuts').length > 0)
      fault([...path, 'offcuts'], `"${x.id}" has no stickMm that they are left of`);
    faults.push(...lotFaults(x, path, isRecord(input.yard) ? input.yard.now : undefined));
    for (const [key, reason] of sheetFaults(x)) fault([...path, key], reason);
  }
  const named = new Set<unknown>();
  for (const [x, path] of entries(input, 'suppliers')) {
    if (named.has(x.name)) fault([...path, 'name'], `"${x.name}" is given twice`);
    named.add(x.name);
  }
  for (const [x, path] of entries(input, 'incoming')) refers(x, 'material', path, materials, 'material');
  for (const [x, path] of entries(input, 'mixes')) {
    checkQuantities(x, 'perBag', path);
    const most = num(x.maxBags);
    const step = x.bagStep === undefined ? 1 : num(x.bagStep);
    if (most === undefined || step === undefined || step <= 0) continue;
    if (Math.abs(most / step - Math.round(most / step)) > EPSILON)
      fault([...path, 'maxBags'], `${most} is no multiple of bagStep ${step}`);
  }
  for (const [x, path] of entries(input, 'castings')) {
    checkQuantities(x, 'perPiece', path);
    checkCuts(x, path);
    for (const [piece, at] of entries(x, 'sheets', path)) {
      const from = refers(piece, 'material', at, materials, 'material');
      if (from && !isSheet(from)) fault([...at, 'material'], `"${from.id}" has no sheets to cut from`);
      else if (from && !goesOnSheet(piece, from)) fault(at, `it goes on no sheet of "${from.id}"`);
    }
    const cutUp = new Set(entries(x, 'sheets').map(([piece]) => piece.material));
    for (const [taken, at] of entries(x, 'perPiece', path))
      if (cutUp.has(taken.material) && materials.get(String(taken.material))?.inSheets === true)
        fault([...at, 'material'], `"${taken.material}" is cut for it from sheets, and would be taken twice`);
    const mix = refers(x, 'mix', path, mixes, 'mix');
    if (!mix) continue;
    const [kg, fill] = [num(x.kg), num(x.fillMinutes)];
    const [most, perBag, working] = [num(mix.maxBags), num(mix.yieldKgPerBag), num(mix.workingMinutes)];
    if (kg !== undefined && most !== undefined && perBag !== undefined && kg > most * perBag + EPSILON)
      fault([...path, 'kg'], `${kg} kg is more than the largest batch of "${mix.id}" (${most * perBag} kg)`);
    if (fill !== undefined && working !== undefined && fill > working)
      fault([...path, 'fillMinutes'], `${fill} min is longer than the working time of "${mix.id}" (${working} min)`);
  }
  const makesOf = (mould: Raw): Set<unknown> => new Set(entries(mould, 'makes').map(([make]) => make.casting));
  for (const [x, path] of entries(input, 'moulds')) {
    const seen = new Set<unknown>();
    for (const [make, makePath] of entries(x, 'makes', path)) {
      refers(make, 'casting', makePath, castings, 'casting');
      if (seen.has(make.casting)) fault([...makePath, 'casting'], `"${make.casting}" is given twice`);
      seen.add(make.casting);
    }
    if (refers(x, 'setFor', path, castings, 'casting') && !seen.has(x.setFor))
      fault([...path, 'setFor'], `"${x.setFor}" is not among what this mould makes`);
  }
  for (const [x, path] of entries(input, 'kits')) {
    for (const [piece, at] of entries(x, 'pieces', path)) refers(piece, 'casting', at, castings, 'casting');
    checkQuantities(x, 'parts', path);
    checkCuts(x, path);
  }
  for (const [x, path] of entries(input, 'finished')) {
    refers(x, 'casting', path, castings, 'casting');
    refers(x, 'order', path, orders, 'order');
  }
  const now = isRecord(input.yard) ? input.yard.now : undefined;
  const filled = new Set<unknown>();
  for (const [x, path] of entries(input, 'inMould')) {
    const mould = refers(x, 'mould', path, moulds, 'mould');
    if (mould && filled.has(x.mould)) fault([...path, 'mould'], `"${x.mould}" is in this list twice`);
    filled.add(x.mould);
    if (refers(x, 'casting', path, castings, 'casting') && mould && !makesOf(mould).has(x.casting))
      fault([...path, 'casting'], `mould "${x.mould}" does not make "${x.casting}"`);
    refers(x, 'order', path, orders, 'order');
    if (typeof x.filledAt === 'string' && typeof now === 'string' && isInstant(x.filledAt) && isInstant(now))
      if (minuteOf(x.filledAt) > minuteOf(now)) fault([...path, 'filledAt'], 'is after now');
  }
  for (const [x, path] of entries(input, 'orders'))
    for (const [line, at] of entries(x, 'lines', path)) {
      refers(line, 'kit', at, kits, 'kit');
      refers(line, 'casting', at, castings, 'casting');
      refers(line, 'material', at, materials, 'material');
    }
  const check = { fault, entries, index, refers, named: { mixes, castings, moulds, orders } };
  if (isRecord(input.keep)) keepFaults(check, input.keep, input.begun);
  if (isRecord(input.begun)) begunFaults(check, input.begun, input);
  return faults;
};
