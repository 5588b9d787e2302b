import { posix } from 'node:path';
import ts from 'typescript';
import { type Import, importsOf, parse, visit } from './imports.ts';
import type { SourceText } from './source-files.ts';

interface Zone {
  /** A file belongs to the first zone of the table whose folder holds it. */
  folder: string;
  /** Folders of ours it may import from, beside its own. */
  folders: string[];
  /** Folders of ours it may take types from, and nothing that runs. */
  typesFrom?: string[];
  /** Packages by name, with all they export under it; "node:" stands for every built-in module. */
  packages: string[];
  /** What a single file may import beyond that. */
  besides?: Record<string, string[]>;
}

/** The table of who may import whom. The entries directly under src may import everything and are not in it. */
export const ZONES: Zone[] = [
  { folder: 'shared', folders: [], packages: ['zod'] },
  { folder: 'src/engine', folders: ['shared'], packages: ['rrule', 'temporal-polyfill', 'csv-parse', 'csv-stringify'] },
  {
    folder: 'db',
    folders: ['shared'],
    typesFrom: ['src/engine/book'],
    packages: ['drizzle-orm', '@libsql/client', 'node:'],
    besides: { 'db/drizzle.config.ts': ['drizzle-kit'] },
  },
  {
    folder: 'views',
    folders: ['shared'],
    typesFrom: ['src/usecases'],
    packages: ['hono/jsx'],
    // Two formats of others, each written in one place.
    besides: { 'views/calendar/calendar-file.ts': ['ical-generator'], 'views/parts/qr-code.tsx': ['uqr'] },
  },
  {
    folder: 'src/usecases',
    folders: ['shared', 'src/engine', 'db'],
    packages: [],
    besides: {
      // The one file that makes something of a password: the library that browsers have too knows no scrypt.
      'src/usecases/access/password.ts': ['node:'],
      // What a device answers is checked by a library that knows the format.
      'src/usecases/access/passkeys.ts': ['@simplewebauthn/server'],
    },
  },
  {
    folder: 'src/http',
    folders: ['shared', 'src/usecases', 'views'],
    packages: ['hono', 'zod'],
    // The one file that reads what is served as it is, style sheets and scripts, and the one that makes texts smaller.
    besides: { 'src/http/assets.ts': ['node:'], 'src/http/compressed.ts': ['node:'] },
  },
];

const isInside = (path: string, folder: string): boolean => path.startsWith(`${folder}/`);

const ROOMS_FOLDER = 'src/usecases';

/** Rooms that any other room may import from. */
const COMMON_ROOMS = ['core', 'plan', 'typed'];

/** The rooms of the use cases, each with what it may import from beside itself. */
export const ROOMS: Readonly<Record<string, readonly string[]>> = {
  core: [],
  typed: ['core'],
  plan: ['core', 'typed'],
  buying: COMMON_ROOMS,
  kits: COMMON_ROOMS,
  // What may be ordered may stand ready.
  pieces: [...COMMON_ROOMS, 'orders'],
  // A list of pieces is kept as a file like the others.
  trace: [...COMMON_ROOMS, 'files'],
  turns: COMMON_ROOMS,
  begin: COMMON_ROOMS,
  // A photo goes once no piece has it.
  backup: [...COMMON_ROOMS, 'trace'],
  access: COMMON_ROOMS,
  // What an order hangs on today is said with it.
  changes: [...COMMON_ROOMS, 'buying'],
  // An order is drawn by its kits.
  orders: [...COMMON_ROOMS, 'kits'],
  // A date asked for is a draft of an order; the first page lists the open ones, and what to buy.
  first: [...COMMON_ROOMS, 'orders', 'buying'],
  // A table of orders is read by what an order may ask for.
  files: [...COMMON_ROOMS, 'orders'],
  // What became of a material is kept as a file like the others; on a walk round all is counted that is counted elsewhere.
  stock: [...COMMON_ROOMS, 'files', 'buying', 'pieces'],
  // How long a material keeps, and what takes it.
  yard: [...COMMON_ROOMS, 'buying'],
  // Orders are packed, a mix is put together with its water, and what is out of its mould is kept wet.
  today: [...COMMON_ROOMS, 'orders', 'yard', 'pieces'],
  // What is poured when, the dates that customers were given and those that moved, and what to order by when.
  calendar: [...COMMON_ROOMS, 'turns', 'orders', 'buying', 'changes'],
  // Orders are priced, prices are kept as a file, and what costs are reckoned by is part of the yard.
  money: [...COMMON_ROOMS, 'orders', 'files', 'yard'],
  // What was sold is told as orders are, minutes as they are measured, and all of it is kept as a file.
  season: [...COMMON_ROOMS, 'orders', 'yard', 'files'],
  // A mould that is marked may have to be stripped first.
  moulds: [...COMMON_ROOMS, 'today'],
};

