import { habitsOfYard } from '../../../db/stores/habits-store.ts';
import { costsOfMoulds, costsOfYard, setCostOfMould, setCostsOfYard } from '../../../db/stores/money-store.ts';
import type { YardCosts } from '../../../shared/money.ts';
import { done, type Outcome, type UseCaseContext } from '../core/context.ts';
import type { PageHead } from '../core/page-parts.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { costsTyped } from '../typed/costs-form.ts';
import type { FormFields } from '../typed/form-fields.ts';
import { showYardFrame } from '../yard/show-yard-frame.ts';
import { type ScrapShare, scrapOnRecord } from './scrap-on-record.ts';

/** What costs are reckoned by: all of it anew, so that an empty field says nothing. The plan goes on as it was. */
export const editCosts = (context: UseCaseContext, fields: FormFields): Promise<Outcome<Changed<null>>> =>
  changing(
    context,
    { kind: 'costs set', words: 'What costs are reckoned by changed' },
    async (tx) => {
      const read = costsTyped(fields, (await habitsOfYard(tx)).currency);
      if (!read.ok) return read;
      await setCostsOfYard(tx, read.value.costs);
      const before = new Map((await costsOfMoulds(tx)).map((mould) => [mould.id, mould]));
      for (const mould of read.value.moulds) {
        const was = before.get(mould.id);
        if (was && (was.cost !== mould.cost || was.costTurns !== mould.costTurns)) await setCostOfMould(tx, mould);
      }
      return done(null);
    },
    { carryOn: (plan) => plan },
  );

/** What costs are reckoned by, as the form shows it. */
export interface CostsModel extends PageHead {
  currency: string;
  costs: YardCosts;
  /** Those in use, in the maker's order. */
  moulds: readonly { id: string; cost: number | null; costTurns: number | null }[];
  /** What came out as scrap so far; null while too little is on record. */
  scrap: ScrapShare | null;
}

/** What costs are reckoned by, as it stands. */
export const showCosts = async (context: UseCaseContext): Promise<CostsModel> => {
  const { yard, yardName, today, habits } = await showYardFrame(context);
  const { costs, moulds, scrap } = await context.database.read(async (tx) => ({
    costs: await costsOfYard(tx),
    moulds: await costsOfMoulds(tx),
    scrap: await scrapOnRecord(tx),
  }));
  const inUse = new Set(yard.moulds.filter(({ condition }) => condition !== 'retired').map(({ id }) => id));
  return {
    ...{ yardName, today, currency: habits.currency, costs, scrap },
    moulds: moulds.filter(({ id }) => inUse.has(id)),
  };
};
