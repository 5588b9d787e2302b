import type { FC, PropsWithChildren } from 'hono/jsx';
import type { StockBookModel, StockLineFacts } from '../../src/usecases/stock/show-stock-book.ts';
import { Answer, Empty } from '../parts/answer.tsx';
import { ButtonLink } from '../parts/button.tsx';
import { byText } from '../parts/by-text.ts';
import { clockText, dayHeading } from '../parts/day-text.ts';
import { amountText } from '../parts/quantity-text.ts';
import { batchPath } from '../trace/batch-path.ts';
import { leftText, lineText, moreText, STOCK_BOOK, stockBookAnswer, stockBookPath } from './stock-book-text.ts';

const For: FC<{ line: StockLineFacts }> = ({ line: { for: work, standing } }) => {
  if (work === null) return null;
  // What was undone is on no page of its own any more.
  if (standing === 'undone') return 'order' in work ? ` for order ${work.order}` : ` for ${work.mix}, ${work.mould}`;
  return 'order' in work ? (
    <>
      {' '}
      for <a href={`/orders/${encodeURIComponent(work.order)}`}>order {work.order}</a>
    </>
  ) : (
    <>
      {' '}
      for <a href={batchPath(work.batch)}>{`${work.mix}, ${work.mould}`}</a>
    </>
  );
};

/** What was undone stays to be read, struck through. */
const Said: FC<PropsWithChildren<{ line: StockLineFacts }>> = ({ line: { standing }, children }) => (
  <>
    {standing === 'undone' ? <s>{children}</s> : children}
    {standing === 'undone' && ' Undone.'}
  </>
);

const Line: FC<{ line: StockLineFacts; model: StockBookModel }> = ({ line, model: { unit, today } }) => (
  <li class="book-line">
    <p>
      <span class="quiet">{clockText(line.at)}</span> {byText(line.by)}
      <Said line={line}>
        {lineText(line, today)}
        <For line={line} />
      </Said>
      {line.beyond > 0 && line.standing === 'stands' && (
        <span class="goes-off"> {amountText(line.beyond, unit)} more than the book had. Count it.</span>
      )}
    </p>
    <p class="number">{moreText(line, unit)}</p>
    <p class="number quiet">{leftText(line, unit)}</p>
  </li>
);

/** Lines that were written one after another and are of one day. */
const byDay = (lines: readonly StockLineFacts[]): { date: string; lines: StockLineFacts[] }[] => {
  const days: { date: string; lines: StockLineFacts[] }[] = [];
  for (const line of lines) {
    const date = line.at.slice(0, 10);
    const last = days.at(-1);
    if (last?.date === date) last.lines.push(line);
    else days.push({ date, lines: [line] });
  }
  return days;
};

/** What became of a material: each line with what it left. */
export const StockBookPage: FC<{ model: StockBookModel }> = ({ model }) => (
  <>
    <Answer note="Its stock book, the newest line first. What stands at the right is what each line left.">
      {stockBookAnswer(model)}
    </Answer>
    {model.lines.length === 0 && (
      <Empty>{model.newest ? 'Nothing of it has come or gone yet.' : 'There are no older lines.'}</Empty>
    )}
    {byDay(model.lines).map(({ date, lines }) => (
      <section class="order-day">
        <h2>{dayHeading(date, model.today)}</h2>
        <ul class="book-lines">
          {lines.map((line) => (
            <Line line={line} model={model} />
          ))}
        </ul>
      </section>
    ))}
    <div class="buttons no-print">
      {model.older !== null && <ButtonLink href={stockBookPath(model.material, model.older)}>Older lines</ButtonLink>}
      {!model.newest && <ButtonLink href={stockBookPath(model.material)}>Newest lines</ButtonLink>}
      <ButtonLink href="/buying">Buying</ButtonLink>
      <a href={`${STOCK_BOOK}.csv?${new URLSearchParams({ of: model.material })}`}>All of it as a table (CSV)</a>
    </div>
  </>
);
