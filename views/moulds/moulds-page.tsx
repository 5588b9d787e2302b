import type { FC } from 'hono/jsx';
import type { WhichMoulds } from '../../src/usecases/moulds/find-moulds.ts';
import type { NextMoulds } from '../../src/usecases/moulds/next-moulds-to-build.ts';
import type { MouldsModel } from '../../src/usecases/moulds/show-moulds.ts';
import type { RefusedForm } from '../../src/usecases/plan/save-edit.ts';
import { Answer, Empty } from '../parts/answer.tsx';
import { Button } from '../parts/button.tsx';
import { Caution } from '../parts/caution.tsx';
import { FormErrors } from '../parts/field.tsx';
import { AnswerPlace, choicesOf, FindForm, FoundAnswer, isSearching } from '../parts/find-form.tsx';
import { LongList } from '../parts/long-list.tsx';
import { type DoneNotice, Notice } from '../parts/notice.tsx';
import { OtherParts } from '../parts/other-parts.tsx';
import { LABELS } from './labels-page.tsx';
import { type MouldFacts, mouldPath } from './mould-facts.ts';
import { MouldTile } from './mould-row.tsx';
import { MouldPatterns } from './mould-shape.tsx';
import { mouldsAnswer } from './mould-text.ts';
import { type MouldsOfKind, mouldsInParts, mouldsQuery } from './moulds-in-parts.ts';
import { NextMould } from './next-mould.tsx';

interface MouldsPageProps {
  model: MouldsModel;
  /** Which part of them, where there are more than a page takes. */
  from: number;
  notice: DoneNotice | null;
  refused: RefusedForm | null;
  /** Which mould to build next; null until it is asked for. */
  next: NextMoulds | null;
}

const Scrapped: FC<{ scrapped: readonly MouldFacts[]; query: string }> = ({ scrapped, query }) =>
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
            <form
              method="post"
              action={mouldPath(id, 'mended', query)}
              data-hx-post={mouldPath(id, 'mended', query)}
              data-hx-target="#page"
            >
              <Button label={`Mended after all: ${id}`}>Mended after all</Button>
            </form>
          </li>
        ))}
      </ul>
    </section>
  );

const WHICH_WORDS: Readonly<Record<WhichMoulds, { text: string; only: string }>> = {
  all: { text: 'All', only: '' },
  clean: { text: 'Clean', only: 'that are clean' },
  'to be cleaned': { text: 'To be cleaned', only: 'that are to be cleaned' },
  full: { text: 'Full', only: 'that are full' },
  damaged: { text: 'Damaged', only: 'that are damaged' },
  scrapped: { text: 'Scrapped', only: 'that are scrapped' },
};

const MouldsAnswer: FC<{ model: MouldsModel; beside?: boolean }> = ({ model, beside = false }) => (
  <AnswerPlace beside={beside}>
    {isSearching(model.search) ? (
      <FoundAnswer
        search={model.search}
        count={model.found}
        all={model.all.length}
        what="mould"
        path="/moulds"
        which={WHICH_WORDS[model.search.which].only}
      />
    ) : (
      <Answer>{mouldsAnswer(model.kinds.flatMap(({ moulds }) => moulds))}</Answer>
    )}
  </AnswerPlace>
);

/** Each has forms of its own. */
const MOULDS_AT_ONCE = 5;

/** Of the longest mould of the yard, in mm; 0 where no length is known. */
const longestOf = (moulds: readonly MouldFacts[]): number =>
  Math.max(0, ...moulds.map(({ lengthMm }) => lengthMm ?? 0));

const idsIn = (part: readonly MouldsOfKind[]): string[] => part.flatMap(({ moulds }) => moulds.map(({ id }) => id));

interface OtherLengthsProps {
  parts: readonly MouldsOfKind[][];
  at: number;
  search: MouldsModel['search'];
}

