import type { FC } from 'hono/jsx';
import type { YardMaterial, YardStockModel } from '../../src/usecases/yard/show-yard-stock.ts';
import { Answer, Empty } from '../parts/answer.tsx';
import { ButtonLink } from '../parts/button.tsx';
import { type DoneNotice, Notice } from '../parts/notice.tsx';
import { RemoveForm } from './remove.tsx';
import { entryPath, removePath, YARD } from './sections.ts';
import { boughtText, heldText, stockAnswer } from './stock-words.ts';

export const STOCK = `${YARD}/stock`;

const Row: FC<{ material: YardMaterial; currency: string }> = ({ material, currency }) => (
  <li class="yard-row">
    <div>
      <h3>
        <a href={entryPath(STOCK, material.id)}>{material.name}</a>
      </h3>
      <p>
        {heldText(material)} {boughtText(material, currency)}
      </p>
    </div>
    <RemoveForm action={removePath(STOCK, material.id)} name={material.name} />
  </li>
);

/** What is bought and used up, by who sells it. How much to buy is on the buying page. */
export const StockPage: FC<{ model: YardStockModel; notice: DoneNotice | null }> = ({ model, notice }) => {
  const groups = [...model.suppliers, undefined].map((supplier) => ({
    title: supplier ?? 'No supplier written down',
    materials: model.materials.filter((one) => one.supplier === supplier),
  }));
  return (
    <>
      {notice && <Notice notice={notice} today={model.today} back={STOCK} />}
      <Answer
        note={
          <>
            What you buy and use up. What to buy, what is on its way and counting are under <a href="/buying">Buying</a>
            .
          </>
        }
      >
        {stockAnswer(model)}
      </Answer>
      {model.materials.length === 0 && <Empty>Write down the bags first, then mesh, rod, pins and the like.</Empty>}
      <div class="buttons">
        <ButtonLink href={entryPath(STOCK, 'new')} kind="main">
          Add a material
        </ButtonLink>
        <ButtonLink href={YARD} kind="quiet">
          Your yard
        </ButtonLink>
      </div>
      {groups
        .filter(({ materials }) => materials.length > 0)
        .map(({ title, materials }) => (
          <section>
            <h2>{title}</h2>
            <ul class="yard-rows">
              {materials.map((material) => (
                <Row material={material} currency={model.currency} />
              ))}
            </ul>
          </section>
        ))}
    </>
  );
};
