/** A sentence that has to be shown with a result; no result may read as a permission to work. */
export interface Caution<Code extends string = string> {
  /** Stable, for programs and translations. */
  readonly code: Code;
  /** What to show, in English. */
  readonly text: string;
}

/** Something about an input or a result that a careful user should know; the result still stands. */
export interface Warning<Code extends string = string> {
  /** Stable, for programs and translations. */
  readonly code: Code;
  /** What is odd, with the numbers, in English. */
  readonly message: string;
}
