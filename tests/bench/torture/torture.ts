import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Archive, readArchive } from '../../../shared/archive.ts';
import { calendar } from '../../contract/audit-plan.mjs';
import { formsIn, plainText, seenOn } from '../../support/page-form.ts';
import { type Dice, diceOf } from '../../support/random-yard/dice.ts';
import { lateFormOn, notDoneFormOn } from '../season/today-page.ts';
import type { Row } from '../table.ts';
import { type OnTheWay, writeDown } from './acknowledged.ts';
import { linesGone, otherThanLogged } from './as-logged.ts';
import { type Answer, type PageVisitor, pageVisitor } from './page-visitor.ts';
import { planFaults } from './plan-adds-up.ts';
import { type RandomAct, randomAct } from './random-act.ts';
import { realServer } from './real-server.ts';
import { type Moves, StockLog } from './stock-log.ts';

/** How much is done, and how often the server is killed meanwhile. */
export interface TortureOptions {
  acts: number;
  kills: number;
  seed: number;
  /** Told what does not add up as soon as it is found, and now and then how far it is. */
  tell?(words: string): void;
}

/** What came of it: acts that were answered as done, by their form, and everything that did not add up. */
export interface Tortured {
  acts: number;
  byForm: ReadonlyMap<string, number>;
  refused: number;
  kills: number;
  sentAgain: number;
  lines: number;
  plansChecked: number;
  days: number;
  faults: readonly string[];
}

/** The first morning; the demo is made for it. */
const BEGIN = Date.parse('2027-04-05T06:00:00Z');
const MINUTE_MS = 60_000;
const MINUTES_OF_DAY = 1440;
/** So many answers at most about what was planned for a time that is over. */
const MOST_QUESTIONS = 40;
const DEMO_ZONE = 'Europe/Dublin';
/** A plan is checked after so many acts, and after each kill. */
const CHECKED_EVERY = 50;
/** Killed at some moment of so many milliseconds after a form is sent: most take about as long. */
const KILLED_WITHIN_MS = 400;
/** More forms refused one after another than this: the yard has come to a standstill. */
const MOST_IN_VAIN = 400;

const savedYard = async (visitor: PageVisitor): Promise<Archive> => {
  const read = readArchive(JSON.parse(await visitor.page('/yard/files/archive.json')));
  if (read.ok) return read.archive;
  throw new Error(`The saved yard has faults: ${read.faults.map(({ path, message }) => `${path} ${message}`)}`);
};

/** Goods on their way, by what Buying says of them. */
const onTheWay = (html: string, { materials }: Archive): OnTheWay =>
  new Map(
    html.split('<form class="buy"').flatMap((chunk) => {
      const [form] = formsIn(`<form class="buy"${chunk}`);
      if (form?.action !== '/buying/arrived') return [];
      const named = plainText(/<strong>([\s\S]*?)<\/strong>/.exec(chunk)?.[1] ?? '');
      const material = materials.find(({ name }) => named.endsWith(name))!;
      return [[form.fields.goods!, { material: material.id, quantity: Number(form.fields.cameWas) }]];
    }),
  );

class Torture {
  readonly byForm = new Map<string, number>();
  readonly faults: string[] = [];
  private readonly changes: number[] = [];
  private readonly moves = new Map<number, Moves>();
  private readonly dice: Dice;
  private now = BEGIN;
  acts = 0;
  refused = 0;
  plansChecked = 0;

  constructor(
    private readonly server: ReturnType<typeof realServer>,
    readonly visitor: PageVisitor,
    private readonly options: TortureOptions,
  ) {
    this.dice = diceOf(options.seed);
    this.setOn(0);
  }

  private instant(): string {
    return new Date(this.now).toISOString();
  }

  private today(): string {
    return calendar(DEMO_ZONE).dateOf(this.now / MINUTE_MS);
  }

  setOn(minutes: number): void {
    this.now += minutes * MINUTE_MS;
    this.server.setClock(this.instant());
  }

  get days(): number {
    return Math.round((this.now - BEGIN) / MINUTE_MS / MINUTES_OF_DAY);
  }

  private fault(words: string): void {
    this.faults.push(`act ${this.acts}, ${this.instant()}: ${words}`);
    this.options.tell?.(this.faults.at(-1)!);
  }

