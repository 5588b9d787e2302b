import type { Child, FC } from 'hono/jsx';
import type { EveningFacts } from '../../src/usecases/today/evening-facts.ts';
import { Amounts } from './amounts.tsx';
import { dryLines, fittingLines, weighLines } from './evening-text.ts';
import { SheetDrawings } from './sheet-drawings.tsx';
import { ACID, hasAcid } from './step-caution.tsx';
import { StickBars } from './stick-bars.tsx';
import { toHaveReady } from './today-text.ts';

const Ticked: FC<{ lines: readonly string[] }> = ({ lines }) => (
  <ul class="ticked">
    {lines.map((line) => (
      <li>
        <span class="tick-box" aria-hidden="true" /> {line}
      </li>
    ))}
  </ul>
);

interface PartProps {
  head: string;
  lines: readonly string[];
  children?: Child;
}

const Part: FC<PartProps> = ({ head, lines, children }) =>
  lines.length === 0 && !children ? null : (
    <section>
      <h3>{head}</h3>
      {lines.length > 0 && <Ticked lines={lines} />}
      {children}
    </section>
  );

const LaidOut: FC<{ evening: EveningFacts }> = ({ evening }) => {
  const have = toHaveReady(evening.steps);
  return (
    <>
      <Part head="Lay out for the pieces" lines={fittingLines(evening)} />
      {have.length > 0 && (
        <Part head="Lay out for all of it" lines={[]}>
          <Amounts amounts={have} />
        </Part>
      )}
    </>
  );
};

interface EveningListsProps {
  evening: EveningFacts;
  /** Drawings, and what is laid out, wait behind a line. */
  folded: boolean;
}

/** What is got ready the evening before: cut, weighed, laid out, and what has to be dry by morning. */
export const EveningLists: FC<EveningListsProps> = ({ evening, folded }) => (
  <div class="evening-lists">
    {evening.sticks.length > 0 && (
      <Part head="Cut, the longest first" lines={[]}>
        <StickBars sticks={evening.sticks} folded={folded} />
      </Part>
    )}
    {evening.meshes.map((mesh) => (
      <Part head={`Cut of ${mesh.name}`} lines={[]}>
        <SheetDrawings mesh={mesh} caution={evening.sticks.length === 0} folded={folded} />
      </Part>
    ))}
    <Part head="Weigh and measure out" lines={weighLines(evening)}>
      {evening.steps.some((step) => step.kind === 'batch' && hasAcid(step)) && <p class="hint">{ACID}</p>}
    </Part>
    <Part head="Dry by then" lines={dryLines(evening)} />
    {!folded && <LaidOut evening={evening} />}
    {folded && toHaveReady(evening.steps).length > 0 && (
      <details class="message">
        <summary>Lay out: what the pieces and the mixes take</summary>
        <LaidOut evening={evening} />
      </details>
    )}
  </div>
);
