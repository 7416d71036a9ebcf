/** Chance that a normal value lies within two standard deviations, erf(√2): what a coverage factor of 2 means. */
const TWO_SIGMA = 0.954499736103642;

/** Beyond this many degrees of freedom the factor is 2 to 1 %; counting further gains nothing. */
const MANY = 300;

/**
 * Coverage factor for a mean or slope whose scatter was found from few readings: Student's t for the same 95.45 %
 * that k = 2 gives a normal distribution.
 *
 * @param degreesOfFreedom - Whole number, 1 or more; fractions are cut off.
 * @returns 13.97 for 1, 2.28 for 10, towards 2 for many; NaN below 1.
 * @source JCGM 100:2008 (GUM), annex G.3 and table G.2; distribution function for whole ν: Abramowitz and Stegun,
 * Handbook of Mathematical Functions (1964), 26.7.3 and 26.7.4
 */
export function studentFactor(degreesOfFreedom: number): number {
  if (!(degreesOfFreedom >= 1)) return Number.NaN;
  const nu = Math.min(Math.floor(degreesOfFreedom), MANY);
  let low = 0;
  let high = 20;
  // Halving to the last bit: the function is monotone and this is not a hot path.
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2;
    if (studentWithin(middle, nu) < TWO_SIGMA) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** A(t|ν), the chance of |T| ≤ t. */
function studentWithin(t: number, nu: number): number {
  const theta = Math.atan(t / Math.sqrt(nu));
  const sin = Math.sin(theta);
  const cos = Math.cos(theta);
  const isOdd = nu % 2 === 1;
  // Odd: cos θ + 2/3 cos³ θ + 2·4/(3·5) cos⁵ θ + … ; even: 1 + 1/2 cos² θ + 1·3/(2·4) cos⁴ θ + …
  let term = isOdd ? cos : 1;
  let sum = 0;
  for (let k = isOdd ? 2 : 1; k < nu; k += 2) {
    sum += term;
    term *= (k / (k + 1)) * cos * cos;
  }
  return isOdd ? (2 / Math.PI) * (theta + sin * sum) : sin * sum;
}
