import type { FC } from 'hono/jsx';
import type { YardMould, YardMouldsModel } from '../../src/usecases/yard/show-yard-moulds.ts';
import type { DoneNotice } from '../parts/notice.tsx';
import { CASTINGS } from './castings-page.tsx';
import { type ListEntry, type ListGroup, ListPage } from './list-page.tsx';
import { coatText, makesText, yardMouldsAnswer } from './mould-words.ts';
import { entryPath, YARD } from './sections.ts';

export const YARD_MOULDS = `${YARD}/moulds`;

const mouldEntry = (mould: YardMould): ListEntry => ({
  id: mould.id,
  name: mould.id,
  note: mould.condition === 'retired' && ', scrapped',
  lines: [
    <p>
      {makesText(mould)} {coatText(mould)}
    </p>,
    mould.note && <p class="quiet">{mould.note}</p>,
  ],
});

/** By what is painted on them; those that are scrapped last. */
const groupsOf = (moulds: readonly YardMould[]): ListGroup[] => {
  const inUse = moulds.filter(({ condition }) => condition !== 'retired');
  const scrapped = moulds.filter(({ condition }) => condition === 'retired');
  return [
    ...[...new Set(inUse.map(({ kind }) => kind))].map((kind) => ({
      title: kind,
      entries: inUse.filter((mould) => mould.kind === kind).map(mouldEntry),
    })),
    { title: 'Scrapped', entries: scrapped.map(mouldEntry) },
  ];
};

/** What each mould is. How it stands today is on the moulds' own page. */
export const YardMouldsPage: FC<{ model: YardMouldsModel; notice: DoneNotice | null }> = ({ model, notice }) => {
  const nothingCast = model.castings.length === 0;
  return (
    <ListPage
      path={YARD_MOULDS}
      notice={notice}
      today={model.today}
      answer={yardMouldsAnswer(model.moulds)}
      note={
        <>
          What each of them is. Which are clean, full or damaged today is under <a href="/moulds">Moulds</a>.
        </>
      }
      empty={
        nothingCast
          ? 'A mould is for a piece, so record what you cast first. Then several of a kind can be added at once.'
          : 'Add the moulds you have, several of a kind at once.'
      }
      first={nothingCast && { href: entryPath(CASTINGS, 'new'), text: 'Add what you cast' }}
      add="Add moulds"
      groups={groupsOf(model.moulds)}
    />
  );
};
