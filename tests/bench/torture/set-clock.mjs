/*
 * Loaded before a server that is to live by another clock than the machine's: each look at the time reads the instant that
 * stands in the file CLOCK_FILE. So the very program that is started every day can be driven through weeks in a minute.
 */
import { readFileSync } from 'node:fs';

const MachineDate = globalThis.Date;
const file = process.env.CLOCK_FILE;
const now = () => MachineDate.parse(readFileSync(file, 'utf8').trim());

globalThis.Date = class extends MachineDate {
  constructor(...given) {
    if (given.length === 0) super(now());
    else super(...given);
  }

  static now() {
    return now();
  }
};
