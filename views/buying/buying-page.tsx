import type { FC } from 'hono/jsx';
import { fullDayWords } from '../../shared/day-words.ts';
import { listPart } from '../../shared/list-part.ts';
import type { BuyingModel, BuyWeek } from '../../src/usecases/buying/buying-facts.ts';
import type { RefusedForm } from '../../src/usecases/plan/save-edit.ts';
import { AmountField, unitHint } from '../parts/amount-field.tsx';
import { Answer, Empty } from '../parts/answer.tsx';
import { Button } from '../parts/button.tsx';
import { DayField } from '../parts/day-field.tsx';
import { weekHeading } from '../parts/day-text.ts';
import { SelectField } from '../parts/field.tsx';
import { FormAnswer, SaveButtons } from '../parts/form-state.tsx';
import { LongList } from '../parts/long-list.tsx';
import { Mark } from '../parts/mark.tsx';
import { type DoneNotice, Notice } from '../parts/notice.tsx';
import { OtherParts } from '../parts/other-parts.tsx';
import { WALK } from '../stock/walk-page.tsx';
import { buyingAnswer, buyingNote, stockTitle } from './buying-text.ts';
import { ComingLine } from './coming-line.tsx';
import { StockLine } from './stock-line.tsx';
import { TripBlock } from './trip-block.tsx';

interface BuyingPageProps {
  model: BuyingModel;
  /** How many of the later weeks are on the pages before. */
  from: number;
  notice: DoneNotice | null;
  refused: RefusedForm | null;
}

/** Weeks after this one that are in sight; those after them open at a tap. */
const WEEKS_SHOWN = 1;

/** Each has lines with forms of their own. */
const WEEKS_AT_ONCE = 2;

const only = (refused: RefusedForm | null, form: string): RefusedForm | null =>
  refused?.form === form ? refused : null;

/** Forms of the page that say first what they would move: which fields they have. */
const ASKED = {
  'new-day': ['goods', 'on', 'onWas'],
  'not-to-be-had': ['material', 'line', 'on'],
} as const;

/** What a form that was sent would move, with the way to do it all the same, or what was wrong with it. */
const Sent: FC<{ refused: RefusedForm; today: string }> = ({ refused, today }) => {
  const name = refused.form.startsWith('none-') ? 'not-to-be-had' : 'new-day';
  const action = `/buying/${name}`;
  return (
    <FormAnswer state={refused} today={today}>
      <form method="post" action={action} data-hx-post={action} data-hx-target="#page">
        {ASKED[name].map((field) => (
          <input type="hidden" name={field} value={refused.typed[field]} />
        ))}
        <SaveButtons state={refused} back="/buying" />
      </form>
    </FormAnswer>
  );
};

const Week: FC<{ week: BuyWeek; model: BuyingModel; refused: RefusedForm | null }> = ({ week, model, refused }) => (
  <section>
    <h2>{weekHeading(week.week, model.thisWeek, model.today)}</h2>
    {week.trips.map((trip) => (
      <TripBlock trip={trip} model={model} refused={refused} />
    ))}
  </section>
);

/** Things to buy on one page of later weeks: each has forms of its own. */
const LINES_SHOWN = 6;

const linesIn = ({ trips }: BuyWeek): number => trips.reduce((sum, { lines }) => sum + lines.length, 0);

/** The weeks from one on. */
const weeksFrom = (from: number): string => (from === 0 ? '/buying' : `/buying?from=${from}#later`);

const isOfWeek = ({ form }: RefusedForm, { trips }: BuyWeek): boolean => {
  const keys = trips.flatMap(({ key, lines }) => [key, ...lines.map((line) => line.key)]);
  return keys.some((key) => form === key || form === `none-${key}`);
};

interface LaterWeeksProps {
  weeks: readonly BuyWeek[];
  model: BuyingModel;
  from: number;
  refused: RefusedForm | null;
}

const LaterWeeks: FC<LaterWeeksProps> = ({ weeks, model, from, refused }) => {
  const [soon, later] = [weeks.slice(0, WEEKS_SHOWN), weeks.slice(WEEKS_SHOWN)];
  const refusedAt = refused === null ? -1 : later.findIndex((week) => isOfWeek(refused, week));
  const part = listPart(later, Math.max(from, refusedAt), { most: LINES_SHOWN, weigh: linesIn });
  return (
    <>
      {soon.map((week) => (
        <Week week={week} model={model} refused={refused} />
      ))}
      {later.length > 0 && (
        <details class="later-weeks" id="later" open={refusedAt >= 0 || from > 0}>
          <summary>The weeks after that</summary>
          <OtherParts part={part} what="week" href={weeksFrom} />
          <LongList
            items={part.items}
            atOnce={WEEKS_AT_ONCE}
            draw={(week) => <Week week={week} model={model} refused={refused} />}
          />
          <OtherParts part={part} what="week" href={weeksFrom} />
        </details>
      )}
    </>
  );
};

interface ComingProps {
  model: BuyingModel;
  refused: RefusedForm | null;
  goods: BuyingModel['onTheWay'];
}

