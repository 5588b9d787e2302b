/** What every page has for its top: whose yard it is, and the day it counts from. */
export interface PageHead {
  yardName: string;
  /** The date of now, in the yard. */
  today: string;
}

/** A thing of the yard, to be chosen by its name. */
export interface Named {
  id: string;
  name: string;
}

/** So many of something, by the yard's name for it. */
export interface Counted {
  name: string;
  count: number;
}

/** What is told of a change until it is put away. */
export interface OpenNotice {
  id: number;
  words: string;
}
