import type { YardFile } from '../../shared/yard-file.ts';
import { compile } from '../../src/engine/decoder/compile.ts';
import { type Placing, placingOf } from '../../src/engine/decoder/decoder-state.ts';
import { type Choices, choicesIn, dispatchOf } from '../../src/engine/decoder/dispatch.ts';
import { startPlacing } from '../../src/engine/decoder/start.ts';

/** A yard about to be planned, orders as they are listed: its first shift is entered and nothing is placed in it yet. */
export const begunPlacing = (yard: YardFile, choices: Partial<Choices> = {}): Placing => {
  const dispatch = dispatchOf(
    Int32Array.from(yard.orders, (_, o) => o),
    choices,
  );
  const at = placingOf(compile(yard), dispatch);
  startPlacing(at);
  enterShift(at, 0);
  return at;
};

export const enterShift = (at: Placing, shift: number): void => {
  at.choices = choicesIn(at.dispatch, shift);
  at.shift = shift;
  at.timeline.enter(shift);
};
