import type { FC } from 'hono/jsx';
import type { YardMould, YardMouldsModel } from '../../src/usecases/yard/show-yard-moulds.ts';
import { Answer, Empty } from '../parts/answer.tsx';
import { ButtonLink } from '../parts/button.tsx';
import { type DoneNotice, Notice } from '../parts/notice.tsx';
import { CASTINGS } from './castings-page.tsx';
import { coatText, makesText, yardMouldsAnswer } from './mould-words.ts';
import { RemoveForm } from './remove.tsx';
import { entryPath, removePath, YARD } from './sections.ts';

export const YARD_MOULDS = `${YARD}/moulds`;

const Row: FC<{ mould: YardMould }> = ({ mould }) => (
  <li class="yard-row">
    <div>
      <h3>
        <a href={entryPath(YARD_MOULDS, mould.id)}>{mould.id}</a>
        {mould.condition === 'retired' && ', scrapped'}
      </h3>
      <p>
        {makesText(mould)} {coatText(mould)}
      </p>
      {mould.note && <p class="quiet">{mould.note}</p>}
    </div>
    <RemoveForm action={removePath(YARD_MOULDS, mould.id)} name={mould.id} />
  </li>
);

const MouldList: FC<{ title: string; moulds: readonly YardMould[] }> = ({ title, moulds }) =>
  moulds.length === 0 ? null : (
    <section>
      <h2>{title}</h2>
      <ul class="yard-rows">
        {moulds.map((mould) => (
          <Row mould={mould} />
        ))}
      </ul>
    </section>
  );

/** What each mould is. How it stands today is on the moulds' own page. */
export const YardMouldsPage: FC<{ model: YardMouldsModel; notice: DoneNotice | null }> = ({ model, notice }) => {
  const inUse = model.moulds.filter(({ condition }) => condition !== 'retired');
  const nothingCast = model.castings.length === 0;
  const kinds = [...new Set(inUse.map(({ kind }) => kind))];
  return (
    <>
      {notice && <Notice notice={notice} today={model.today} back={YARD_MOULDS} />}
      <Answer
        note={
          <>
            What each of them is. Which are clean, full or damaged today is under <a href="/moulds">Moulds</a>.
          </>
        }
      >
        {yardMouldsAnswer(model.moulds)}
      </Answer>
      {model.moulds.length === 0 && (
        <Empty>
          {nothingCast
            ? 'A mould is for a piece, so write down what you cast first. Then several of a kind can be added at once.'
            : 'Add the moulds you have, several of a kind at once.'}
        </Empty>
      )}
      <div class="buttons">
        {nothingCast && (
          <ButtonLink href={entryPath(CASTINGS, 'new')} kind="main">
            Add what you cast
          </ButtonLink>
        )}
        <ButtonLink href={entryPath(YARD_MOULDS, 'new')} kind={nothingCast ? 'plain' : 'main'}>
          Add moulds
        </ButtonLink>
        <ButtonLink href={YARD} kind="quiet">
          Your yard
        </ButtonLink>
      </div>
      {kinds.map((kind) => (
        <MouldList title={kind} moulds={inUse.filter((mould) => mould.kind === kind)} />
      ))}
      <MouldList title="Scrapped" moulds={model.moulds.filter(({ condition }) => condition === 'retired')} />
    </>
  );
};
