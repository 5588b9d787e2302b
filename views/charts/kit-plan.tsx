import type { FC } from 'hono/jsx';
import type { KitDrawing } from '../../src/usecases/kits/kit-drawing.ts';
import { Boxes, short, Texts } from './drawn.tsx';
import { type DrawingSizes, type KitGeometry, kitGeometry, runText } from './kit-geometry.ts';

const SIZES: DrawingSizes = {
  width: 340,
  height: 340,
  line: 14,
  figure: 7.2,
  gap: 4,
  pin: { share: 0.25, least: 1.2, most: 3 },
};

const Drawn: FC<{ geometry: KitGeometry; label: string }> = ({
  geometry: { width, height, panels, texts, pins, pinRadius },
  label,
}) => (
  <svg
    class="kit-plan"
    viewBox={`0 0 ${short(width)} ${short(height)}`}
    width={short(width)}
    height={short(height)}
    role="img"
    aria-label={label}
  >
    <Boxes look="plan-panel" boxes={panels} />
    {pins.map(({ x, y }) => (
      <circle class="plan-pin" cx={short(x)} cy={short(y)} r={short(pinRadius)} />
    ))}
    <Texts look="plan-text" texts={texts} />
  </svg>
);

/** The same facts in words, side by side: for who can't see the drawing, or wants to read it out in the yard. */
const Sides: FC<{ course: KitDrawing['courses'][number] }> = ({ course }) => (
  <table class="unseen">
    <caption>{course.title}, side by side</caption>
    <thead>
      <tr>
        <th scope="col">Side</th>
        <th scope="col">Panels</th>
      </tr>
    </thead>
    <tbody>
      {course.sides.map(({ name, panels }) => (
        <tr>
          <th scope="row">{name}</th>
          <td>{runText(panels)}</td>
        </tr>
      ))}
    </tbody>
  </table>
);

/** A kit from above, course by course, to scale. Courses that are alike are drawn once. */
export const KitPlan: FC<{ drawing: KitDrawing }> = ({ drawing }) => (
  <div class="kit-plans">
    {drawing.courses.map((course) => (
      <figure>
        <figcaption>
          <strong>{course.title}</strong> from above, lengths in {drawing.unit}
        </figcaption>
        <Drawn
          geometry={kitGeometry({ ...drawing, sides: course.sides }, SIZES)}
          label={`${course.title} from above: ${[drawing.lengthText, drawing.widthText].filter(Boolean).join(' by ')} ${drawing.unit} outside`}
        />
        <Sides course={course} />
      </figure>
    ))}
  </div>
);
