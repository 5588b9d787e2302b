import type { Mould } from '../../../shared/mould.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { shownUnit } from '../../engine/units/material-unit.ts';
import { bagsFacts } from '../buying/bags-facts.ts';
import { type BagsToCount, bagsToCount } from '../buying/bags-to-count.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import type { PageHead } from '../core/page-parts.ts';
import { currentPlan } from '../plan/make-plan.ts';
import { type LeftField, leftField } from '../typed/left-typed.ts';
import { showMeasures } from '../typed/measures.ts';
import { bookOf } from '../typed/stock-book.ts';
import { mouldBook } from './walk-round.ts';

/** A mould as the book has it. `piece`: what is in it; null: it is empty. */
interface MouldToSee {
  id: string;
  book: string;
  condition: Mould['condition'];
  piece: string | null;
}

/** Finished pieces of a kind, out of their moulds and good. */
interface PiecesToCount {
  id: string;
  book: string;
  name: string;
  there: number;
}

/** A material in the unit that is shown. `offcuts` null: it is not cut. */
interface StockToCount {
  id: string;
  book: string;
  name: string;
  unit: string;
  there: number;
  offcuts: LeftField | null;
  /** None where no bag has a date or is opened. */
  bags: readonly BagsToCount[];
}

/** All that is looked at on a walk round, with what the book has, in the order of the walk: moulds, rack, store. */
export interface WalkModel extends PageHead {
  moulds: readonly MouldToSee[];
  pieces: readonly PiecesToCount[];
  stock: readonly StockToCount[];
}

const mouldsToSee = (yard: YardFile): MouldToSee[] => {
  const names = new Map(yard.castings.map(({ id, name }) => [id, name]));
  const pieces = new Map(yard.inMould.map(({ mould, casting }) => [mould, names.get(casting) ?? casting]));
  return yard.moulds
    .filter(({ condition }) => condition !== 'retired')
    .map(({ id, condition }) => ({ id, book: mouldBook(yard, id), condition, piece: pieces.get(id) ?? null }));
};

const piecesToCount = ({ castings, finished }: YardFile): PiecesToCount[] =>
  castings.map(({ id, name }) => {
    const there = finished.reduce((sum, lot) => sum + (lot.casting === id ? lot.count : 0), 0);
    return { id, book: String(there), name, there };
  });

const stockToCount = (yard: YardFile, system: UnitSystem, day: string): StockToCount[] =>
  yard.materials.map((material) => {
    const { id, name, unit, onHand } = material;
    const { word, perUnit } = shownUnit(unit, system);
    return {
      ...{ id, book: bookOf(material), name, unit: word, there: onHand * perUnit },
      offcuts: leftField(material, system),
      bags: bagsToCount(material, bagsFacts(material, yard, day), perUnit),
    };
  });

/** What there is to look at on a walk round. */
export const showWalk = async (context: UseCaseContext): Promise<WalkModel> => {
  const { yard } = await currentPlan(context);
  const { system } = await showMeasures(context);
  const day = today(yard.yard.timeZone, context.now);
  return {
    ...{ yardName: yard.yard.name, today: day },
    ...{ moulds: mouldsToSee(yard), pieces: piecesToCount(yard), stock: stockToCount(yard, system, day) },
  };
};
