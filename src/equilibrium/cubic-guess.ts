/**
 * Molar density of a gas or supercritical fluid from a cubic equation, good to a few per cent: a starting value only.
 *
 * @source Peng, D.-Y., Robinson, D. B., Ind. Eng. Chem. Fundam. 15 (1976) 59.
 */
export function cubicDensity(
  T: number,
  p: number,
  critical: { readonly temperature: number; readonly pressure: number },
  acentricFactor: number,
  R: number,
): number {
  const kappa = 0.37464 + acentricFactor * (1.54226 - 0.26992 * acentricFactor);
  const root = 1 + kappa * (1 - Math.sqrt(T / critical.temperature));
  const a = ((0.45724 * (R * critical.temperature) ** 2) / critical.pressure) * root * root;
  const b = (0.0778 * R * critical.temperature) / critical.pressure;
  const A = (a * p) / (R * T) ** 2;
  const B = (b * p) / (R * T);
  // Z³ + c2 Z² + c1 Z + c0 = 0; above the critical temperature one root is real, and of three the largest is the gas.
  const c2 = B - 1;
  const c1 = A - 3 * B * B - 2 * B;
  const c0 = -(A * B - B * B - B * B * B);
  const q = (3 * c1 - c2 * c2) / 9;
  const r = (9 * c2 * c1 - 27 * c0 - 2 * c2 * c2 * c2) / 54;
  const discriminant = q * q * q + r * r;
  let Z: number;
  if (discriminant > 0) {
    const s = Math.sqrt(discriminant);
    Z = Math.cbrt(r + s) + Math.cbrt(r - s) - c2 / 3;
  } else {
    Z = 2 * Math.sqrt(-q) * Math.cos(Math.acos(r / Math.sqrt(-q * q * q)) / 3) - c2 / 3;
  }
  return p / (Math.max(Z, B * 1.01) * R * T);
}