  /** Sends a form; what is asked about first is meant. */
  private async sent(act: RandomAct): Promise<{ answer: Answer; act: RandomAct }> {
    const answer = await this.visitor.send(act.action, act.fields);
    if (answer.done) return { answer, act };
    if (answer.status >= 500) this.fault(`${act.action} answered ${answer.status}`);
    const seen = seenOn(answer.html);
    const asked = formsIn(answer.html).find(({ action, fields }) => action === act.action && fields.sure !== undefined);
    const sure = asked?.fields.sure;
    if (seen === undefined && sure === undefined) return { answer, act };
    const meant: Record<string, string> = seen === undefined ? { sure: sure! } : { seen };
    const again = { ...act, fields: { ...act.fields, ...meant } };
    return { answer: await this.visitor.send(again.action, again.fields), act: again };
  }

  private writeDown(log: StockLog, act: RandomAct, change: number, before: Archive, after: Archive, goods: OnTheWay) {
    const undone = act.action === '/undo' ? this.moves.get(Number(act.fields.change)) : undefined;
    const moves = log.during(() => {
      if (undone) return log.again(undone, -1);
      const acknowledged = { ...act, before, after, today: this.today(), now: this.instant() };
      for (const words of writeDown(log, acknowledged, goods)) this.fault(words);
    });
    this.moves.set(change, moves);
    this.changes.push(change);
  }

  /** One act that somebody might do now, whatever comes of it; the yard as it is saved after it. */
  async act(log: StockLog, yard: Archive): Promise<Archive> {
    const { dice, visitor, changes } = this;
    const chosen = await randomAct({ dice, visitor, yard, today: this.today(), changes });
    if (!chosen) {
      // Nothing to do just now: hours go by.
      this.setOn(dice.chance(0.5) ? dice.whole(5, 60) : dice.whole(60, 600));
      return yard;
    }
    return this.done(log, yard, chosen);
  }

