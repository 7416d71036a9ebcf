import {
  attempt,
  type Outcome,
  OutOfRangeError,
  type Pressure,
  requireFinite,
  type Temperature,
} from "../../units/index.js";

// Coefficients n₁ … n₁₀ of region 4, as printed in IAPWS R7-97(2012), table 34; T in K, p in MPa.
const N1 = 1167.0521452767;
const N2 = -724213.16703206;
const N3 = -17.073846940092;
const N4 = 12020.82470247;
const N5 = -3232555.0322333;
const N6 = 14.91510861353;
const N7 = -4823.2657361591;
const N8 = 405113.40542057;
const N9 = -0.23855557567849;
const N10 = 650.17534844798;
/** p* of region 4, Pa. */
const STAR_PRESSURE = 1e6;

// IAPWS R14-08(2011), equation (6): ln(p/pₜ) = θ⁻¹ Σ aᵢ θ^bᵢ; three terms.
const ICE_TERMS = [
  { a: -21.2144006, b: 0.00333333333 },
  { a: 27.3203819, b: 1.20666667 },
  { a: -6.1059813, b: 1.70333333 },
] as const;

/** Triple point of water, K and Pa, as used by IAPWS R14-08(2011); ice below, liquid above. */
export const WATER_TRIPLE_POINT: { readonly temperature: Temperature; readonly pressure: Pressure } = {
  temperature: 273.16,
  pressure: 611.657,
};

const WATER_RANGE = { minimum: 273.15, maximum: 647.096 } as const;
const ICE_RANGE = { minimum: 50, maximum: 273.16 } as const;

/**
 * Saturation pressure of liquid water.
 *
 * @param temperature - 273.15 to 647.096 K.
 * @returns Pa.
 * @throws {@link OutOfRangeError} `out-of-range`.
 * @source IAPWS R7-97(2012), Revised Release on the IAPWS Industrial Formulation 1997, region 4, equation (30)
 *
 * @example
 * ```ts
 * waterSaturationPressure(300); // → 3536.589 Pa
 * ```
 */
export function waterSaturationPressure(temperature: Temperature): Pressure {
  requireWithin("temperature", temperature, WATER_RANGE, "K", "water (IAPWS R7-97)");
  const theta = temperature + N9 / (temperature - N10);
  const A = theta * theta + N1 * theta + N2;
  const B = N3 * theta * theta + N4 * theta + N5;
  const C = N6 * theta * theta + N7 * theta + N8;
  return STAR_PRESSURE * ((2 * C) / (-B + Math.sqrt(B * B - 4 * A * C))) ** 4;
}

/**
 * Temperature at which liquid water boils under a pressure.
 *
 * @param pressure - Absolute, 611.213 Pa to 22.064 MPa.
 * @returns K.
 * @throws {@link OutOfRangeError} `out-of-range`.
 * @source IAPWS R7-97(2012), region 4, equation (31)
 *
 * @example
 * ```ts
 * waterSaturationTemperature(1e5); // → 372.7559 K
 * ```
 */
export function waterSaturationTemperature(pressure: Pressure): Temperature {
  const range = {
    minimum: waterSaturationPressure(WATER_RANGE.minimum),
    maximum: waterSaturationPressure(WATER_RANGE.maximum),
  };
  requireWithin("pressure", pressure, range, "Pa", "water (IAPWS R7-97)");
  const beta = (pressure / STAR_PRESSURE) ** 0.25;
  const E = beta * beta + N3 * beta + N6;
  const F = N1 * beta * beta + N4 * beta + N7;
  const G = N2 * beta * beta + N5 * beta + N8;
  const D = (2 * G) / (-F - Math.sqrt(F * F - 4 * E * G));
  return (N10 + D - Math.sqrt((N10 + D) ** 2 - 4 * (N9 + N10 * D))) / 2;
}

/**
 * Sublimation pressure of ice Ih.
 *
 * @param temperature - 50 to 273.16 K.
 * @returns Pa.
 * @throws {@link OutOfRangeError} `out-of-range`.
 * @source IAPWS R14-08(2011), Revised Release on the Pressure along the Melting and Sublimation Curves of Ordinary
 * Water Substance, equation (6)
 *
 * @example
 * ```ts
 * iceSublimationPressure(230); // → 8.94735 Pa
 * ```
 */
export function iceSublimationPressure(temperature: Temperature): Pressure {
  requireWithin("temperature", temperature, ICE_RANGE, "K", "ice (IAPWS R14-08)");
  return iceCurve(temperature).pressure;
}

/**
 * Temperature at which ice sublimates under a pressure: the inverse of {@link iceSublimationPressure}.
 *
 * @param pressure - Absolute, above that of ice at 50 K (2e-40 Pa) up to 611.657 Pa.
 * @returns K.
 * @throws {@link OutOfRangeError} `out-of-range`.
 * @source IAPWS R14-08(2011), equation (6), inverted by Newton's method in 1/T, where the curve is nearly straight
 */
export function iceSublimationTemperature(pressure: Pressure): Temperature {
  const range = { minimum: iceCurve(ICE_RANGE.minimum).pressure, maximum: WATER_TRIPLE_POINT.pressure };
  requireWithin("pressure", pressure, range, "Pa", "ice (IAPWS R14-08)");
  let temperature: number = ICE_RANGE.maximum;
  // Six steps reach the last digit from anywhere on the curve; the rest is reserve.
  for (let step = 0; step < 20; step++) {
    const { pressure: p, slope } = iceCurve(temperature);
    // slope is d ln p / d(1/T)
    const inverse = 1 / temperature + Math.log(pressure / p) / slope;
    const next = Math.min(Math.max(1 / inverse, ICE_RANGE.minimum), ICE_RANGE.maximum);
    if (Math.abs(next - temperature) <= 1e-13 * next) return next;
    temperature = next;
  }
  return temperature;
}

