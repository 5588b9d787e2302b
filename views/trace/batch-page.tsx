import type { FC } from 'hono/jsx';
import { fullDayWords } from '../../shared/day-words.ts';
import { listText } from '../../shared/list-text.ts';
import type { FormState } from '../../src/usecases/plan/save-edit.ts';
import type { BatchModel } from '../../src/usecases/trace/show-batch.ts';
import { Answer } from '../parts/answer.tsx';
import { Button, ButtonLink } from '../parts/button.tsx';
import { momentText } from '../parts/clock-text.ts';
import { FormErrors } from '../parts/field.tsx';
import { type DoneNotice, Notice } from '../parts/notice.tsx';
import { quantityText } from '../parts/quantity-text.ts';
import { batchPath } from './batch-path.ts';
import { ToldFields } from './told-fields.tsx';
import { bagsText, TRACE } from './trace-text.ts';
import { TracedPieces } from './traced-pieces.tsx';

/** "2 bags of Rapid, full Sat 10 Apr, 9:25" */
const batchAnswer = ({ bags, mix, at, thrownAway, today }: BatchModel): string =>
  `${quantityText(bags, 'bag')} of ${mix}, ${thrownAway ? 'thrown away' : 'full'} ${momentText(at, today)}`;

/** What is known of it, word by word. */
const factsOf = ({ told, bagDates, mixedFrom, moulds, thrownAway, today }: BatchModel) =>
  [
    ['Moulds', `${listText(moulds)}${thrownAway ? ': none was poured' : ''}`],
    ['Mixed from', mixedFrom && momentText(mixedFrom, today)],
    ['Bags', bagsText(bagDates, today)],
    ['Water in all', told.water],
    ['Mortar', told.mortarCelsius],
    ['Air', told.airCelsius],
    ['Mixed by', told.by],
    ['Note', told.note],
  ] as const;

const Facts: FC<{ model: BatchModel }> = ({ model }) => (
  <dl class="facts">
    {factsOf(model).map(
      ([word, text]) =>
        text && (
          <div>
            <dt>{word}</dt>
            <dd>{text}</dd>
          </div>
        ),
    )}
  </dl>
);

/** What stands in the fields until something is typed. */
const valuesOf = ({ told, ownDates }: BatchModel): Record<string, string> => ({
  bagDates: ownDates.map(fullDayWords).join('; '),
  ...{ water: told.water ?? '', mortarCelsius: told.mortarCelsius ?? '', airCelsius: told.airCelsius ?? '' },
  ...{ by: told.by ?? '', note: told.note ?? '' },
});

/** One batch as it really was, and what became of its pieces. */
export const BatchPage: FC<{ model: BatchModel; notice: DoneNotice | null; state: FormState }> = ({
  model,
  notice,
  state: { typed, errors },
}) => (
  <>
    {notice && <Notice notice={notice} today={model.today} back={batchPath(model.key)} />}
    <FormErrors errors={errors} />
    <Answer>{batchAnswer(model)}</Answer>
    <Facts model={model} />
    {model.pieces.length > 0 && (
      <section>
        <h2>Its pieces</h2>
        <TracedPieces pieces={model.pieces} today={model.today} inBatch />
      </section>
    )}
    {!model.thrownAway && (
      <details class="otherwise no-print" open={typed !== null}>
        <summary>What was different</summary>
        <form class="form" method="post" action={batchPath(model.key)}>
          <ToldFields values={typed ?? valuesOf(model)} errors={errors} />
          <Button>Save</Button>
        </form>
      </details>
    )}
    <div class="buttons">
      <ButtonLink href={TRACE}>Where it came from, where it went</ButtonLink>
    </div>
  </>
);
