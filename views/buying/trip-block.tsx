import type { FC } from 'hono/jsx';
import { fullDayWords } from '../../shared/day-words.ts';
import type { BuyingModel, BuyLineFacts, TripFacts } from '../../src/usecases/buying/buying-facts.ts';
import type { RefusedForm } from '../../src/usecases/plan/save-edit.ts';
import { Button } from '../parts/button.tsx';
import { CopyText } from '../parts/copy-message.tsx';
import { Wrong } from '../parts/field.tsx';
import { moneyField } from '../parts/money-text.ts';
import { BuyLine } from './buy-line.tsx';
import { tripListText, tripNote, tripWhenText } from './trip-text.ts';

interface TripBlockProps {
  trip: TripFacts;
  model: BuyingModel;
  refused: RefusedForm | null;
}

const only = (refused: RefusedForm | null, ...forms: string[]): RefusedForm | null =>
  refused && forms.includes(refused.form) ? refused : null;

const LineFields: FC<{ line: BuyLineFacts; at: number; currency: string }> = ({ line, at, currency }) => (
  <>
    <input type="hidden" name={`material${at}`} value={line.material} />
    <input type="hidden" name={`quantity${at}`} value={line.field} />
    <input type="hidden" name={`quantity${at}Was`} value={String(line.was)} />
    <input type="hidden" name={`on${at}`} value={fullDayWords(line.on)} />
    <input type="hidden" name={`price${at}`} value={line.price === null ? '' : moneyField(line.price, currency)} />
  </>
);

/** One tap for all of it, just as it stands there. */
const AllBought: FC<TripBlockProps> = ({ trip, model, refused }) => (
  <form method="post" action="/buying/trip-bought" data-hx-post="/buying/trip-bought" data-hx-target="#page">
    <input type="hidden" name="trip" value={trip.key} />
    <input type="hidden" name="name" value={trip.name} />
    {trip.lines.map((line, at) => (
      <LineFields line={line} at={at} currency={model.currency} />
    ))}
    <Button label={`All bought: ${trip.name}, ${tripWhenText(trip, model.today)}`}>All bought</Button>
    <Wrong message={refused?.errors.trip} name="trip" />
  </form>
);

/** One trip or order: where, by when, what it comes to, its lines, and its list to take along. */
export const TripBlock: FC<TripBlockProps> = ({ trip, model, refused }) => (
  <div class="supplier trip">
    <div class="trip-head">
      <h3>
        {trip.name} <span class="quiet">{tripWhenText(trip, model.today)}</span>
      </h3>
      {trip.lines.length > 1 && <AllBought trip={trip} model={model} refused={only(refused, trip.key)} />}
    </div>
    {tripNote(trip, model.currency).map((note) => (
      <p class="quiet">{note}</p>
    ))}
    <ul class="buys">
      {trip.lines.map((line) => (
        <BuyLine
          line={line}
          today={model.today}
          currency={model.currency}
          refused={only(refused, line.key, `none-${line.key}`)}
        />
      ))}
    </ul>
    <CopyText
      id={`list-of-${trip.key}`}
      summary="List to copy"
      text={tripListText(trip, model.today)}
      button="Copy list"
    />
  </div>
);