const Coming: FC<ComingProps> = ({ model, refused, goods }) => (
  <ul class="buys">
    <LongList
      items={goods}
      draw={(one) => (
        <ComingLine
          goods={one}
          today={model.today}
          currency={model.currency}
          refused={only(refused, `goods-${one.id}`)}
        />
      )}
    />
  </ul>
);

/** What was to come before today, above all that is to be ordered: without it the plan is not what it seems. */
const Overdue: FC<ComingProps> = (props) =>
  props.goods.length === 0 ? null : (
    <section>
      <h2>Overdue</h2>
      <Coming {...props} />
    </section>
  );

const OnTheWay: FC<ComingProps> = (props) => (
  <section>
    <h2>On its way</h2>
    {props.model.onTheWay.length === 0 && (
      <p>Nothing is on its way. What you mark bought waits here until it arrives.</p>
    )}
    {props.goods.length === 0 && props.model.onTheWay.length > 0 && <p>Nothing else is on its way.</p>}
    {props.goods.length > 0 && <Coming {...props} />}
  </section>
);

const Stock: FC<{ model: BuyingModel; refused: RefusedForm | null }> = ({ model, refused }) => (
  <section>
    <h2>In the yard</h2>
    {model.stock.length > 0 && <p class="hint">{stockTitle(model.daysAhead)}</p>}
    {model.stock.length > 0 && (
      <p class="no-print way">
        <a href={WALK}>Walk round and count all of it</a>
      </p>
    )}
    {model.stock.length === 0 ? (
      <Empty>
        The stock book is empty. It fills when the yard's materials are recorded at <a href="/yard">Your yard</a>.
      </Empty>
    ) : (
      <ul class="stocks">
        {model.stock.map((stock) => (
          <StockLine
            stock={stock}
            days={model.daysAhead}
            today={model.today}
            refused={only(refused, `stock-${stock.key}`)}
          />
        ))}
      </ul>
    )}
  </section>
);

const SomethingElse: FC<{ model: BuyingModel; refused: RefusedForm | null }> = ({ model, refused }) => {
  const { errors = {}, typed = {} } = refused ?? {};
  return (
    <details class="otherwise no-print" open={refused !== null}>
      <summary>Bought something that is not in the list</summary>
      <form class="form" method="post" action="/buying/bought" data-hx-post="/buying/bought" data-hx-target="#page">
        <input type="hidden" name="line" value="else" />
        <div class="field-row">
          <SelectField
            name="material"
            label="What"
            value={typed.material}
            errors={errors}
            options={model.materials.map(({ id, name, unit }) => ({
              value: id,
              text: `${name}${unitHint(unit)}`,
            }))}
          />
          <AmountField name="quantity" label="How much" value={typed.quantity ?? ''} errors={errors} />
          <DayField
            name="on"
            label="Expected"
            min={model.today}
            value={typed.on ?? fullDayWords(model.today)}
            errors={errors}
          />
          <AmountField
            name="price"
            label={`Price of it all (${model.currency})`}
            hint="May stay empty."
            counts
            value={typed.price ?? ''}
            errors={errors}
          />
        </div>
        <div class="buttons">
          <Button>Bought</Button>
        </div>
      </form>
    </details>
  );
};

/** What is past its keeping days, above all else: it may have to be bought anew. */
const TooOld: FC<{ model: BuyingModel }> = ({ model: { stock } }) => {
  const old = stock.filter(({ keeping, bags }) => (keeping?.past.length ?? 0) > 0 || bags.some(({ isPast }) => isPast));
  return old.length === 0 ? null : (
    <p class="goes-off">
      <Mark shape="triangle" /> Past its shelf life in the yard:{' '}
      {old.map(({ key, name }, index) => [index > 0 ? '; ' : '', <a href={`#stock-${key}`}>{name}</a>])}.
    </p>
  );
};

/** What to buy by when, what is on its way, what is in the yard. */
export const BuyingPage: FC<BuyingPageProps> = ({ model, from, notice, refused }) => {
  const now = model.weeks.filter(({ week }) => week === model.thisWeek);
  const later = model.weeks.filter(({ week }) => week !== model.thisWeek);
  const overdue = model.onTheWay.filter(({ on }) => on < model.today);
  const coming = model.onTheWay.filter(({ on }) => on >= model.today);
  return (
    <>
      {notice && <Notice notice={notice} today={model.today} back="/buying" />}
      <Answer note={buyingNote(model)}>{buyingAnswer(model)}</Answer>
      {refused && <Sent refused={refused} today={model.today} />}
      <TooOld model={model} />
      <div class="buying">
        <div>
          <Overdue model={model} refused={refused} goods={overdue} />
          {now.map((week) => (
            <Week week={week} model={model} refused={refused} />
          ))}
          <OnTheWay model={model} refused={refused} goods={coming} />
          <LaterWeeks weeks={later} model={model} from={from} refused={refused} />
          {model.materials.length > 0 && <SomethingElse model={model} refused={only(refused, 'else')} />}
        </div>
        <Stock model={model} refused={refused} />
      </div>
    </>
  );
};
