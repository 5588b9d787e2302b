import type { FC } from 'hono/jsx';
import { plural } from '../../shared/plural.ts';
import type { KitFacts } from '../../src/usecases/kits/kit-model.ts';
import { KitPlan } from '../charts/kit-plan.tsx';
import { KitSideView } from '../charts/kit-side.tsx';
import { ButtonLink } from '../parts/button.tsx';
import { Caution } from '../parts/caution.tsx';
import { EarthCaution } from '../parts/earth-caution.tsx';
import { liftingText } from '../words/lifting-text.ts';
import { loadsAnswer, loadText } from '../words/loads-text.ts';
import { counted, meetingText, pinsText } from './kit-text.ts';

const Panels: FC<{ facts: KitFacts }> = ({ facts: { panels, panelCount, mass } }) => (
  <section>
    <h2>Panels</h2>
    <table class="kit-panels">
      <thead>
        <tr>
          <th scope="col">Piece</th>
          <th scope="col" class="number">
            How many
          </th>
          <th scope="col" class="number">
            Each
          </th>
          <th scope="col" class="number">
            Together
          </th>
        </tr>
      </thead>
      <tbody>
        {panels.map(({ name, count, each, together }) => (
          <tr>
            <th scope="row">{name}</th>
            <td class="number">{count}</td>
            <td class="number">{each}</td>
            <td class="number">{together}</td>
          </tr>
        ))}
      </tbody>
      <tfoot>
        <tr>
          <th scope="row">The whole, without pins</th>
          <td class="number">{panelCount}</td>
          <td />
          <td class="number">{mass}</td>
        </tr>
      </tfoot>
    </table>
  </section>
);

const Pins: FC<{ facts: KitFacts }> = ({ facts, facts: { pins, sleeves, courses } }) => (
  <section>
    <h2>Pins and sleeves</h2>
    <ul class="sentences">
      <li>
        {counted(pins.count, 'pin').replace(/^./, (first) => first.toUpperCase())} of {pins.length}: {pinsText(pins)}.{' '}
        {pins.above} for the {plural(courses, 'course')}, {pins.ground} into the ground.
      </li>
      {pins.from ? (
        <li>Cut from {pins.from}.</li>
      ) : (
        <li>Nothing in the yard comes in lengths to cut them from, so the kit is without pins.</li>
      )}
      {sleeves.map(({ count, length, from }) => (
        <li>
          {count} sleeves of {length}, cut from {from} when the panels are cast.
        </li>
      ))}
    </ul>
    {pins.tooLong && <p class="error">{pins.tooLong}</p>}
    <p class="quiet">{meetingText(facts)}</p>
  </section>
);

const Moving: FC<{ facts: KitFacts }> = ({ facts: { heaviest, loads } }) => (
  <section>
    <h2>Lifting and carrying</h2>
    <ul class="sentences">
      <li>{liftingText(heaviest)}</li>
      {loads && <li>{loadsAnswer(loads)}</li>}
      {loads?.loads.map((load) => (
        <li>{loadText(load)}</li>
      ))}
    </ul>
    <p class="quiet">
      The filters are those of HSE INDG143: they say when to look closer and are no legal limits. Your local rules come
      first.
    </p>
    <Caution kinds={['lifting', 'pins']} />
  </section>
);

/** All there is to a kit that can be made, below the form. */
export const KitFound: FC<{ facts: KitFacts }> = ({ facts }) => (
  <>
    <KitPlan drawing={facts.drawing} />
    <KitSideView side={facts.side} unit={facts.drawing.unit} />
    <Panels facts={facts} />
    <Pins facts={facts} />
    <Moving facts={facts} />
    <EarthCaution />
  </>
);

/** The kit is one the yard has. */
export const KnownKit: FC<{ kit: { id: string; name: string } }> = ({ kit }) => (
  <section>
    <h2>{kit.name}</h2>
    <p>The yard has this kit: the same panels and the same pins.</p>
    <div class="buttons">
      <ButtonLink href={`/?${new URLSearchParams({ what: `kit:${kit.id}`, number: '1' })}`} kind="main">
        Ask when it could be ready
      </ButtonLink>
    </div>
  </section>
);
