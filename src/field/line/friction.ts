import { attempt, InputCheck, type Outcome, OutOfRangeError } from "../../units/index.js";

/** Below this only the laminar term of Churchill's formula is left to all digits. */
const CREEPING = 10;
/** Below this the formula of Haaland, made for turbulent flow, does not hold. */
const LOWEST_HAALAND = 4000;

/**
 * Darcy friction factor of a round pipe, laminar to rough turbulent in one formula; 64/Re when laminar.
 *
 * Fanning's factor, a quarter of it, is found in some books: do not mix them.
 *
 * @param reynolds - Reynolds number, above 0.
 * @param roughness - Relative roughness ε/d, 0 or above, below 0.1.
 * @throws {@link InputError} `malformed-input`.
 * @source Churchill, S. W., Chem. Eng. 84 (1977) no. 24, 91 (recalled)
 *
 * @example
 * ```ts
 * frictionFactor(1e5, 1e-4); // → 0.018463
 * ```
 */
export function frictionFactor(reynolds: number, roughness: number): number {
  checkFlow(reynolds, roughness);
  const A = (2.457 * Math.log(1 / ((7 / reynolds) ** 0.9 + 0.27 * roughness))) ** 16;
  const B = (37530 / reynolds) ** 16;
  // In creeping flow B and the power of 8/Re overflow, and what is not laminar is nothing beside 8/Re.
  if (reynolds < CREEPING) return 64 / reynolds;
  return 8 * ((8 / reynolds) ** 12 + (A + B) ** -1.5) ** (1 / 12);
}

/** As {@link frictionFactor}, without throwing. */
export function tryFrictionFactor(reynolds: number, roughness: number): Outcome<number> {
  return attempt(() => frictionFactor(reynolds, roughness));
}

/**
 * Darcy friction factor of turbulent flow by the explicit formula of Haaland.
 *
 * @param reynolds - Reynolds number, 4000 or above.
 * @param roughness - Relative roughness ε/d, 0 or above, below 0.1.
 * @throws {@link InputError} `malformed-input`; {@link OutOfRangeError} `out-of-range` below 4000.
 * @source Haaland, S. E., J. Fluids Eng. 105 (1983) 89 (recalled)
 */
export function turbulentFrictionFactor(reynolds: number, roughness: number): number {
  checkFlow(reynolds, roughness);
  if (reynolds < LOWEST_HAALAND) {
    throw new OutOfRangeError({
      quantity: "reynolds",
      value: reynolds,
      minimum: LOWEST_HAALAND,
      maximum: Number.POSITIVE_INFINITY,
      unit: "",
      subject: "turbulent flow (Haaland)",
    });
  }
  return (-1.8 * Math.log10((roughness / 3.7) ** 1.11 + 6.9 / reynolds)) ** -2;
}

/** As {@link turbulentFrictionFactor}, without throwing. */
export function tryTurbulentFrictionFactor(reynolds: number, roughness: number): Outcome<number> {
  return attempt(() => turbulentFrictionFactor(reynolds, roughness));
}

function checkFlow(reynolds: number, roughness: number): void {
  const check = new InputCheck();
  check.positive("reynolds", reynolds);
  if (check.notNegative("roughness", roughness)) {
    check.require(roughness < 0.1, "roughness", roughness, "a relative roughness below 0.1");
  }
  check.finish();
}
