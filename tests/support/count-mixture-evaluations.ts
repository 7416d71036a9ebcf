import { afterAll, beforeAll } from "vitest";
import { Mixture } from "../../src/equation/index.js";

/**
 * Counts evaluations of every mixture equation while the tests of a file run: with or without derivatives in composition,
 * each makes one of fixed composition.
 *
 * @returns Starts from zero when called with `reset`, and says how many there have been since.
 */
export function countMixtureEvaluations(): (how?: "reset") => number {
  let count = 0;
  const { evaluateFixed } = Mixture.prototype;
  beforeAll(() => {
    Mixture.prototype.evaluateFixed = function (this: Mixture, ...values) {
      count++;
      evaluateFixed.apply(this, values);
    };
  });
  afterAll(() => Object.assign(Mixture.prototype, { evaluateFixed }));
  return (how) => {
    if (how === "reset") count = 0;
    return count;
  };
}
