import type { FC } from 'hono/jsx';
import { plural } from '../../shared/plural.ts';

/** "12 minutes old", of what is shown while nothing newer can be had. */
export const oldText = (minutes: number): string => {
  if (minutes < 1) return 'less than a minute old';
  const [count, unit] = minutes < 120 ? [minutes, 'minute'] : [Math.floor(minutes / 60), 'hour'];
  return `${count} ${plural(count, unit)} old`;
};

/** Above a page while the server of the database does not answer. */
export const ServerAway: FC<{ minutes: number }> = ({ minutes }) => (
  <p class="warning server-away">
    {`The database server does not answer. What is shown is ${oldText(minutes)}; nothing can be saved until it is there again.`}
  </p>
);
