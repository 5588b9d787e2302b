import { TypedReader } from './typed-reader.ts';

/**
 * Reads a form that was filled in from something stored: a field that comes back just as it was shown stands for exactly
 * what it was filled in from, however that was rounded to be shown.
 */
export class ShownReader<T extends object> extends TypedReader {
  readonly #before: T | null;
  readonly #shown: Readonly<Record<string, string>>;

  constructor(
    typed: Readonly<Record<string, string>>,
    before: T | null,
    shown: Readonly<Record<string, string>> | null,
  ) {
    super(typed);
    this.#before = before;
    this.#shown = shown ?? {};
  }

  asShown(name: string): boolean {
    return (this.#shown[name] ?? '') === this.text(name);
  }

  /** As it was, or as it is typed now. */
  figure<K extends keyof T & string>(name: K, next: () => NonNullable<T[K]>): T[K] {
    return this.#before && this.asShown(name) ? this.#before[name] : next();
  }

  /** The same, or `none` where nothing was typed. */
  figureOr<K extends keyof T & string, N>(name: K, none: N, next: () => NonNullable<T[K]>): T[K] | N {
    if (this.#before && this.asShown(name)) return this.#before[name];
    return this.text(name) === '' ? none : next();
  }
}
