import type { FC } from 'hono/jsx';
import { keepingLines } from './keeping-text.ts';
import { Mark } from './mark.tsx';

interface KeepingLinesProps {
  keeping: Parameters<typeof keepingLines>[0];
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
