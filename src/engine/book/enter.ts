import type { YardFile } from '../../../shared/yard-file.ts';
import { coat } from './coat.ts';
import type { Booked } from './entry.ts';
import { pack } from './pack.ts';
import { pour } from './pour.ts';
import { setUp } from './set-up.ts';
import { strip } from './strip.ts';
import type { WorkDone } from './work-done.ts';

/** What work done in the yard comes to in the book; every way of recording work goes through here. */
export const enter = (yard: YardFile, work: WorkDone): Booked => {
  switch (work.kind) {
    case 'poured':
      return pour(yard, work);
    case 'stripped':
      return strip(yard, work);
    case 'coated':
      return coat(yard, work);
    case 'set up':
      return setUp(yard, work);
    case 'packed':
      return pack(yard, work);
  }
};
