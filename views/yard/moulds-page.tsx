import type { Child, FC } from 'hono/jsx';
import type { YardMould, YardMouldsModel } from '../../src/usecases/yard/show-yard-moulds.ts';
import { MouldShape } from '../moulds/mould-shape.tsx';
import type { DoneNotice } from '../parts/notice.tsx';
import { CASTINGS } from './castings-page.tsx';
import type { EntryFact } from './entry-facts.tsx';
import { type ListEntry, type ListGroup, ListPage } from './list-page.tsx';
import { coatText, makesText, yardMouldsAnswer } from './mould-words.ts';
import { longestOf } from './piece-drawing.tsx';
import { entryPath, YARD } from './sections.ts';

export const YARD_MOULDS = `${YARD}/moulds`;

/** What a mould is for, and what it needs. */
export const yardMouldFacts = (mould: YardMould): EntryFact[] => [
  { word: 'Makes', text: makesText(mould) },
  { word: 'Sealing coat', text: coatText(mould) },
  ...(mould.note ? [{ word: 'Note', text: mould.note }] : []),
];

/** The longest of the moulds, in mm; 0 where nobody said how long they are. */
export const longestMould = (moulds: readonly YardMould[]): number =>
  longestOf(moulds.map(({ lengthMm }) => (lengthMm === null ? null : { lengthMm })));

const mouldEntry = (mould: YardMould): ListEntry => ({
  id: mould.id,
  name: mould.id,
  note: mould.condition === 'retired' && ', scrapped',
  lines: [
    <p>
      {makesText(mould)}. Sealing coat: {coatText(mould)}.
    </p>,
    mould.note && <p class="quiet">{mould.note}</p>,
  ],
});

/** A mould of a kind, as long as it is beside the longest one; nothing where nobody said how long its piece is. */
const drawnKind = (kind: string, moulds: readonly YardMould[]): Child => {
  const mould = moulds.find((one) => one.kind === kind && one.lengthMm !== null);
  const plain = { turnsToSealing: null, turnsBetweenCoats: null };
  return (
    mould && (
      <MouldShape
        fill="empty"
        painted={kind}
        mould={{ lengthMm: mould.lengthMm, ...plain }}
        longestMm={longestMould(moulds)}
      />
    )
  );
};

/** By what is painted on them; those that are scrapped last. */
const groupsOf = (moulds: readonly YardMould[]): ListGroup[] => {
  const inUse = moulds.filter(({ condition }) => condition !== 'retired');
  const scrapped = moulds.filter(({ condition }) => condition === 'retired');
  return [
    ...[...new Set(inUse.map(({ kind }) => kind))].map((kind) => ({
      title: kind,
      drawing: drawnKind(kind, inUse),
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
      groupsBeside
    />
  );
};
