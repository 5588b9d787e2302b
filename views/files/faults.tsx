import type { FC } from 'hono/jsx';
import { countText } from '../../shared/plural.ts';
import type { Fault } from './files-facts.ts';

/** More than these nobody mends in one go. */
const FAULTS_SHOWN = 50;

const faultSentence = ({ path, message }: Fault): string =>
  path === 'file' || path === 'same' ? message : `${path}: ${message}`;

/** Everything wrong with a file that was looked at, up to so many; the rest is counted. */
export const Faults: FC<{ faults: readonly Fault[] }> = ({ faults }) => {
  if (faults.length === 0) return null;
  const more = faults.length - FAULTS_SHOWN;
  return (
    <div class="warning form-errors" role="alert" tabindex={-1}>
      <p class="warning-lead">Nothing was loaded, and nothing was changed.</p>
      {!['same', 'file'].includes(faults[0]?.path ?? '') && <p>Mend this in the file, and choose it again.</p>}
      <ul class="file-faults">
        {faults.slice(0, FAULTS_SHOWN).map((fault) => (
          <li>{faultSentence(fault)}</li>
        ))}
      </ul>
      {more > 0 && <p>And {countText(more, 'more fault')}.</p>}
    </div>
  );
};
