import type { FC } from 'hono/jsx';
import type { KeepingFacts } from '../../src/usecases/buying/keeping-facts.ts';
import { keepingLines } from './keeping-text.ts';
import { Mark } from './mark.tsx';

interface KeepingLinesProps {
  keeping: Omit<KeepingFacts, 'undated'>;
  unit: string;
  today: string;
}

/** What is in the yard too long, or is used too late, a line each. */
export const KeepingLines: FC<KeepingLinesProps> = ({ keeping, unit, today }) => (
  <>
    {keepingLines(keeping, unit, today).map((line) => (
      <p class="goes-off">
        <Mark shape="triangle" /> {line}
      </p>
    ))}
  </>
);
