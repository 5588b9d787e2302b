import type { FC } from 'hono/jsx';
import type { RefusedForm } from '../../src/usecases/plan/save-edit.ts';
import type {
  NotArrivedFacts,
  ToBeMendedFacts,
  ToCountFacts,
  TodayModel,
} from '../../src/usecases/today/today-model.ts';
import { Button } from '../parts/button.tsx';
import { dayText } from '../parts/day-text.ts';
import { TextField, Wrong } from '../parts/field.tsx';
import { typedOr } from '../parts/form-state.tsx';
import { amountText, quantityText } from '../parts/quantity-text.ts';
import { refusedAt, WorkForm } from './work-form.tsx';

interface ToSettleProps {
  model: TodayModel;
  refused: RefusedForm | null;
}

/** "Fast-setting mortar: 2 bags more were taken than the stock book had." */
const toCountText = ({ name, unit, shortBy }: Pick<ToCountFacts, 'name' | 'unit' | 'shortBy'>): string =>
  `${name}: ${quantityText(Number(shortBy.toFixed(2)), unit)} more taken than the stock book had.`;

/** "900 no. 2 was to be mended by Sat 10 Apr, and the plan counts on it. Is it mended?" */
const toBeMendedText = ({ mould, by }: Pick<ToBeMendedFacts, 'mould' | 'by'>, today: string): string =>
  `${mould} was to be mended by ${dayText(by, today)}, and the plan counts on it. Is it mended?`;

/** Moulds whose day to be mended has come: one tap, or another day on the page of the moulds. */
export const ToBeMended: FC<ToSettleProps> = ({ model, refused }) =>
  model.toBeMended.length === 0 ? null : (
    <section>
      <h2>Mended?</h2>
      <ul class="done-list">
        {model.toBeMended.map(({ mould, by, note }) => (
          <li>
            <p>
              {toBeMendedText({ mould, by }, model.today)}
              {note && ` ${note}`}
            </p>
            <Wrong message={refusedAt(refused, `mended ${mould}`)?.errors.mark} name="mark" />
            <WorkForm to="mould-mended">
              <input type="hidden" name="mould" value={mould} />
              <Button label={`Mended: ${mould}`}>Mended</Button>
            </WorkForm>
            <a class="button quiet" href={`/moulds?find=${encodeURIComponent(mould)}`} aria-label={`Not yet: ${mould}`}>
              Not yet
            </a>
          </li>
        ))}
      </ul>
    </section>
  );

/** "Fast-setting mortar: 6 bags expected Wed 7 Apr, and the plan counts on it by 17:00 today. Has it come?" */
const notArrivedText = ({ name, quantity, unit, by, countedBy }: NotArrivedFacts, today: string): string => {
  const counted = `the plan counts on it ${countedBy === null ? 'from tomorrow on' : `by ${countedBy} today`}`;
  return `${name}: ${amountText(quantity, unit)} expected ${dayText(by, today)}, and ${counted}. Has it come?`;
};

/** Goods whose day has gone by: one tap, or another day on the page of what is bought. */
export const NotArrived: FC<ToSettleProps> = ({ model, refused }) =>
  model.notArrived.length === 0 ? null : (
    <section>
      <h2>Arrived?</h2>
      <ul class="done-list">
        {model.notArrived.map((one) => (
          <li>
            <p>{notArrivedText(one, model.today)}</p>
            <Wrong message={refusedAt(refused, `arrived ${one.goods}`)?.errors.goods} name="goods" />
            <WorkForm to="arrived">
              <input type="hidden" name="goods" value={String(one.goods)} />
              <Button label={`Arrived: ${one.name}`}>Arrived</Button>
            </WorkForm>
            <a class="button quiet" href="/buying" aria-label={`Not yet: ${one.name}`}>
              Not yet
            </a>
          </li>
        ))}
      </ul>
    </section>
  );

/** Materials that the stock book is wrong about: more was taken than it had. */
export const ToCount: FC<ToSettleProps> = ({ model, refused }) =>
  model.toCount.length === 0 ? null : (
    <section>
      <h2>To be counted</h2>
      <ul class="done-list">
        {model.toCount.map((one, place) => {
          const mine = refusedAt(refused, `count ${one.material}`);
          return (
            <li>
              <p>{toCountText(one)}</p>
              <WorkForm to="counted" class="field-row">
                <input type="hidden" name="material" value={one.material} />
                <input type="hidden" name="bookWas" value={one.book} />
                <TextField
                  name="counted"
                  id={`counted-${place}`}
                  label={one.offcuts ? `Whole ones of ${one.name}` : `${one.name} in the yard`}
                  width="short"
                  value={mine?.typed.counted ?? ''}
                  errors={mine?.errors ?? {}}
                />
                {one.offcuts && <input type="hidden" name="offcutsWas" value={one.offcuts.field} />}
                {one.offcuts && (
                  <TextField
                    name="offcuts"
                    id={`offcuts-${place}`}
                    label="Offcuts now"
                    hint={`${one.offcuts.called === 'Rests' ? 'By size' : 'By length'}: ${one.offcuts.example}. Empty: none.`}
                    value={typedOr(mine?.typed.offcuts, mine?.typed.offcutsWas, one.offcuts.field)}
                    errors={mine?.errors ?? {}}
                  />
                )}
                <Button label={`Save count: ${one.name}`}>Save count</Button>
              </WorkForm>
            </li>
          );
        })}
      </ul>
    </section>
  );