/**
 * Pressure of water vapour over what is there at a temperature: ice below the triple point, liquid above.
 *
 * @param temperature - 50 to 647.096 K.
 * @returns Pa.
 * @throws {@link OutOfRangeError} `out-of-range`.
 * @source IAPWS R14-08(2011) and R7-97(2012); they meet at 273.16 K and 611.657 Pa
 */
export function waterVapourPressure(temperature: Temperature): Pressure {
  const range = { minimum: ICE_RANGE.minimum, maximum: WATER_RANGE.maximum };
  requireWithin("temperature", temperature, range, "K", "water and ice");
  return temperature < WATER_TRIPLE_POINT.temperature
    ? iceSublimationPressure(temperature)
    : waterSaturationPressure(temperature);
}

/**
 * Temperature above which water leaves at a pressure: it boils, or as ice it sublimates. A colder part can keep it.
 *
 * @param pressure - Absolute, 2e-40 Pa to 22.064 MPa.
 * @returns K.
 * @throws {@link OutOfRangeError} `out-of-range`.
 * @source IAPWS R14-08(2011) below 611.657 Pa, R7-97(2012) above
 *
 * @example
 * ```ts
 * waterBoilingTemperature(micron(500)); // → 248.67 K: −24.5 °C
 * ```
 */
export function waterBoilingTemperature(pressure: Pressure): Temperature {
  const range = {
    minimum: iceCurve(ICE_RANGE.minimum).pressure,
    maximum: waterSaturationPressure(WATER_RANGE.maximum),
  };
  requireWithin("pressure", pressure, range, "Pa", "water and ice");
  return pressure < WATER_TRIPLE_POINT.pressure
    ? iceSublimationTemperature(pressure)
    : waterSaturationTemperature(pressure);
}

/** As {@link waterSaturationPressure}, without throwing. */
export function tryWaterSaturationPressure(temperature: Temperature): Outcome<Pressure> {
  return attempt(() => waterSaturationPressure(temperature));
}

/** As {@link waterSaturationTemperature}, without throwing. */
export function tryWaterSaturationTemperature(pressure: Pressure): Outcome<Temperature> {
  return attempt(() => waterSaturationTemperature(pressure));
}

/** As {@link iceSublimationPressure}, without throwing. */
export function tryIceSublimationPressure(temperature: Temperature): Outcome<Pressure> {
  return attempt(() => iceSublimationPressure(temperature));
}

/** As {@link iceSublimationTemperature}, without throwing. */
export function tryIceSublimationTemperature(pressure: Pressure): Outcome<Temperature> {
  return attempt(() => iceSublimationTemperature(pressure));
}

/** As {@link waterVapourPressure}, without throwing. */
export function tryWaterVapourPressure(temperature: Temperature): Outcome<Pressure> {
  return attempt(() => waterVapourPressure(temperature));
}

/** As {@link waterBoilingTemperature}, without throwing. */
export function tryWaterBoilingTemperature(pressure: Pressure): Outcome<Temperature> {
  return attempt(() => waterBoilingTemperature(pressure));
}

/**
 * Steepness of the vapour curve, d ln p/d(1/T), K; below 0.
 *
 * @param temperature - Within the range of {@link waterVapourPressure}, K.
 * @internal
 */
export function waterVapourSteepness(temperature: Temperature): number {
  if (temperature < WATER_TRIPLE_POINT.temperature) return iceCurve(temperature).slope;
  // Region 4 is F(β, θ) = 0 with β = (p/p*)^¼, so dβ/dθ = −F_θ/F_β.
  const theta = temperature + N9 / (temperature - N10);
  const beta = (waterSaturationPressure(temperature) / STAR_PRESSURE) ** 0.25;
  const byTheta = (2 * theta + N1) * beta * beta + (2 * N3 * theta + N4) * beta + 2 * N6 * theta + N7;
  const byBeta = 2 * (theta * theta + N1 * theta + N2) * beta + (N3 * theta * theta + N4 * theta + N5);
  const thetaSlope = 1 - N9 / ((temperature - N10) * (temperature - N10));
  return (temperature * temperature * 4 * (byTheta / byBeta) * thetaSlope) / beta;
}

/** Sublimation pressure, Pa, and d ln p / d(1/T), K, at a temperature in K. */
function iceCurve(temperature: number): { readonly pressure: number; readonly slope: number } {
  const theta = temperature / WATER_TRIPLE_POINT.temperature;
  let logarithm = 0;
  let derivative = 0;
  for (const { a, b } of ICE_TERMS) {
    const term = a * theta ** (b - 1);
    logarithm += term;
    derivative += (b - 1) * term;
  }
  // d/d(1/T) = −T θ d/dθ / … with θ d(ln p)/dθ = Σ (bᵢ − 1) aᵢ θ^(bᵢ − 1)
  return { pressure: WATER_TRIPLE_POINT.pressure * Math.exp(logarithm), slope: -temperature * derivative };
}

function requireWithin(
  quantity: string,
  value: number,
  { minimum, maximum }: { readonly minimum: number; readonly maximum: number },
  unit: string,
  subject: string,
): void {
  // A text would compare like a number.
  if (typeof value !== "number") requireFinite(quantity, value);
  if (!(value >= minimum && value <= maximum)) {
    throw new OutOfRangeError({ quantity, value, minimum, maximum, unit, subject });
  }
}
