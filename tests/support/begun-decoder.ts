import type { YardFile } from '../../shared/yard-file.ts';
import { compile } from '../../src/engine/decoder/compile.ts';
import { type DecoderState, decoderStateOf } from '../../src/engine/decoder/decoder-state.ts';
import { type Choices, choicesIn, dispatchOf } from '../../src/engine/decoder/dispatch.ts';
import { resetState } from '../../src/engine/decoder/start.ts';

/** A yard about to be planned, orders as they are listed: its first shift is entered and nothing is placed in it yet. */
export const begunDecoder = (yard: YardFile, choices: Partial<Choices> = {}): DecoderState => {
  const dispatch = dispatchOf(
    Int32Array.from(yard.orders, (_, o) => o),
    choices,
  );
  const state = decoderStateOf(compile(yard), dispatch);
  resetState(state);
  enterShift(state, 0);
  return state;
};

export const enterShift = (state: DecoderState, shift: number): void => {
  state.choices = choicesIn(state.dispatch, shift);
  state.shift = shift;
  state.timeline.enter(shift);
};
