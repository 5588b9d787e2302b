import type { FC } from 'hono/jsx';
import type { NextMoulds } from '../../src/usecases/next-moulds-to-build.ts';
import type { showMoulds } from '../../src/usecases/show-moulds.ts';
import { Answer, Empty } from '../parts/answer.tsx';
import { Button } from '../parts/button.tsx';
import { Caution } from '../parts/caution.tsx';
import { FormErrors } from '../parts/field.tsx';
import { type DoneNotice, Notice } from '../parts/notice.tsx';
import { type MouldFacts, mouldPath } from './mould-facts.ts';
import { MouldRow, type RefusedMark } from './mould-row.tsx';
import { mouldsAnswer } from './mould-text.ts';
import { NextMould } from './next-mould.tsx';

export type MouldsModel = Awaited<ReturnType<typeof showMoulds>>;

interface MouldsPageProps {
  model: MouldsModel;
  notice: DoneNotice | null;
  refused: RefusedMark | null;
  /** Which mould to build next; null until it is asked for. */
  next: NextMoulds | null;
}

const Scrapped: FC<{ scrapped: readonly MouldFacts[] }> = ({ scrapped }) =>
  scrapped.length === 0 ? null : (
    <section>
      <h2>Scrapped</h2>
      <ul class="sentences">
        {scrapped.map(({ id, damageNote }) => (
          <li class="scrapped">
            <span>
              {id}
              {damageNote && `: ${damageNote}`}
            </span>
            <form method="post" action={mouldPath(id, 'mended')} hx-post={mouldPath(id, 'mended')} hx-target="#page">
              <Button label={`Mended after all: ${id}`}>Mended after all</Button>
            </form>
          </li>
        ))}
      </ul>
    </section>
  );

export const MouldsPage: FC<MouldsPageProps> = ({ model: { kinds, scrapped, today }, notice, refused, next }) => (
  <>
    {notice && <Notice notice={notice} today={today} back="/moulds" />}
    {refused && <FormErrors errors={refused.errors} lead="Nothing was changed. What you typed is still here." />}
    <Answer>{mouldsAnswer(kinds.flatMap(({ moulds }) => moulds))}</Answer>
    {kinds.length === 0 && (
      <Empty>Once the yard has moulds, each is here with what is in it and what it needs next.</Empty>
    )}
    {kinds.map(({ kind, moulds }, kindPlace) => (
      <section class="mould-kind">
        <h2>{kind}</h2>
        <ul>
          {moulds.map((mould, place) => (
            <MouldRow mould={mould} place={`${kindPlace}-${place}`} today={today} refused={refused} />
          ))}
        </ul>
      </section>
    ))}
    <Scrapped scrapped={scrapped} />
    {kinds.length > 0 && <NextMould next={next} />}
    {kinds.length > 0 && (
      <p class="quiet">
        The sealing coat goes on now and then, and is counted here. Release oil goes on before every pour, and is not.
      </p>
    )}
    <p>
      <a href="/yard/moulds">Add moulds, or change what they make</a>
    </p>
    <Caution kinds={['lifting', 'wet', 'pins']} />
  </>
);
