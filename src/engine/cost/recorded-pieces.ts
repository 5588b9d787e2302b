import { type BatchRecord, isBatch } from '../../../shared/batch-record.ts';
import { markKey } from '../../../shared/piece-mark.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { WorkRecord } from '../../../shared/work-record.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { BookedFor, BookedGoods } from './booked-goods.ts';
import { type BatchToCharge, chargeBatch, chargeMix } from './charge-batch.ts';
import { bookedMix, chargeBookedPieces } from './charge-booked.ts';
import { Charges } from './charges.ts';
import type { Cost } from './cost.ts';
import type { Estimates } from './estimates.ts';
import type { CostFigures, TakeGoods } from './figures.ts';
import { halfEven } from './minor-units.ts';
import { paidFor } from './paid-on.ts';
import type { PricedDelivery } from './priced-lots.ts';
import { minutesAroundPour, minutesOfRecorded, type RecordedMinutes } from './recorded-work.ts';

/** What real costs are reckoned from: all that was done, as it was recorded, and what was paid. */
export interface RecordedGround {
  yard: YardFile;
  records: readonly WorkRecord[];
  /** What work took of the stock, by the stock book. */
  booked: BookedFor;
  figures: CostFigures;
  /** What came of each material, with what was paid for it. */
  deliveries: ReadonlyMap<string, readonly PricedDelivery[]>;
  perMinute: number;
  estimates: Estimates;
  /** The date of an instant in the yard. */
  dateOf(instant: string): string;
}

/** What a piece cost by the record, and how much of its work was measured by taps. */
export interface RecordedPiece {
  cost: Cost;
  work: readonly RecordedMinutes[];
}

/** What goods cost that were taken at an instant: of bags by the dates that were read off them, else by those that the book has. */
export const paidAt =
  (
    { bagDates = [], at }: Pick<BatchRecord, 'bagDates' | 'at'>,
    booked: readonly BookedGoods[],
    { deliveries, figures, dateOf }: RecordedGround,
  ): TakeGoods =>
  (material, quantity) => {
    const read = bagDates.flatMap((one) => (one.material === material ? [one.on] : []));
    const dates = read.length > 0 ? read : (booked.find((one) => one.material.id === material)?.dates ?? []);
    const { unitPrice = null } = figures.materials.get(material) ?? {};
    return paidFor(quantity, { dates, on: dateOf(at) }, deliveries.get(material) ?? [], unitPrice);
  };

type Pour = BatchRecord['pours'][number];

/** What was done to a mould before and after a pour. */
const aroundPour = ({ mould, filledAt }: Pour, records: readonly WorkRecord[]) => {
  const filled = minuteOf(filledAt);
  const setUp = records.findLast(
    (one): one is Extract<WorkRecord, { kind: 'set up' }> =>
      one.kind === 'set up' && one.mould === mould && minuteOf(one.at) <= filled,
  );
  const before = records.findLast(
    (one) =>
      one.kind === 'poured' && one.pours.some((pour) => pour.mould === mould && minuteOf(pour.filledAt) < filled),
  );
  const isOfThis = setUp && (!before || minuteOf(before.at) <= minuteOf(setUp.at));
  const stripped = records.find(
    (one): one is Extract<WorkRecord, { kind: 'stripped' }> =>
      one.kind === 'stripped' && markKey(one) === markKey({ mould, filledAt }),
  );
  return { setUp: isOfThis ? setUp : undefined, stripped };
};

const chargeMinutes = (charges: Charges, owner: string, work: readonly RecordedMinutes[], ground: RecordedGround) => {
  const { figures, perMinute } = ground;
  const minutes = work.reduce((sum, one) => sum + one.minutes, 0);
  const bearers = [{ owner, weight: 1 }];
  charges.share('work', halfEven(((figures.wageHour ?? 0) * minutes) / 60), bearers);
  charges.share('session', halfEven(perMinute * minutes), bearers);
  if (figures.wageHour === null) charges.lack({ what: 'wage', id: '' }, bearers);
  if (figures.sessionFixed === null) charges.lack({ what: 'session', id: '' }, bearers);
};