/** The way to the moulds of other lengths, where there are more than a page takes: the next ones, or any of them. */
const OtherLengths: FC<OtherLengthsProps> = ({ parts, at, search }) => {
  const href = (place: number): string => `/moulds${mouldsQuery(search, place)}`;
  const all = parts.flatMap(idsIn);
  const items = idsIn(parts[at] ?? []);
  const [before, after] = [at > 0 ? at - 1 : null, at + 1 < parts.length ? at + 1 : null];
  const part = { items, from: all.indexOf(items[0] ?? ''), all: all.length, before, after };
  return parts.length < 2 ? null : (
    <>
      <OtherParts part={part} what="mould" href={href} />
      <details class="message no-print">
        <summary>By length</summary>
        <ul class="other-lengths">
          {parts.map((one, place) => (
            <li>
              <a href={href(place)} class="button plain" aria-current={place === at ? 'page' : undefined}>
                {idsIn(one)[0]} to {idsIn(one).at(-1)}
              </a>
            </li>
          ))}
        </ul>
      </details>
    </>
  );
};

const MouldsFound: FC<Pick<MouldsPageProps, 'model' | 'from' | 'refused'>> = ({ model, from, refused }) => {
  const parts = mouldsInParts(model.kinds);
  const refusedAt = parts.findIndex((part) => part.some(({ moulds }) => moulds.some(({ id }) => id === refused?.form)));
  const at = refusedAt >= 0 ? refusedAt : from < parts.length ? from : 0;
  const query = mouldsQuery(model.search, at);
  const longestMm = longestOf(model.all);
  return (
    <>
      {model.kinds.length > 0 && <MouldPatterns />}
      <OtherLengths parts={parts} at={at} search={model.search} />
      {parts[at]?.map(({ kind, moulds }, kindPlace) => (
        <section class="mould-kind">
          <h2>{kind}</h2>
          <ul class="mould-line">
            <LongList
              items={moulds}
              atOnce={MOULDS_AT_ONCE}
              draw={(mould, place) => (
                <MouldTile
                  {...{ mould, kind, query, refused, longestMm }}
                  place={`${kindPlace}-${place}`}
                  today={model.today}
                  open={isSearching(model.search) && model.found === 1}
                />
              )}
            />
          </ul>
        </section>
      ))}
      {model.all.length > 0 && model.found === 0 && <Empty>No mould is like that.</Empty>}
      <Scrapped scrapped={model.scrapped} query={query} />
    </>
  );
};

/** What changes while something is looked for. */
export const MouldsPart: FC<Pick<MouldsPageProps, 'model' | 'from'>> = ({ model, from }) => (
  <>
    <MouldsAnswer model={model} beside />
    <MouldsFound model={model} from={from} refused={null} />
  </>
);

export const MouldsPage: FC<MouldsPageProps> = ({ model, from, notice, refused, next }) => (
  <>
    {notice && <Notice notice={notice} today={model.today} back={`/moulds${mouldsQuery(model.search, from)}`} />}
    {refused && <FormErrors errors={refused.errors} lead="Nothing was changed. What you typed is still here." />}
    <MouldsAnswer model={model} />
    {model.all.length === 0 ? (
      <Empty>
        Record the moulds at <a href="/yard">Your yard</a>. Each is then here with what is in it and what it needs next.
      </Empty>
    ) : (
      <FindForm
        path="/moulds"
        label="Find a mould"
        hint="What is painted on it, what it makes, or for whom."
        search={model.search}
        choices={choicesOf(WHICH_WORDS)}
      />
    )}
    <div id="found" class="moulds-found">
      <MouldsFound model={model} from={from} refused={refused} />
    </div>
    {model.all.length > 0 && <NextMould next={next} longestMm={longestOf(model.all)} />}
    {model.all.length > 0 && (
      <p>
        <a href="/pieces">Pieces in the yard</a>, out of their moulds. <a href={LABELS}>Labels to print</a>, with a
        square that opens the page of a mould.
      </p>
    )}
    {model.all.length > 0 && (
      <p class="quiet">
        The bar below a mould: turns left to its sealing coat, which goes on now and then. Release oil goes on before
        every pour, and is not counted.
      </p>
    )}
    <Caution kinds={['lifting', 'standing', 'dust', 'wet', 'pins']} />
  </>
);
