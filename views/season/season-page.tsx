import type { Child, FC } from 'hono/jsx';
import type { MadeFacts, SeasonModel } from '../../src/usecases/season/show-season.ts';
import { Answer } from '../parts/answer.tsx';
import { ButtonLink } from '../parts/button.tsx';
import { MEASURED, measuredHeading } from '../yard/measured-text.ts';
import { MouldsChart } from './moulds-chart.tsx';
import {
  askedText,
  becameText,
  eachText,
  firstText,
  heldUpAnswer,
  heldUpWords,
  keptText,
  mouldsText,
  reasonsText,
  SEASON,
  seasonAnswer,
  soldText,
} from './season-text.ts';
import { WeeksChart } from './weeks-chart.tsx';

interface TableProps {
  head: readonly string[];
  rows: readonly { name: string; cells: readonly Child[] }[];
}

/** Names to the left, figures to the right of them. */
const Table: FC<TableProps> = ({ head: [first, ...figures], rows }) => (
  <table class="facts-table">
    <thead>
      <tr>
        <th scope="col">{first}</th>
        {figures.map((name) => (
          <th scope="col" class="number">
            {name}
          </th>
        ))}
      </tr>
    </thead>
    <tbody>
      {rows.map(({ name, cells }) => (
        <tr>
          <th scope="row">{name}</th>
          {cells.map((cell) => (
            <td class="number">{cell}</td>
          ))}
        </tr>
      ))}
    </tbody>
  </table>
);

const MadeTable: FC<{ of: string; list: readonly MadeFacts[] }> = ({ of, list }) => (
  <Table
    head={[of, 'Out', 'Good', 'To mend', 'Scrap']}
    rows={list.map(({ name, out, good, mend, scrap }) => ({ name, cells: [out, good, mend, scrap] }))}
  />
);

const MadePart: FC<{ model: SeasonModel }> = ({ model: { made, castings, reasons, thrownAway } }) => (
  <section>
    <h2>Made and scrapped</h2>
    {made.out === 0 ? (
      <p>No piece that came out of its mould is on record. Each is, once it is stripped on Today.</p>
    ) : (
      <>
        <p>{becameText(made)}.</p>
        <MadeTable of="Piece" list={castings} />
        {reasons.length > 0 && <p>Scrapped, and why: {reasonsText(reasons)}.</p>}
      </>
    )}
    {thrownAway > 0 && <p>Batches thrown away: {thrownAway}.</p>}
  </section>
);

const SoldPart: FC<{ model: SeasonModel }> = ({ model: { sold } }) => (
  <section>
    <h2>Sold, and promises kept</h2>
    {sold.orders + sold.lines.length === 0 ? (
      <p>No order was handed over.</p>
    ) : (
      <>
        <p>{soldText(sold)}.</p>
        <p>{askedText(sold)}</p>
        <p>{keptText(sold)}</p>
        <p class="quiet">{firstText(sold)}</p>
      </>
    )}
  </section>
);

const HeldUpPart: FC<{ model: SeasonModel }> = ({ model: { heldUp } }) => (
  <section>
    <h2>What held dates up</h2>
    <p>{heldUpAnswer(heldUp)}</p>
    {heldUp.length > 0 && (
      <Table
        head={['What was recorded', 'Times', 'Days later']}
        rows={heldUp.map(({ kind, changes, days }) => ({ name: heldUpWords(kind), cells: [changes, days] }))}
      />
    )}
  </section>
);

const MinutesPart: FC<{ model: SeasonModel }> = ({ model: { times } }) => (
  <section>
    <h2>Minutes, beside the figures</h2>
    {times.length === 0 ? (
      <p>
        Nothing was measured: both ends of a task have to be tapped. <a href={MEASURED}>What the work takes</a>
      </p>
    ) : (
      <Table
        head={['Work', 'By figures', 'Measured', 'How many']}
        rows={times.map(({ what, name, count, figure, minutes }) => ({
          name: measuredHeading({ what, name }),
          cells: [Math.round(figure), Math.round(minutes.median), count],
        }))}
      />
    )}
  </section>
);

const GoodsPart: FC<{ model: SeasonModel }> = ({ model: { goods } }) => (
  <section>
    <h2>Material for a piece, beside the recipe</h2>
    {goods.length === 0 ? (
      <p>The stock book has nothing that a batch took. It is told from the first batch on that is recorded.</p>
    ) : (
      <>
        <Table
          head={['Material', 'By recipe', 'Taken', 'With counts', 'Spoiled']}
          rows={goods.map(({ name, unit, recipe, taken, counted, spoiled }) => ({
            name,
            cells: [
              ...[recipe, taken, counted].map((each) => eachText(each, unit)),
              spoiled > 0 ? eachText(spoiled, unit) : '–',
            ],
          }))}
        />
        <p class="quiet">
          For one piece, by the recipe of today; what is spoiled in all. More is taken than the recipe says where a mix
          is not filled into moulds, and counts find what went beyond that.
        </p>
      </>
    )}
  </section>
);

const MouldsPart: FC<{ model: SeasonModel }> = ({ model: { moulds } }) => (
  <section>
    <h2>Moulds</h2>
    <p>{mouldsText(moulds)}</p>
    {moulds.some(({ out }) => out > 0) && (
      <div class="season-moulds">
        <MouldsChart moulds={moulds} />
        <MadeTable of="Mould" list={moulds} />
      </div>
    )}
  </section>
);

/** What was: a year of the yard beside the year before, on two pages of paper. */
export const SeasonPage: FC<{ model: SeasonModel }> = ({ model }) => (
  <>
    <Answer note="By what was recorded, each day by the yard's own clock.">{seasonAnswer(model)}</Answer>
    <div class="season-parts">
      {model.weeks.length > 0 && (
        <section>
          <h2>Week by week</h2>
          <WeeksChart model={model} />
        </section>
      )}
      <MadePart model={model} />
      <SoldPart model={model} />
      <HeldUpPart model={model} />
      <MinutesPart model={model} />
      <GoodsPart model={model} />
      <MouldsPart model={model} />
    </div>
    <div class="buttons">
      <ButtonLink href={`${SEASON}.csv?year=${model.year}`}>All of it as a table (CSV)</ButtonLink>
      {model.others.map((year) => (
        <ButtonLink href={`${SEASON}?year=${year}`}>{String(year)}</ButtonLink>
      ))}
      <ButtonLink href="/orders/past">Past orders</ButtonLink>
      <ButtonLink href="/yard/goes-wrong">What goes wrong</ButtonLink>
    </div>
  </>
);
