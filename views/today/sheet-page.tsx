import type { FC } from 'hono/jsx';
import { countText } from '../../shared/plural.ts';
import type { SheetModel } from '../../src/usecases/today/show-sheet.ts';
import { Answer, Empty } from '../parts/answer.tsx';
import { byText } from '../parts/by-text.ts';
import { hoursText } from '../parts/clock-text.ts';
import { clockText, dayText, weekdayName } from '../parts/day-text.ts';
import { Mark } from '../parts/mark.tsx';
import { Amounts } from './amounts.tsx';
import { FrostLine } from './frost-line.tsx';
import { type SheetRow, sheetRecipes, sheetRows, sheetTurns } from './sheet-rows.ts';
import { PaperCautions } from './step-caution.tsx';
import { sparesTodayText, todayNote, toHaveReady } from './today-text.ts';

export const SHEET = '/today/sheet';

/** More lines than this print smaller and in two columns, to stay on one sheet. */
const LONG_ROWS = 18;

/** What is done with nothing in particular has no head of its own: one over two columns would be the head of all cells below it. */
const Row: FC<{ row: SheetRow }> = ({ row: { at, work, what, begun } }) => (
  <tr>
    <td class="tick">
      <span aria-hidden="true" />
    </td>
    <td class="number">{at}</td>
    {what.length === 0 ? <td colspan={2}>{work}</td> : <th scope="row">{work}</th>}
    {what.length > 0 && (
      <td>
        {what.map((one, index) => [index > 0 ? (what[index - 1]!.endsWith(':') ? ' ' : ', ') : '', one])}
        {begun && (
          <strong class="sheet-begun">
            <Mark shape="half" /> {begun}
          </strong>
        )}
      </td>
    )}
  </tr>
);

/** What of the session is recorded already: it stands in no line to be ticked. */
const Done: FC<Pick<SheetModel, 'done'>> = ({ done }) =>
  done.length === 0 ? null : (
    <p>
      <strong>Done so far:</strong>{' '}
      {done.map(({ at, words, by }) => `${clockText(at)} ${byText(by)}${words}`).join('; ')}.
    </p>
  );

const Turns: FC<{ model: SheetModel }> = ({ model }) => {
  const moulds = sheetTurns(model.steps);
  const most = Math.max(0, ...moulds.map(({ turns }) => turns.length));
  if (most === 0) return null;
  return (
    <section>
      <h2>Each mould, when it is filled</h2>
      <table class="sheet-turns">
        <thead>
          <tr>
            <th scope="col">Mould</th>
            {Array.from({ length: most }, (_, turn) => (
              <th scope="col" class="number">
                Turn {turn + 1}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {moulds.map(({ mould, turns }) => (
            <tr>
              <th scope="row">{mould}</th>
              {Array.from({ length: most }, (_, turn) => (
                <td class="number">{turns[turn] ?? ''}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
};

const piecesOf = ({ steps }: SheetModel): number =>
  steps.reduce((sum, step) => sum + (step.kind === 'batch' ? step.pours.length : 0), 0);

/** The next session on one sheet of paper, for the wall. */
export const SheetPage: FC<{ model: SheetModel }> = ({ model }) => {
  const { session, steps, today } = model;
  if (!session)
    return (
      <>
        <Answer>There is no session to print.</Answer>
        <Empty>
          Take an order first: <a href="/">ask when it could be ready</a>. The next session then stands here for the
          wall.
        </Empty>
      </>
    );
  const rows = sheetRows(steps, model.begun, session.wet);
  const pieces = piecesOf(model);
  return (
    <div class={rows.length > LONG_ROWS ? 'sheet long' : 'sheet'}>
      <Answer note={todayNote({ ...model, idle: null })}>
        {weekdayName(session.date)} sheet: {dayText(session.date, today)}, {hoursText(session)}
        {pieces > 0 && `, ${countText(pieces, 'piece')}`}.
      </Answer>
      <p class="hint no-print">
        Print it with your browser's Print and hang it up: it fits one sheet of paper, a very full session two. Back to{' '}
        <a href="/today">Today</a>
      </p>
      {toHaveReady(steps).length > 0 && (
        <div class="at-hand-of-it">
          <p>To have at hand:</p>
          <Amounts amounts={toHaveReady(steps)} />
        </div>
      )}
      {sheetRecipes(steps).map(({ mix, slip }) => (
        <p class="sheet-recipe">
          <strong>{mix}:</strong> {slip}.
        </p>
      ))}
      {model.spares.length > 0 && <p>{sparesTodayText(model.spares)}</p>}
      <Done done={model.done} />
      <div class="sheet-columns">
        <table class="sheet-rows">
          <caption class="unseen">What is done when</caption>
          <thead>
            <tr>
              <th scope="col" class="tick">
                <span class="unseen">Done</span>
              </th>
              <th scope="col" class="number">
                From
              </th>
              <th scope="col">Work</th>
              <th scope="col" class="what">
                What
              </th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <Row row={row} />
            ))}
          </tbody>
        </table>
        <Turns model={model} />
      </div>
      <p class="sheet-made">Pieces made: ______ By today's plan of {dayText(today, today)}.</p>
      <FrostLine steps={steps} />
      <PaperCautions steps={steps} />
    </div>
  );
};