/** A turn of the mould: no more is on record of it than that it was. */
const chargeMould = (charges: Charges, { mould }: Pour, owner: string, ground: RecordedGround) => {
  const bearers = [{ owner, weight: 1 }];
  const known = ground.figures.moulds.get(mould);
  if (known) charges.share('mould', halfEven(known.cost / known.turns), bearers);
  else charges.lack({ what: 'mould', id: mould }, bearers);
};

/** What was cut for a piece, where the book does not say. */
const chargeCutsByFigures = (charges: Charges, { casting }: Pour, owner: string, { estimates }: RecordedGround) => {
  const bearers = [{ owner, weight: 1 }];
  const { parts } = estimates.ofCasting(casting);
  charges.share('cuts', parts.cuts, bearers);
  charges.share('cut waste', parts['cut waste'], bearers);
};

/** What a batch took: by the book where that has it, else by the yard's figures. */
const chargeRecorded = (
  charges: Charges,
  batch: BatchToCharge,
  { take, booked, figures }: { take: TakeGoods; booked: readonly BookedGoods[]; figures: CostFigures },
): void => {
  if (booked.length === 0) {
    chargeBatch(charges, batch, take, figures);
    return;
  }
  const mix = bookedMix(booked, batch.mix, batch.pieces);
  chargeMix(charges, batch, (material) => take(material, mix.get(material) ?? 0));
  chargeBookedPieces(charges, take, booked, batch);
};

/**
 * What each piece of a recorded batch cost, by its mark (`markKey`): bags at what was paid for those of its dates, with its
 * share of what was thrown away of the mix; what else went into it and was cut for it by the stock book, where that has it, else by the
 * yard's figures; work as it was measured, else by the yard's figures. Null where the yard no longer
 * has its mix or one of its pieces. Of a batch that was thrown away nothing was filled or stripped.
 */
export const recordedPieces = (record: BatchRecord, ground: RecordedGround): Map<string, RecordedPiece> | null => {
  const { mixes, castings } = ground.yard;
  const mix = mixes.find(({ id }) => id === record.mix);
  const own = record.pours.flatMap((pour) => castings.find(({ id }) => id === pour.casting) ?? []);
  if (!mix || own.length < record.pours.length) return null;
  const charges = new Charges();
  const owners = record.pours.map(markKey);
  const pieces = owners.map((owner, place) => ({ owner, casting: own[place]! }));
  const isPoured = record.kind === 'poured';
  const booked = ground.booked(record);
  const take = paidAt(record, booked, ground);
  // Nothing is used up beside the mix where nothing was filled: the book takes nothing for it either.
  const figures = isPoured ? ground.figures : { ...ground.figures, usedUp: [] };
  chargeRecorded(charges, { mix, bags: record.bags, pieces }, { take, booked, figures });
  const ofBatch = minutesOfRecorded(isPoured ? record : {}, { mix, castings: own });
  const costs = record.pours.map((pour, place): [string, RecordedPiece] => {
    const owner = owners[place]!;
    const around = isPoured ? minutesAroundPour(own[place]!, aroundPour(pour, ground.records)) : [];
    const work = [ofBatch[place]!, ...around];
    chargeMinutes(charges, owner, work, ground);
    if (isPoured) chargeMould(charges, pour, owner, ground);
    if (isPoured && booked.length === 0) chargeCutsByFigures(charges, pour, owner, ground);
    return [owner, { cost: charges.of(owner).cost, work }];
  });
  return new Map(costs);
};

/** The batch that a piece is of, by its mark; none where it was poured before batches were recorded. */
export const batchesByPiece = (records: readonly WorkRecord[]): ReadonlyMap<string, BatchRecord> =>
  new Map(
    records
      .filter((record) => isBatch(record))
      .flatMap((batch) => batch.pours.map((pour) => [markKey(pour), batch] as const)),
  );
