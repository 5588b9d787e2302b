import type { FC } from 'hono/jsx';
import type { SpokenForModel, SpokenStep } from '../../src/usecases/stock/show-spoken-for.ts';
import { Answer } from '../parts/answer.tsx';
import { ButtonLink } from '../parts/button.tsx';
import { dayText } from '../parts/day-text.ts';
import { amountText } from '../parts/quantity-text.ts';
import { bagDatesText, spokenForAnswer, spokenForNote, stepText } from './spoken-for-text.ts';
import { stockBookPath } from './stock-book-text.ts';
import { StockChart } from './stock-chart.tsx';

const For: FC<{ step: SpokenStep }> = ({ step }) =>
  step.orders.length === 1 && !step.forStock ? (
    <a href={`/orders/${encodeURIComponent(step.orders[0]!.order)}`}>{stepText(step)}</a>
  ) : (
    <>{stepText(step)}</>
  );

const Row: FC<{ step: SpokenStep; model: SpokenForModel }> = ({ step, model: { today, unit } }) => (
  <tr>
    <th scope="row">{dayText(step.on, today)}</th>
    <td>
      <For step={step} />
      {step.bagDates.length > 0 && <span class="quiet"> {bagDatesText(step, today)}</span>}
      {step.short > 0 && <span class="goes-off"> {amountText(step.short, unit)} short</span>}
    </td>
    <td class="number">
      {step.kind === 'comes' ? '+' : '−'}
      {amountText(step.quantity, unit)}
    </td>
    <td class="number">{amountText(step.left, '')}</td>
  </tr>
);

/** What a material is planned for, day by day, and when it runs short. */
export const SpokenForPage: FC<{ model: SpokenForModel }> = ({ model }) => (
  <>
    <Answer note={spokenForNote(model)}>{spokenForAnswer(model)}</Answer>
    {model.steps.length > 0 && <StockChart model={model} />}
    {model.steps.length > 0 && (
      <table class="spoken-for">
        <caption>By today's plan, with what is in the yard and on its way, and nothing bought beside</caption>
        <thead>
          <tr>
            <th scope="col">Day</th>
            <th scope="col">What for</th>
            <th scope="col" class="number">
              Amount
            </th>
            <th scope="col" class="number">
              Left
            </th>
          </tr>
        </thead>
        <tbody>
          {model.steps.map((step) => (
            <Row step={step} model={model} />
          ))}
        </tbody>
      </table>
    )}
    {model.isCut && <p class="quiet">What is planned after that is not shown.</p>}
    <div class="buttons no-print">
      <ButtonLink href="/buying">Buying</ButtonLink>
      <ButtonLink href={stockBookPath(model.material)}>Stock book</ButtonLink>
    </div>
  </>
);