  /** Sends a form, writes down what it did, and holds the yard as it is saved then against the log. */
  private async done(log: StockLog, yard: Archive, chosen: RandomAct): Promise<Archive> {
    const { dice, visitor } = this;
    const goods = chosen.action.endsWith('/arrived') ? onTheWay(await visitor.page('/buying'), yard) : new Map();
    const { answer, act } = await this.sent(chosen);
    if (!answer.done) {
      this.refused += 1;
      return yard;
    }
    const after = await savedYard(visitor);
    this.acts += 1;
    const form = act.action.replace(/^\/orders\/[^/]+\//, '/orders/…/');
    this.byForm.set(form, (this.byForm.get(form) ?? 0) + 1);
    const change = Number(/[?&]done=(\d+)/.exec(answer.location)?.[1]);
    this.writeDown(log, act, change, yard, after, goods);
    for (const words of linesGone(yard, after)) this.fault(`${act.action}: ${words}`);
    const others = otherThanLogged(after, log.amounts);
    for (const words of others) this.fault(`${act.action}: ${words}`);
    // One fault is told once: from here on by what is there.
    if (others.length > 0) log.startFrom(after);
    this.setOn(dice.whole(0, 20));
    return after;
  }

  /** What was planned for a time that is over is said to be done, or not: until then a plan has it in its past. */
  private async answered(log: StockLog, yard: Archive): Promise<Archive> {
    let now = yard;
    for (let questions = 0; questions < MOST_QUESTIONS; questions += 1) {
      const html = await this.visitor.page('/today');
      const late = lateFormOn(html);
      if (!late) return now;
      const after = await this.done(log, now, late);
      const giveUp = after === now ? notDoneFormOn(html) : null;
      now = giveUp ? await this.done(log, now, giveUp) : after;
    }
    return now;
  }

  /** The plan as it stands early on the next day, with nothing of the past to be answered. */
  async checkPlan(log: StockLog, yard: Archive): Promise<Archive> {
    const { dateOf, minuteAt } = calendar(DEMO_ZONE);
    const evening = await this.answered(log, yard);
    const tomorrow = dateOf(this.now / MINUTE_MS + MINUTES_OF_DAY);
    this.setOn(minuteAt(tomorrow, '04:30') - this.now / MINUTE_MS);
    const morning = await this.answered(log, evening);
    this.plansChecked += 1;
    this.options.tell?.(
      `${this.acts} acts, ${this.days} days, ${this.visitor.kills} kills, ${this.faults.length} faults`,
    );
    for (const words of await planFaults(this.visitor, this.server.databaseUrl)) this.fault(words);
    return morning;
  }
}

/** Opened bags of the mortar keep for some days from the first morning on, so that bag dates and openings are both met. */
const OPENED = { opensBy: '1', openedDays: '10' };

const withOpenedBags = (visitor: PageVisitor): Promise<void> =>
  changed(visitor, '/yard/stock/fast-setting-mortar', OPENED);

/** The panels of the demo that mesh goes into. */
const WITH_MESH = ['panel-1200', 'panel-900', 'panel-600', 'panel-450'];

const changed = async (visitor: PageVisitor, path: string, fields: Record<string, string>): Promise<void> => {
  const form = formsIn(await visitor.page(path)).find(({ action }) => action === path)!;
  const answer = await visitor.send(path, { ...form.fields, ...fields });
  if (!answer.done) throw new Error(`${path} could not be changed: ${plainText(answer.html)}`);
};

/** Mesh is bought in whole sheets that each panel is cut from, so that rests of sheets are met as well. */
const withSheets = async (visitor: PageVisitor): Promise<void> => {
  for (const panel of WITH_MESH)
    await changed(visitor, `/yard/panels/${panel}`, { 'part-0': '', 'partQuantity-0': '' });
  await changed(visitor, '/yard/stock/mesh', {
    inSheets: 'sheets',
    unit: 'sheet',
    onHand: '1',
    pack: '1',
    minimum: '0',
  });
};

const lived = async (torture: Torture, { acts, kills, seed }: TortureOptions): Promise<Archive> => {
  const dice = diceOf(seed + 1);
  const killedAt = new Set(
    dice.some(
      Array.from({ length: acts - 10 }, (_, place) => place + 5),
      kills,
    ),
  );
  const { visitor } = torture;
  await withOpenedBags(visitor);
  await withSheets(visitor);
  let yard = await savedYard(visitor);
  const log = new StockLog(yard.yard.timeZone);
  log.startFrom(yard);
  for (let inVain = 0; torture.acts < acts; ) {
    const [before, killed] = [torture.acts, visitor.kills];
    if (killedAt.delete(before)) visitor.killDuringNext(dice.whole(0, KILLED_WITHIN_MS));
    yard = await torture.act(log, yard);
    inVain = torture.acts > before ? 0 : inVain + 1;
    if (inVain > MOST_IN_VAIN) throw new Error('Nothing can be done any more.');
    const isDue = Math.floor(torture.acts / CHECKED_EVERY) > Math.floor(before / CHECKED_EVERY);
    if (isDue || torture.acts >= acts || visitor.kills > killed) yard = await torture.checkPlan(log, yard);
  }
  return yard;
};

/**
 * So many random acts on the running program, as its pages send them, with its process killed in the middle of some. After each
 * act the yard as it is saved is held against a log of all that was answered as done, to the gram and the millimetre of each bag
 * date and each stick; now and then, after each kill and at the end, the plan, what its materials are spoken for and what is to be
 * bought are held against each other.
 */
export const torture = async (options: TortureOptions): Promise<Tortured> => {
  const folder = mkdtempSync(join(tmpdir(), 'torture-'));
  const server = realServer(folder);
  const visitor = pageVisitor(server);
  const work = new Torture(server, visitor, options);
  try {
    await server.start();
    const yard = await lived(work, options);
    const { acts, byForm, refused, plansChecked, days, faults } = work;
    const complaints = server.complaints() === '' ? [] : [`the server wrote: ${server.complaints()}`];
    return {
      ...{ acts, byForm, refused, plansChecked, days, faults: [...faults, ...complaints] },
      ...{ kills: visitor.kills, sentAgain: visitor.sentAgain, lines: yard.stockBook?.length ?? 0 },
    };
  } finally {
    await server.kill();
    rmSync(folder, { recursive: true });
  }
};

/** The rows of `npm run bench -- torture`, with every fault in words. */
export const tortureRows = async (acts: number): Promise<Row[]> => {
  const done = await torture({ acts, kills: 3, seed: 1, tell: (words) => console.error(`  ${words}`) });
  const forms = [...done.byForm].sort(([, a], [, b]) => b - a).map(([form, count]) => `${form} ${count}`);
  return [
    { what: 'acts answered as done', figure: `${done.acts} in ${done.days} days`, aim: forms.join(', ') },
    { what: 'refused', figure: String(done.refused), aim: '' },
    { what: 'killed', figure: `${done.kills}, sent again ${done.sentAgain}`, aim: '3' },
    { what: 'lines of the stock book', figure: String(done.lines), aim: '' },
    { what: 'plans held against audit, referee, uses and buying', figure: String(done.plansChecked), aim: '' },
    { what: 'what does not add up', figure: String(done.faults.length), aim: '0' },
    ...done.faults.slice(0, 40).map((fault) => ({ what: fault, figure: '', aim: '' })),
  ];
};
