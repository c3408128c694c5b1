const SHOWN = 50;

/** What a verification found wrong: the first of them in full, all of them counted. */
export class Findings {
  readonly #shown: string[] = [];
  #count = 0;

  /** @param what one sentence: which thing, what it says, what it should say */
  add(what: string): void {
    this.#count += 1;
    if (this.#shown.length < SHOWN) this.#shown.push(what);
  }

  get count(): number {
    return this.#count;
  }

  get shown(): readonly string[] {
    return this.#shown;
  }
}
