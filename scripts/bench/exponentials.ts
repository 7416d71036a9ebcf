import type { Fluid } from "../../src/catalogue/index.js";

/**
 * How many exponentials the printed form of an equation has, counted in its literal: every row of the residual part
 * that has a factor exp(…), which are power rows with l > 0 and all rows of the other forms, and every
 * Planck–Einstein row of the ideal part. Powers of τ and δ are not counted, though a program must form them too.
 */
export function exponentialsOf({ ideal, residual }: Fluid): number {
  const { power, doubleExp = [], gaussian = [], reciprocalBell = [], nonAnalytic = [] } = residual;
  const others = [doubleExp, gaussian, reciprocalBell, nonAnalytic, ideal.planckEinstein];
  return others.reduce((sum, rows) => sum + rows.length, power.filter(([, , , l]) => l > 0).length);
}
