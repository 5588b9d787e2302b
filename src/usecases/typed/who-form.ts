import { tooLongText } from '../../../shared/text-limits.ts';
import { done, type Outcome, refuse } from '../core/context.ts';

const LONGEST_NAME = 40;
/** Anything that is no letter, sign or space of a line. */
const UNWRITABLE = /\p{C}/gu;

/** The name of whoever uses a device, null for nobody: "  Anna " is "Anna". One of more than 40 letters is refused at `name`. */
export const whoTyped = (text: string): Outcome<string | null> => {
  const name = text.replace(UNWRITABLE, ' ').replace(/\s+/g, ' ').trim();
  if ([...name].length > LONGEST_NAME) return refuse('name', tooLongText(LONGEST_NAME));
  return done(name === '' ? null : name);
};
