import type { FC } from 'hono/jsx';
import type { KitSide } from '../../src/usecases/kits/kit-side.ts';
import { Boxes, short, Texts } from './drawn.tsx';
import { runText } from './kit-geometry.ts';
import { type SideSizes, sideGeometry } from './kit-side-geometry.ts';

const SIZES: SideSizes = { width: 720, height: 230, line: 14, figure: 7.2, gap: 6 };

/** Lengths of a course from left to right: "900, 300". */
const courseText = (panels: KitSide['courses'][number]): string =>
  runText(panels.flatMap(({ text }) => (text === null ? [] : [{ text }])));

/** The same facts from the top down, as they are seen. */
const Courses: FC<{ side: KitSide }> = ({ side: { courses } }) => (
  <table class="unseen">
    <caption>From the side, from the top down</caption>
    <thead>
      <tr>
        <th scope="col">Course</th>
        <th scope="col">Panels from left to right</th>
      </tr>
    </thead>
    <tbody>
      {courses
        .map((panels, index) => (
          <tr>
            <th scope="row">{index + 1}</th>
            <td>{courseText(panels)}</td>
          </tr>
        ))
        .reverse()}
    </tbody>
  </table>
);

/** A kit as one stands before its long side: courses to scale on the ground, pins down through them. */
export const KitSideView: FC<{ side: KitSide; unit: string }> = ({ side, unit }) => {
  const { width, height, groundY, panels, ends, pins, texts } = sideGeometry(side, SIZES);
  return (
    <figure class="kit-side">
      <figcaption>
        <strong>From the side</strong>, {side.heightText} high, pins {side.groundText} into the ground, in {unit}
      </figcaption>
      <svg
        class="kit-from-side"
        viewBox={`0 0 ${short(width)} ${short(height)}`}
        width={short(width)}
        height={short(height)}
        aria-hidden="true"
        focusable="false"
      >
        <Boxes look="side-panel" boxes={panels} />
        <Boxes look="plan-end" boxes={ends} />
        <line class="plan-ground" x1="0" x2={short(width)} y1={short(groundY)} y2={short(groundY)} />
        {pins.map(({ x, top, foot }) => (
          <line class="plan-pin-line" x1={short(x)} x2={short(x)} y1={short(top)} y2={short(foot)} />
        ))}
        <Texts look="plan-text on-panel" texts={texts} />
      </svg>
      <Courses side={side} />
    </figure>
  );
};
