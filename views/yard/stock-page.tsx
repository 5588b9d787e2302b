import type { FC } from 'hono/jsx';
import type { YardMaterial, YardStockModel } from '../../src/usecases/yard/show-yard-stock.ts';
import { ButtonLink } from '../parts/button.tsx';
import type { DoneNotice } from '../parts/notice.tsx';
import { type ListEntry, type ListGroup, ListPage } from './list-page.tsx';
import { YARD } from './sections.ts';
import { boughtText, heldText, stockAnswer } from './stock-words.ts';

export const STOCK = `${YARD}/stock`;

const materialEntry = (material: YardMaterial, currency: string): ListEntry => ({
  id: material.id,
  name: material.name,
  lines: [
    <p>
      {heldText(material)} {boughtText(material, currency)}
    </p>,
  ],
});

/** By who sells it. */
const groupsOf = ({ materials, suppliers, currency }: YardStockModel): ListGroup[] =>
  [...suppliers, undefined].map((supplier) => ({
    title: supplier ?? 'No supplier recorded',
    entries: materials.filter((one) => one.supplier === supplier).map((one) => materialEntry(one, currency)),
  }));

/** What is bought and used up, by who sells it. How much to buy is on the buying page. */
export const StockPage: FC<{ model: YardStockModel; notice: DoneNotice | null }> = ({ model, notice }) => (
  <ListPage
    path={STOCK}
    notice={notice}
    today={model.today}
    answer={stockAnswer(model)}
    note={
      <>
        What you buy and use up. What to buy, what is on its way and counting are under <a href="/buying">Buying</a>.
      </>
    }
    empty="Record the bags first, then mesh, rod, pins and the like."
    add="Add a material"
    after={
      <ButtonLink href="/yard/suppliers" kind="plain">
        Suppliers
      </ButtonLink>
    }
    groups={groupsOf(model)}
  />
);
