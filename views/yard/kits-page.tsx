import type { FC } from 'hono/jsx';
import type { YardKit, YardKitsModel } from '../../src/usecases/yard/show-yard-kits.ts';
import { Answer, Empty } from '../parts/answer.tsx';
import { ButtonLink } from '../parts/button.tsx';
import { countText } from '../parts/day-text.ts';
import { type DoneNotice, Notice } from '../parts/notice.tsx';
import { listText, quantityText } from '../parts/quantity-text.ts';
import { CASTINGS } from './castings-page.tsx';
import { RemoveForm } from './remove.tsx';
import { entryPath, removePath, YARD } from './sections.ts';

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

const answerOf = ({ kits }: YardKitsModel): string =>
  kits.length === 0 ? 'There are no kits yet.' : `${countText(kits.length, 'kit')} can be ordered.`;

/** What is sold as one thing, a row each. */
export const KitsPage: FC<{ model: YardKitsModel; notice: DoneNotice | null }> = ({ model, notice }) => (
  <>
    {notice && <Notice notice={notice} today={model.today} back={KITS} />}
    <Answer note="Pieces can be ordered singly too, without a kit.">{answerOf(model)}</Answer>
    {model.kits.length === 0 && (
      <Empty>
        {model.castings.length === 0
          ? 'A kit is put together from pieces, so write down what you cast first.'
          : 'Put one together from its pieces and pins, or have it worked out from a size.'}
      </Empty>
    )}
    <div class="buttons">
      {model.castings.length === 0 && (
        <ButtonLink href={entryPath(CASTINGS, 'new')} kind="main">
          Add what you cast
        </ButtonLink>
      )}
      <ButtonLink href={entryPath(KITS, 'new')} kind={model.castings.length === 0 ? 'plain' : 'main'}>
        Add a kit
      </ButtonLink>
      <ButtonLink href="/kits/by-size">Work one out from a size</ButtonLink>
      <ButtonLink href={YARD} kind="quiet">
        Your yard
      </ButtonLink>
    </div>
    <ul class="yard-rows">
      {model.kits.map((kit) => (
        <li class="yard-row">
          <div>
            <h2>
              <a href={entryPath(KITS, kit.id)}>{kit.name}</a>
            </h2>
            <p>{kitText(kit)}</p>
          </div>
          <RemoveForm action={removePath(KITS, kit.id)} name={kit.name} />
        </li>
      ))}
    </ul>
  </>
);
