import type { FC } from 'hono/jsx';
import type { ToMendFacts } from '../../src/usecases/orders/to-mend-facts.ts';
import type { RefusedForm } from '../../src/usecases/plan/save-edit.ts';
import type { TodayModel } from '../../src/usecases/today/today-model.ts';
import { Button } from '../parts/button.tsx';
import { DayField } from '../parts/day-field.tsx';
import { dayText } from '../parts/day-text.ts';
import { Wrong } from '../parts/field.tsx';
import { OtherPartsOfToday, partOfToday } from './part-of-today.tsx';
import { curedText } from './today-text.ts';
import { refusedAt, WorkForm } from './work-form.tsx';

interface PieceProps {
  piece: ToMendFacts;
  clock: Pick<TodayModel, 'now' | 'today'>;
  refused: RefusedForm | null;
}

/** Where mortar was put on that has to cure longer than the piece itself. */
const FitLater: FC<PieceProps> = ({ piece, clock, refused }) => {
  const mine = refusedAt(refused, `mend ${piece.id}`);
  return (
    <details class="not-good no-print" open={mine?.errors.fitFrom !== undefined}>
      <summary aria-label={`Mended, but fit to go out later: ${piece.piece} from ${piece.mould}`}>
        Mended, but fit to go out later
      </summary>
      <WorkForm to="mended" class="form">
        <input type="hidden" name="piece" value={String(piece.id)} />
        <DayField
          name="fitFrom"
          id={`fit-from-${piece.id}`}
          label="Fit to go out from"
          min={clock.today}
          value={mine?.typed.fitFrom ?? ''}
          errors={mine?.errors ?? {}}
        />
        <div class="buttons">
          <Button label={`Mended, fit from that day: ${piece.piece} from ${piece.mould}`}>Mended</Button>
        </div>
      </WorkForm>
    </details>
  );
};

const Piece: FC<PieceProps> = (props) => {
  const { piece, clock, refused } = props;
  const name = `${piece.piece} from ${piece.mould}`;
  const wrong = refusedAt(refused, `mend ${piece.id}`)?.errors.piece;
  return (
    <li>
      <p>
        <strong>{piece.piece}</strong> from {piece.mould}, stripped{' '}
        {dayText(piece.strippedAt.slice(0, 10), clock.today)}
        {piece.reason && `: ${piece.reason}`}. {curedText(piece, clock)}
      </p>
      <Wrong message={wrong} name="piece" />
      <div class="buttons">
        <WorkForm to="mended">
          <input type="hidden" name="piece" value={String(piece.id)} />
          <Button label={`Mended: ${name}`}>Mended</Button>
        </WorkForm>
        <WorkForm to="scrapped">
          <input type="hidden" name="piece" value={String(piece.id)} />
          <Button kind="quiet" label={`Scrap: ${name}`}>
            Scrap
          </Button>
        </WorkForm>
      </div>
      <FitLater {...props} />
    </li>
  );
};

/** Each has forms of its own. */
const TO_MEND_SHOWN = 12;

/** Pieces kept aside to be mended. */
export const ToMend: FC<{ model: TodayModel; refused: RefusedForm | null }> = ({ model, refused }) => {
  const isMine = ({ id }: ToMendFacts) => refused?.form === `mend ${id}`;
  const part = partOfToday(model, model.toMend, { list: 'to-mend', most: TO_MEND_SHOWN, isMine });
  return model.toMend.length === 0 ? null : (
    <section id="to-mend">
      <h2>To mend</h2>
      <p class="quiet">
        Until it is mended a piece counts for no order; where one needs it, another is planned meanwhile.
      </p>
      <ul class="done-list">
        {part.items.map((piece) => (
          <Piece piece={piece} clock={model} refused={refused} />
        ))}
      </ul>
      <OtherPartsOfToday list="to-mend" part={part} what="piece" />
    </section>
  );
};
