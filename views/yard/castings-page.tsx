import type { FC } from 'hono/jsx';
import { countText, plural } from '../../shared/plural.ts';
import type { YardCasting, YardCastingsModel } from '../../src/usecases/yard/show-yard-castings.ts';
import type { DoneNotice } from '../parts/notice.tsx';
import { contentsText } from './contents-text.ts';
import type { EntryFact } from './entry-facts.tsx';
import { type ListEntry, ListPage } from './list-page.tsx';
import { longestOf, PieceDrawing } from './piece-drawing.tsx';
import { YARD } from './sections.ts';

export const CASTINGS = `${YARD}/panels`;

/** What is looked for first. */
export const castingFacts = ({ mass, size, mixName, mouldCount, guesses }: YardCasting): EntryFact[] => [
  { word: 'Size', text: size ? size.join(' by ') : 'not given' },
  { word: 'Weight', text: `${mass}${guesses.includes('kg') ? ' (to check)' : ''}` },
  { word: 'Cast from', text: mixName },
  { word: 'Moulds', text: mouldCount === 0 ? 'none yet' : mouldCount },
];

/** The work on one, and what goes into it beside the mix. */
const restFacts = ({ prepMinutes, fillMinutes, texts, contents }: YardCasting): EntryFact[] => {
  const people = Number(texts.stripCrew ?? '1');
  const within = contentsText(contents);
  return [
    { word: 'Set up', text: countText(prepMinutes, 'minute') },
    { word: 'Fill', text: countText(fillMinutes, 'minute') },
    {
      word: 'Strip',
      text: `${countText(Number(texts.stripMinutes), 'minute')}${people > 1 ? `, ${people} people` : ''}`,
    },
    { word: 'Clean', text: countText(Number(texts.cleanMinutes), 'minute') },
    ...(within === '' ? [] : [{ word: 'Beside the mix', text: within }]),
  ];
};

const castingEntry = (casting: YardCasting, longestMm: number): ListEntry => ({
  ...{ id: casting.id, name: casting.name },
  drawing: casting.sizeMm && <PieceDrawing size={casting.sizeMm} longestMm={longestMm} />,
  facts: castingFacts(casting),
  more: { title: 'Work on one, and what goes in', facts: restFacts(casting) },
});

const answerOf = ({ castings }: YardCastingsModel): string =>
  castings.length === 0
    ? 'Nothing is cast yet.'
    : `${countText(castings.length, 'kind')} of piece ${plural(castings.length, 'is', 'are')} cast.`;

/** What is cast, a row each. */
export const CastingsPage: FC<{ model: YardCastingsModel; notice: DoneNotice | null }> = ({ model, notice }) => {
  const noMix = model.mixes.length === 0;
  const longestMm = longestOf(model.castings.map(({ sizeMm }) => sizeMm));
  return (
    <ListPage
      path={CASTINGS}
      notice={notice}
      today={model.today}
      answer={answerOf(model)}
      note="Panels of each length, copings, corner pieces: whatever has a mould of its own. Kits by size are worked out from those whose size is given."
      empty={
        noMix
          ? 'A piece is cast from a mix, so record the mix first. Then several lengths can be added at once.'
          : 'Several lengths can be added at once: 600, 900, 1200.'
      }
      first={noMix && { href: '/yard/mixes/new', text: 'Add a mix' }}
      add="Add what you cast"
      drawn="From the front and from the end, to scale."
      groups={[{ entries: model.castings.map((one) => castingEntry(one, longestMm)) }]}
    />
  );
};
