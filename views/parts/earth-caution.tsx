import type { FC } from 'hono/jsx';

/** The same for a customer, in a line on paper and in a message. */
export const EARTH_WORDS =
  'Where it holds earth: no height is said to be safe. Let water out below; a slope, a car or a building above pushes as well, and it is not made to be climbed on. Ask someone licensed where you live before you build; local codes come first.';

/** Of a kit that may hold earth back: what nobody here has worked out. In general words, no source; a page promises nothing. */
export const EarthCaution: FC = () => (
  <aside class="caution" aria-label="Where it holds earth">
    <p class="caution-head">Where it holds earth</p>
    <ul>
      <li>No height is said to be safe: nobody here has worked one out.</li>
      <li>Wet earth pushes much harder than dry. Let water out below, through gravel, and keep drains open.</li>
      <li>A slope, a path, a car or a building above it pushes as well.</li>
      <li>Children climb on it. It is not made to be climbed or leant on.</li>
    </ul>
    <p class="quiet">
      Ask someone who is licensed for it where you live before you build. Local codes come first, and may ask for a
      permit.
    </p>
  </aside>
);
