import type { FC } from 'hono/jsx';
import type { YardKit, YardKitsModel } from '../../src/usecases/yard/show-yard-kits.ts';
import { ButtonLink } from '../parts/button.tsx';
import { countText } from '../parts/day-text.ts';
import type { DoneNotice } from '../parts/notice.tsx';
import { listText, quantityText } from '../parts/quantity-text.ts';
import { CASTINGS } from './castings-page.tsx';
import { type ListEntry, ListPage } from './list-page.tsx';
import { entryPath, YARD } from './sections.ts';

export const KITS = `${YARD}/kits`;

/** "4 × Panel 900 and 4 × Panel 600; 4 pins of 500 mm from Rod. 25 minutes to pack." */
const kitText = ({ pieces, parts, cuts, packMinutes }: YardKit): string => {
  const lists = [
    listText(pieces.map(({ name, count }) => `${count} × ${name}`)),
    listText(parts.map(({ quantity, unit, name }) => `${quantityText(quantity, unit)} ${name}`)),
    listText(cuts.map(({ name, length, count }) => `${count} of ${length} from ${name}`)),
  ].filter(Boolean);
  const packing = packMinutes === 0 ? 'It is not packed.' : `${countText(packMinutes, 'minute')} to pack.`;
  return `${lists.join('; ')}. ${packing}`;
};

const kitEntry = (kit: YardKit): ListEntry => ({ id: kit.id, name: kit.name, lines: [<p>{kitText(kit)}</p>] });

const answerOf = ({ kits }: YardKitsModel): string =>
  kits.length === 0 ? 'There are no kits yet.' : `${countText(kits.length, 'kit')} can be ordered.`;

/** What is sold as one thing, a row each. */
export const KitsPage: FC<{ model: YardKitsModel; notice: DoneNotice | null }> = ({ model, notice }) => {
  const nothingCast = model.castings.length === 0;
  return (
    <ListPage
      path={KITS}
      notice={notice}
      today={model.today}
      answer={answerOf(model)}
      note="Pieces can be ordered singly too, without a kit."
      empty={
        nothingCast
          ? 'A kit is put together from pieces, so record what you cast first.'
          : 'Put one together from its pieces and pins, or have it worked out from a size.'
      }
      first={nothingCast && { href: entryPath(CASTINGS, 'new'), text: 'Add what you cast' }}
      add="Add a kit"
      after={<ButtonLink href="/kits/by-size">Work one out from a size</ButtonLink>}
      groups={[{ entries: model.kits.map(kitEntry) }]}
    />
  );
};
