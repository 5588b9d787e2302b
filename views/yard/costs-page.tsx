import type { FC } from 'hono/jsx';
import { HOLDING_PERCENT } from '../../shared/money.ts';
import type { CostsModel } from '../../src/usecases/money/edit-costs.ts';
import type { FormState } from '../../src/usecases/plan/save-edit.ts';
import { PRICES } from '../money/money-text.ts';
import { AmountField } from '../parts/amount-field.tsx';
import { shownIn } from '../parts/form-state.tsx';
import { moneyField } from '../parts/money-text.ts';
import { EditPage } from './edit-page.tsx';
import { YARD } from './sections.ts';

export const COSTS = `${YARD}/costs`;

interface CostsProps {
  model: CostsModel;
  state: FormState;
}

interface FigureProps extends CostsProps {
  name: string;
  label: string;
  hint?: string;
  stored: number | null | undefined;
  isMoney?: boolean;
  counts?: boolean;
}

const Figure: FC<FigureProps> = ({ model, state, stored, isMoney = false, ...field }) => {
  const text = stored === null || stored === undefined ? '' : isMoney ? moneyField(stored, model.currency) : stored;
  return <AmountField {...field} value={shownIn(state, field.name, text)} errors={state.errors} />;
};

const scrapHint = ({ scrap }: CostsModel): string =>
  scrap === null
    ? 'Of a hundred pieces. Empty: as the yard’s own record has it, once enough is on it.'
    : `Of a hundred pieces. Empty: as on record, ${scrap.scrapped} of ${scrap.of}.`;

const Work: FC<CostsProps> = (props) => {
  const { costs, currency } = props.model;
  return (
    <fieldset class="form">
      <legend>Work</legend>
      <Figure
        {...props}
        name="wageHour"
        label={`An hour of one person’s work (${currency})`}
        hint="Your own hours too, if they are to be paid for."
        stored={costs.wageHour}
        isMoney
      />
      <Figure
        {...props}
        name="sessionFixed"
        label={`A session, whatever is made in it (${currency})`}
        hint="Rent, fuel, the way there. Shared by all that is made in it, by minutes of work."
        stored={costs.sessionFixed}
        isMoney
      />
      <Figure
        {...props}
        name="rejectPercent"
        label="Scrap, in percent"
        hint={scrapHint(props.model)}
        stored={costs.rejectPercent}
      />
    </fieldset>
  );
};

const Price: FC<CostsProps> = (props) => (
  <fieldset class="form">
    <legend>Prices</legend>
    <Figure
      {...props}
      name="marginPercent"
      label="Margin, in percent of the price"
      hint="At 30, what costs 70 is asked 100 for."
      stored={props.model.costs.marginPercent}
    />
  </fieldset>
);

const Holding: FC<CostsProps> = (props) => (
  <fieldset class="form">
    <legend>Buying</legend>
    <Figure
      {...props}
      name="holdingPercent"
      label="Stock, in percent of its price a year"
      hint={`What money bound up in stock costs, with the room it takes: of trips that are as few, the one that binds least is taken. Left empty it is ${HOLDING_PERCENT}, a guess: 20 to 40 are usual.`}
      stored={props.model.costs.holdingPercent}
    />
  </fieldset>
);

const MouldRow: FC<CostsProps & { row: number; mould: CostsModel['moulds'][number] }> = ({ row, mould, ...props }) => (
  <fieldset class="mould-cost">
    <legend>{mould.id}</legend>
    <input type="hidden" name={`mould${row}`} value={mould.id} />
    <div>
      <Figure {...props} name={`cost${row}`} label={`Cost (${props.model.currency})`} stored={mould.cost} isMoney />
      <Figure {...props} name={`turns${row}`} label="Turns" stored={mould.costTurns} counts />
    </div>
  </fieldset>
);

const Moulds: FC<CostsProps> = (props) => {
  const { costs, currency, moulds } = props.model;
  return (
    <fieldset class="form">
      <legend>Moulds</legend>
      <p class="hint">Each turn bears its share: what a mould cost, over the turns it is expected to last.</p>
      <div class="field-row">
        <Figure {...props} name="mouldCost" label={`A mould (${currency})`} stored={costs.mouldCost} isMoney />
        <Figure {...props} name="mouldTurns" label="Turns it lasts" stored={costs.mouldTurns} counts />
      </div>
      {moulds.length > 0 && (
        <details
          class="message"
          open={
            moulds.some(({ cost, costTurns }) => cost !== null || costTurns !== null) ||
            Object.keys(props.state.errors).some((name) => /^(cost|turns)\d/.test(name))
          }
        >
          <summary>Moulds that cost more or less, or last longer</summary>
          <p class="hint">Empty: as above.</p>
          <div class="mould-costs">
            {moulds.map((mould, row) => (
              <MouldRow {...props} mould={mould} row={row} />
            ))}
          </div>
        </details>
      )}
    </fieldset>
  );
};

/** What costs are reckoned by. */
export const CostsPage: FC<CostsProps> = (props) => (
  <EditPage
    answer="What work costs"
    note="All of it may be left empty. Prices then say what they leave out. What bags cost stands with Stock and with each delivery."
    state={props.state}
    today={props.model.today}
    action={COSTS}
    back={YARD}
    after={
      <p class="way">
        <a href={PRICES}>Price list</a>
      </p>
    }
  >
    <Work {...props} />
    <Price {...props} />
    <Holding {...props} />
    <Moulds {...props} />
  </EditPage>
);