const roomOf = (path: string): string | undefined =>
  isInside(path, ROOMS_FOLDER) ? path.slice(ROOMS_FOLDER.length + 1).split('/')[0] : undefined;

const isInRoom = (path: string): boolean => Object.hasOwn(ROOMS, roomOf(path) ?? '');

/** Between two rooms only what the row of the first names. All else has nothing to do with rooms. */
const mayEnter = (path: string, target: string): boolean => {
  const [room, other] = [roomOf(path), roomOf(target)];
  return room === undefined || other === undefined || room === other || (ROOMS[room] ?? []).includes(other);
};

const isEntry = (path: string): boolean => /^src\/[^/]+$/.test(path);

const packageFits = (name: string, allowed: string): boolean =>
  allowed === 'node:' ? name.startsWith(allowed) : name === allowed || name.startsWith(`${allowed}/`);

const mayImport = (zone: Zone, file: SourceText, { from, typesOnly }: Import): boolean => {
  if (!from.startsWith('.'))
    return [...zone.packages, ...(zone.besides?.[file.path] ?? [])].some((allowed) => packageFits(from, allowed));
  const target = posix.join(posix.dirname(file.path), from);
  const folders = [zone.folder, ...zone.folders, ...(typesOnly ? (zone.typesFrom ?? []) : [])];
  return folders.some((folder) => isInside(target, folder)) && mayEnter(file.path, target);
};

/** Entries may share what lies beside them (reading the environment), but what starts by being loaded is never loaded. */
const STARTS = /^src\/(main|cli|(.+-)?worker)\.tsx?$/;
const entryFaults = (file: SourceText): string[] =>
  importsOf(file)
    .filter(({ from }) => from.startsWith('.') && STARTS.test(posix.join(posix.dirname(file.path), from)))
    .map(({ from }) => `${file.path} imports ${from}, which is started and never imported`);

/** Every import of one file that the table does not allow, as a sentence; none when the file keeps to it. */
export const importFaults = (file: SourceText): string[] => {
  if (isEntry(file.path)) return entryFaults(file);
  const zone = ZONES.find(({ folder }) => isInside(file.path, folder));
  if (!zone) return [`${file.path} is in no folder of the table`];
  if (zone.folder === ROOMS_FOLDER && !isInRoom(file.path)) return [`${file.path} is in no room of the table`];
  return importsOf(file)
    .filter((one) => !mayImport(zone, file, one))
    .map(({ from, typesOnly }) => `${file.path} may not import ${typesOnly ? 'types from ' : ''}${from}`);
};

/** Names that reach the clock, chance, the log or the machine. A parameter of the same name is refused as well. */
const IMPURE_NAMES = new Set(
  'console process performance crypto fetch setTimeout setInterval setImmediate queueMicrotask globalThis'.split(' '),
);
const IMPURE_MEMBERS = new Set(['Date.now', 'Math.random', 'Temporal.Now']);

const memberText = (node: ts.Node): string | undefined => {
  if (ts.isPropertyAccessExpression(node)) return `${node.expression.getText()}.${node.name.text}`;
  if (ts.isElementAccessExpression(node) && ts.isStringLiteralLike(node.argumentExpression))
    return `${node.expression.getText()}.${node.argumentExpression.text}`;
  return undefined;
};

/** A name that is a property, as in `turn.process` or `{ process: 1 }`, reaches nothing outside. */
const isPropertyName = (node: ts.Identifier): boolean => {
  const { parent } = node;
  if (ts.isPropertyAccessExpression(parent)) return parent.name === node;
  return (ts.isPropertyAssignment(parent) || ts.isPropertySignature(parent)) && parent.name === node;
};

const readsClock = (node: ts.Node): boolean => {
  if (!ts.isNewExpression(node) && !ts.isCallExpression(node)) return false;
  if (!ts.isIdentifier(node.expression) || node.expression.text !== 'Date') return false;
  return ts.isCallExpression(node) || !node.arguments?.length;
};

const impurityAt = (node: ts.Node): string | undefined => {
  if (node.kind === ts.SyntaxKind.AsyncKeyword) return 'async';
  if (ts.isAwaitExpression(node)) return 'await';
  if (readsClock(node)) return node.getText();
  const member = memberText(node);
  if (member !== undefined && IMPURE_MEMBERS.has(member)) return member;
  if (ts.isIdentifier(node) && IMPURE_NAMES.has(node.text) && !isPropertyName(node)) return node.text;
  return undefined;
};

/** What in one file of the engine would make the same yard file give another plan, or make planning wait. */
export const purityFaults = (file: SourceText): string[] => {
  const faults: string[] = [];
  visit(parse(file), (node) => {
    const impurity = impurityAt(node);
    if (impurity) faults.push(`${file.path} uses ${impurity}`);
  });
  return faults;
};
