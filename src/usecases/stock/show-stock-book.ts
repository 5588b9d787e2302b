import { materialById, type StoredMaterial } from '../../../db/stores/material-store.ts';
import { type StockLine, stockLinesOf } from '../../../db/stores/stock-lines.ts';
import type { BatchKey } from '../../../shared/batch-record.ts';
import type { StockWork } from '../../../shared/stock-entry.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { lengthText } from '../../engine/units/length.ts';
import { shownUnit } from '../../engine/units/material-unit.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import type { PageHead } from '../core/page-parts.ts';
import { currentPlan } from '../plan/make-plan.ts';
import { showMeasures } from '../typed/measures.ts';
import { sizesText } from '../typed/sizes-typed.ts';

/** Lines of one page. */
const SHOWN = 100;

/** What stock was taken for: a batch of a mix with its page, or an order. */
export type LineFor = { mix: string; mould: string; batch: BatchKey } | { order: string };

/** One line of the stock book of a material, in the unit that is shown. */
export interface StockLineFacts {
  line: number;
  /** When it was so, in the yard's zone. */
  at: string;
  kind: StockLine['kind'];
  quantity: number;
  /** Of offcuts, how long they are, of rests how wide and how long, in the yard's units. */
  length: string | null;
  /** What it left: of the material, or of offcuts or rests of that size. */
  left: number;
  useBy: string | null;
  openedAt: string | null;
  /** So much more was taken than there was by the book; 0 for nothing. */
  beyond: number;
  for: LineFor | null;
  reason: string | null;
  by: string | null;
  standing: StockLine['standing'];
  /** The line of which it says that it was undone, or done again. */
  ofLine: number | null;
}

/** The stock book of one material, the newest line first. */
export interface StockBookModel extends PageHead {
  material: string;
  name: string;
  unit: string;
  inYard: number;
  lines: readonly StockLineFacts[];
  /** Names the line before which there are more; null when there are none. */
  older: number | null;
  newest: boolean;
}

const forOf = (work: StockWork | null, { mixes }: YardFile): LineFor | null => {
  if (work === null || 'order' in work) return work;
  const mix = mixes.find(({ id }) => id === work.mix)?.name ?? work.mix;
  return { mix, mould: work.mould, batch: { minute: minuteOf(work.at), mould: work.mould } };
};

const leftText = (lengthMm: number, widthMm: number | null, system: UnitSystem): string =>
  widthMm === null ? lengthText(lengthMm, system) : sizesText([{ widthMm, lengthMm, count: 1 }], system);

/** Lines as they are shown in a yard. */
export const lineFacts = (
  { unit }: Pick<StoredMaterial, 'unit'>,
  yard: YardFile,
  system: UnitSystem,
): ((line: StockLine) => StockLineFacts) => {
  const { perUnit } = shownUnit(unit, system);
  const { instantText } = calendarOf(yard.yard.timeZone);
  const shown = (instant: string) => instantText(minuteOf(instant));
  return ({ id, at, kind, quantity, lengthMm, widthMm, left, useBy, openedAt, beyond, work, ...line }) => {
    const { reason, by, standing, ofLine } = line;
    const each = lengthMm === null ? perUnit : 1;
    return {
      ...{ line: id, at: shown(at), kind, quantity: quantity * each, left: left * each, beyond: beyond * each },
      length: lengthMm === null ? null : leftText(lengthMm, widthMm, system),
      ...{ useBy, openedAt: openedAt && shown(openedAt), for: forOf(work, yard), reason, by },
      ...{ standing, ofLine },
    };
  };
};

/** What became of a material, line by line; null where the stock book has none of that id. */
export const showStockBook = async (
  context: UseCaseContext,
  id: string,
  before?: number,
): Promise<StockBookModel | null> => {
  const { yard } = await currentPlan(context);
  const { system } = await showMeasures(context);
  const { material, lines } = await context.database.read(async (tx) => ({
    material: await materialById(tx, id),
    lines: await stockLinesOf(tx, id, SHOWN + 1, before),
  }));
  if (!material) return null;
  const { word, perUnit } = shownUnit(material.unit, system);
  const shown = lines.slice(0, SHOWN);
  return {
    ...{ yardName: yard.yard.name, today: today(yard.yard.timeZone, context.now) },
    ...{ material: id, name: material.name, unit: word, inYard: material.onHand * perUnit },
    lines: shown.map(lineFacts(material, yard, system)),
    older: lines.length > SHOWN ? (shown.at(-1)?.id ?? null) : null,
    newest: before === undefined,
  };
};
