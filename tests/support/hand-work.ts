import type { Page } from 'playwright-core';

/**
 * Seconds of a practised hand, by the keystroke-level model: a key or button press 0.2 s (average typist), pointing 1.1 s,
 * moving a hand between keys and pointer 0.4 s, one mental step 1.35 s (Card, Moran and Newell 1980, Communications of the
 * ACM 23(7) 396-410; from memory).
 */
const SECONDS = { press: 0.2, point: 1.1, hand: 0.4, think: 1.35 };

/** A page worked by hand only: pointing, clicking and typing, nothing set from behind; what was done is counted. */
export class HandWork {
  clicks = 0;
  keys = 0;
  readonly #page: Page;
  #typed = 0;
  constructor(page: Page) {
    this.#page = page;
  }

  async click(selector: string): Promise<void> {
    await this.#page.click(selector);
    this.clicks++;
  }

  /** Clicks into a field, marks all that stands there, and types. */
  async type(selector: string, text: string): Promise<void> {
    await this.click(selector);
    await this.#page.keyboard.press('Control+a');
    await this.#page.keyboard.type(text);
    this.keys += text.length + 1;
    this.#typed++;
  }

  /** Opens a list, types the answer's name until it is marked, and takes it. */
  async choose(selector: string, label: string): Promise<void> {
    await this.click(selector);
    await this.#page.keyboard.type(label);
    await this.#page.keyboard.press('Enter');
    this.keys += label.length + 1;
    this.#typed++;
  }

  /** A time of day, typed digit by digit as its field takes it. */
  async time(selector: string, digits: string): Promise<void> {
    await this.click(selector);
    await this.#page.keyboard.press('Home');
    await this.#page.keyboard.type(digits);
    this.keys += digits.length + 1;
    this.#typed++;
  }

  /** About how long a person takes for that, without reading the pages. */
  get seconds(): number {
    const pointing = this.clicks * (SECONDS.think + SECONDS.point + SECONDS.press);
    return pointing + this.keys * SECONDS.press + this.#typed * (SECONDS.think + 2 * SECONDS.hand);
  }
}
