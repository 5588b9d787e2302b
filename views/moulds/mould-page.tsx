import type { FC } from 'hono/jsx';
import { minuteOf } from '../../shared/time.ts';
import type { MouldModel } from '../../src/usecases/moulds/show-mould.ts';
import type { Blocked } from '../../src/usecases/moulds/what-it-blocks.ts';
import type { RefusedForm } from '../../src/usecases/plan/save-edit.ts';
import { Answer } from '../parts/answer.tsx';
import { ButtonLink } from '../parts/button.tsx';
import { byText } from '../parts/by-text.ts';
import { Caution } from '../parts/caution.tsx';
import { momentText } from '../parts/clock-text.ts';
import { FormErrors } from '../parts/field.tsx';
import { Moves } from '../parts/moves.tsx';
import { type DoneNotice, Notice } from '../parts/notice.tsx';
import { batchPath } from '../trace/batch-path.ts';
import { piecePath } from '../trace/piece-path.ts';
import { TRACE } from '../trace/trace-text.ts';
import { entryText, historySentences } from './history-text.ts';
import { FROM_MOULD, mouldPagePath } from './mould-facts.ts';
import { MouldParts } from './mould-parts.tsx';
import { MouldPanel } from './mould-row.tsx';
import { MouldPatterns, MouldShape } from './mould-shape.tsx';
import { conditionOf, fillOf } from './mould-text.ts';

/** What the address of its page asks by: what it blocks while it is out of use. */
export const BLOCKS = 'blocks';

/** What a mould that is out of use blocks, worked out on asking: it takes a plan. */
const Blocks: FC<{ model: MouldModel; blocked: Blocked | null }> = ({ model: { mould, today }, blocked }) => {
  if (mould.condition !== 'damaged') return null;
  if (blocked === null) return <ButtonLink href={`${mouldPagePath(mould.id)}?${BLOCKS}`}>What it holds up</ButtonLink>;
  return (
    <section>
      <h2>What it holds up</h2>
      {blocked.moved.length === 0 ? (
        <p>No order would be ready on another day, were it mended today.</p>
      ) : (
        <>
          <p>Were it mended today:</p>
          <Moves moved={blocked.moved} today={today} ahead />
        </>
      )}
    </section>
  );
};

const Coming: FC<{ model: MouldModel }> = ({ model: { coming, today } }) => (
  <section>
    <h2>By the plan</h2>
    {coming.length === 0 ? (
      <p>Nothing is planned in it.</p>
    ) : (
      <ul class="sentences">
        {coming.map(({ at, piece, customer }) => (
          <li>
            {momentText(at, today)}: {piece} for {customer ?? 'stock'}
          </li>
        ))}
      </ul>
    )}
  </section>
);

/** What happened, with the way to what it was about: a batch, or a piece. */
const Entry: FC<{ entry: MouldModel['entries'][number]; mould: string }> = ({ entry, mould }) => {
  if ('batch' in entry) return <a href={batchPath(entry.batch)}>{entryText(entry)}</a>;
  if (!('filledAt' in entry)) return <>{entryText(entry)}</>;
  return <a href={piecePath({ minute: minuteOf(entry.filledAt), mould })}>{entryText(entry)}</a>;
};

const Past: FC<{ model: MouldModel }> = ({ model: { mould, history, entries, entriesInAll, today } }) => (
  <section>
    <h2>What it has been through</h2>
    {historySentences({ history, entriesInAll }).map((sentence) => (
      <p>{sentence}</p>
    ))}
    {entries.length > 0 && (
      <ol class="mould-past">
        {entries.map((entry) => (
          <li>
            <span>{momentText(entry.at, today)}</span>{' '}
            <span>
              {byText(entry.by)}
              <Entry entry={entry} mould={mould.id} />
            </span>
          </li>
        ))}
      </ol>
    )}
    {entriesInAll > entries.length && <p class="quiet">And {entriesInAll - entries.length} older ones.</p>}
  </section>
);

interface MouldPageProps {
  model: MouldModel;
  notice: DoneNotice | null;
  refused: RefusedForm | null;
  /** Null where nobody asked. */
  blocked: Blocked | null;
}

/** All about one mould, with what can be said of it first. */
export const MouldPage: FC<MouldPageProps> = ({ model, notice, refused, blocked }) => (
  <>
    {notice && <Notice notice={notice} today={model.today} back={mouldPagePath(model.mould.id)} />}
    {refused && <FormErrors errors={refused.errors} lead="Nothing was changed. What you typed is still here." />}
    <Answer>
      {model.mould.id}: {conditionOf(model.mould).word}
    </Answer>
    <div class="one-mould">
      <MouldPatterns />
      <MouldShape
        fill={fillOf(model.mould)}
        painted={model.mould.id}
        mould={model.mould}
        longestMm={model.mould.lengthMm ?? 0}
      />
      <MouldPanel mould={model.mould} place="one" query={FROM_MOULD} today={model.today} refused={refused} />
    </div>
    <Blocks model={model} blocked={blocked} />
    <div class="mould-columns">
      <Coming model={model} />
      <MouldParts model={model} refused={refused} />
    </div>
    <Past model={model} />
    <div class="buttons">
      <ButtonLink href="/moulds">All moulds</ButtonLink>
      <ButtonLink href={`${TRACE}?${new URLSearchParams({ mould: model.mould.id })}`}>Where its pieces went</ButtonLink>
    </div>
    <Caution kinds={['lifting', 'standing', 'dust', 'wet', 'pins']} />
  </>
);
