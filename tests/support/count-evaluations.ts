import { afterAll, beforeAll } from "vitest";
import { Equation } from "../../src/equation/index.js";

/**
 * Counts evaluations of every equation while the tests of a file run, without keeping their arguments as a spy of the
 * test runner would: millions of them are made.
 *
 * @returns Starts from zero when called with `reset`, and says how many there have been since.
 */
export function countEvaluations(): (how?: "reset") => number {
  let count = 0;
  const { evaluate, evaluateResidual } = Equation.prototype;
  beforeAll(() => {
    Equation.prototype.evaluate = function (this: Equation, ...values) {
      count++;
      evaluate.apply(this, values);
    };
    Equation.prototype.evaluateResidual = function (this: Equation, ...values) {
      count++;
      evaluateResidual.apply(this, values);
    };
  });
  afterAll(() => Object.assign(Equation.prototype, { evaluate, evaluateResidual }));
  return (how) => {
    if (how === "reset") count = 0;
    return count;
  };
}
