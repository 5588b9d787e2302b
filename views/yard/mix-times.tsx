import type { FC } from 'hono/jsx';
import type { YardMix } from '../../src/usecases/yard/show-yard-mixes.ts';
import { type MixStage, mixStages } from '../charts/mix-times-geometry.ts';

const WIDTH = 420;
const HEIGHT = 22;
const HATCH = 'mix-hatch';

/** The hatching of what is mixed; once on a page that draws mixes. */
export const MixPatterns: FC = () => (
  <svg class="mould-patterns" width="0" height="0" aria-hidden="true" focusable="false">
    <defs>
      <pattern id={HATCH} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <line class="mix-hatch-line" x1="0" y1="0" x2="0" y2="6" />
      </pattern>
    </defs>
  </svg>
);

const StageBox: FC<{ stage: MixStage; x: number; width: number; height: number }> = ({ stage, ...box }) => (
  <>
    <rect class={`mix-stage is-${stage}`} y="0" {...box} />
    {stage === 'mixed' && <rect y="0" {...box} fill={`url(#${HATCH})`} />}
  </>
);

/** What stands for a stage, beside its words. */
export const StageMark: FC<{ stage: MixStage }> = ({ stage }) => (
  <svg class="stage-mark" width="16" height="16" viewBox="-1 -1 16 16" aria-hidden="true" focusable="false">
    <StageBox stage={stage} x={0} width={14} height={14} />
  </svg>
);

/** A mix from its first bag to the strip on a cold day, to time. In words in the table below it. */
export const MixTimes: FC<{ mix: Pick<YardMix, 'mixMinutes' | 'workingMinutes' | 'strips'> }> = ({ mix }) => {
  const [cold, warm] = mix.strips.map(({ minutes }) => minutes);
  const stages = mixStages({ ...mix, coldMinutes: cold ?? 0, warmMinutes: warm ?? 0 }, WIDTH);
  return (
    <svg class="mix-times" viewBox={`-1 -1 ${WIDTH + 2} ${HEIGHT + 2}`} aria-hidden="true" focusable="false">
      {stages.map(({ stage, x, width }) => (
        <StageBox stage={stage} x={x} width={width} height={HEIGHT} />
      ))}
    </svg>
  );
};
