import type { FC } from 'hono/jsx';
import { LIFTING_FILTERS } from '../words/lifting-text.ts';

/** What work can hurt. Common practice, no source; the data sheet of each product and local rules come first. */
const CAUTIONS = {
  dust: 'Silica dust, of cement and sand: wear a P3 or P100 mask when tipping bags, mixing dry, cutting or cleaning moulds; cut wet, do not sweep dry.',
  wet: 'Wet mortar burns, and at first without pain: long gloves, sealed goggles, no water in boots or under a knee. Rinse skin at once; eyes 15 to 20 minutes, then a doctor.',
  lifting: LIFTING_FILTERS,
  standing:
    'Panels stacked on edge topple: lean them one way, pad and strap them, and let nobody stand where they would fall.',
  pins: 'Cap wire and pin ends.',
  acid: 'Citric acid powder irritates the eyes.',
} as const;
export type CautionKind = keyof typeof CAUTIONS;

/** A short card where work is shown. */
export const Caution: FC<{ kinds: readonly CautionKind[] }> = ({ kinds }) => (
  <aside class="caution" aria-label="Take care">
    <p class="caution-head">Take care</p>
    <ul>
      {kinds.map((kind) => (
        <li>{CAUTIONS[kind]}</li>
      ))}
    </ul>
    <p class="quiet">This is common practice. The data sheet of each product and your local rules come first.</p>
  </aside>
);
