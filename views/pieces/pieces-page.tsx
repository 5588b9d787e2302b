import type { FC } from 'hono/jsx';
import { listText } from '../../shared/list-text.ts';
import { countText } from '../../shared/plural.ts';
import type { PiecesModel, PiecesOfKind } from '../../src/usecases/pieces/show-pieces.ts';
import type { RefusedForm } from '../../src/usecases/plan/save-edit.ts';
import { Answer, Empty } from '../parts/answer.tsx';
import { Button, ButtonLink } from '../parts/button.tsx';
import { Caution } from '../parts/caution.tsx';
import { fromMomentText, momentText } from '../parts/clock-text.ts';
import { FormErrors, TextField } from '../parts/field.tsx';
import { type DoneNotice, Notice } from '../parts/notice.tsx';
import { WALK } from '../stock/walk-page.tsx';
import { TRACE } from '../trace/trace-text.ts';

import { KEPT, KeptReady } from './kept-ready.tsx';
import { sinceText } from './kept-text.ts';

/** What stands in the yard. */
export const PIECES = '/pieces';

/** "2 fit to go out, for School garden" */
const alikeText = ({ count, fitFrom, customer, isAside }: PiecesOfKind['alike'][number], today: string): string => {
  const fit = fitFrom === null ? 'fit to go out' : `curing, fit to go out ${fromMomentText(fitFrom, today)}`;
  const whose = customer === null ? 'for nobody yet' : `${isAside ? 'set aside for' : 'for'} ${customer}`;
  return `${count} ${fit}, ${whose}`;
};

const mouldsText = (inMoulds: PiecesOfKind['inMoulds'], today: string): string =>
  listText(inMoulds.map(({ mould, outAt }) => `${mould}${outAt === null ? '' : ` (out ${momentText(outAt, today)})`}`));

interface KindProps {
  kind: PiecesOfKind;
  place: number;
  today: string;
  refused: RefusedForm | null;
}

const Kind: FC<KindProps> = ({ kind, place, today, refused }) => {
  const { casting, name, total, alike, inMoulds, wet } = kind;
  const since = sinceText(kind, today);
  return (
    <li class="stock">
      <div>
        <h2>{name}</h2>
        <p>{total === 0 ? 'None in the yard.' : `${total} in the yard.`}</p>
        {alike.map((one) => (
          <p>{alikeText(one, today)}.</p>
        ))}
        {since && <p class="quiet">{since}</p>}
        {wet && (
          <p>
            {wet.count} kept wet until {momentText(wet.until, today)}.
          </p>
        )}
        {inMoulds.length > 0 && (
          <p class="quiet">
            {countText(inMoulds.length, 'more')} in {mouldsText(inMoulds, today)}.
          </p>
        )}
      </div>
      <details class="otherwise" open={refused !== null}>
        <summary aria-label={`Count: ${name}`}>Count</summary>
        <form class="field-row" method="post" action={`${PIECES}/counted`}>
          <input type="hidden" name="casting" value={casting} />
          <input type="hidden" name="was" value={String(total)} />
          <TextField
            name="counted"
            id={`counted-${place}`}
            label="In the yard now"
            hint="Out of their moulds, good ones only."
            type="number"
            min={0}
            width="short"
            value={refused?.typed.counted ?? ''}
            errors={refused?.errors ?? {}}
          />
          <Button label={`Save count: ${name}`}>Save count</Button>
        </form>
      </details>
    </li>
  );
};

const answerText = ({ kinds }: PiecesModel): string => {
  const total = kinds.reduce((sum, kind) => sum + kind.total, 0);
  const free = kinds
    .flatMap(({ alike }) => alike)
    .reduce((sum, one) => sum + (one.customer === null ? one.count : 0), 0);
  if (total === 0) return 'No finished piece stands in the yard.';
  return `${countText(total, 'piece')} in the yard, ${free === 0 ? 'each for an order' : `${free} of them for nobody yet`}.`;
};

interface PiecesPageProps {
  model: PiecesModel;
  notice: DoneNotice | null;
  refused: RefusedForm | null;
}

/** What stands in the yard, whom it is for, and a way to correct it once it was counted. */
export const PiecesPage: FC<PiecesPageProps> = ({ model, notice, refused }) => (
  <>
    {notice && <Notice notice={notice} today={model.today} back={PIECES} />}
    {refused && <FormErrors errors={refused.errors} lead="Nothing was changed. What you typed is still here." />}
    <Answer note="Whom a piece is for is as the plan has it now, unless it was set aside.">{answerText(model)}</Answer>
    {model.kinds.length === 0 && <Empty>Record at Your yard what you cast. Its pieces are then counted here.</Empty>}
    <ul class="stock-list">
      {model.kinds.map((kind, place) => (
        <Kind kind={kind} place={place} today={model.today} refused={refused?.form === kind.casting ? refused : null} />
      ))}
    </ul>
    <p class="quiet">
      Counted more than the book has: they come in as fit to go out. Counted fewer: those for nobody are taken off
      first.
    </p>
    <KeptReady model={model} refused={refused?.form === KEPT ? refused : null} />
    <div class="buttons">
      <ButtonLink href={WALK}>Walk round and count</ButtonLink>
      <ButtonLink href="/moulds">Moulds</ButtonLink>
      <ButtonLink href="/orders">Orders</ButtonLink>
      <ButtonLink href={TRACE}>Where it came from, where it went</ButtonLink>
    </div>
    <Caution kinds={['lifting', 'standing', 'pins']} />
  </>
);
