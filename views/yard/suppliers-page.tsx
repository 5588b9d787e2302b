import type { FC } from 'hono/jsx';
import type { SuppliersModel } from '../../src/usecases/yard/show-suppliers.ts';
import type { DoneNotice } from '../parts/notice.tsx';
import { ListPage } from './list-page.tsx';
import { YARD } from './sections.ts';
import { supplierLines, suppliersAnswer } from './supplier-words.ts';

export const SUPPLIERS = `${YARD}/suppliers`;

/** Who sells things, when they are there and what they ask for. */
export const SuppliersPage: FC<{ model: SuppliersModel; notice: DoneNotice | null }> = ({ model, notice }) => (
  <ListPage
    path={SUPPLIERS}
    notice={notice}
    today={model.today}
    answer={suppliersAnswer(model.suppliers.length)}
    note={
      <>
        When they are open and what they ask for: trips under <a href="/buying">Buying</a> go by it. What each sells
        stands under <a href="/yard/stock">Stock and suppliers</a>.
      </>
    }
    empty="Add the shop you go to most, and the days on which it is open."
    add="Add a supplier"
    groups={[
      {
        entries: model.suppliers.map((supplier) => ({
          id: supplier.id,
          name: supplier.name,
          lines: supplierLines(supplier, model.today, model.currency).map((line) => <p>{line}</p>),
        })),
      },
    ]}
  />
);
