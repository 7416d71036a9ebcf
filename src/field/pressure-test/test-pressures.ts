import data from "../../../data/field/pressure-test.json" with { type: "json" };
import { type GaugePressure, InputCheck } from "../../units/index.js";

/** Pressures of a test with nitrogen. */
export interface TestPressures {
  /** Highest pressure of the tightness test, Pa gauge. */
  readonly tightness: GaugePressure;
  /** Strength test of an assembled system with gas, Pa gauge. */
  readonly assembledSystem: GaugePressure;
  /** Strength test of parts on their own, or with liquid, Pa gauge. */
  readonly separateParts: GaugePressure;
  /** Smallest full scale of a gauge for the strength test of the assembled system, Pa gauge. */
  readonly gaugeFullScale: GaugePressure;
  /** Where the factors are from. */
  readonly source: string;
}

/**
 * Pressures of the tests of a system. The manual of the unit wins; only nitrogen, and never above the lowest marked
 * pressure of any part that is not made for it.
 *
 * @param maximumAllowablePressure - PS of the weakest part under test, Pa gauge, above 0.
 * @throws {@link InputError} `malformed-input`.
 * @source EN 378-2:2016 and ISO 5149-2:2014 (recalled)
 *
 * @example
 * ```ts
 * testPressures(megapascalGauge(4.15)).assembledSystem; // → 4.565e6 Pa gauge
 * ```
 */
export function testPressures(maximumAllowablePressure: GaugePressure): TestPressures {
  const check = new InputCheck();
  check.positive("maximumAllowablePressure", maximumAllowablePressure);
  check.finish();
  const PS = maximumAllowablePressure;
  const assembledSystem = data.assembledSystem.factor * PS;
  return {
    tightness: data.tightness.factor * PS,
    assembledSystem,
    separateParts: data.separateParts.factor * PS,
    gaugeFullScale: data.gaugeRange.factor * assembledSystem,
    source: data.assembledSystem.source,
  };
}
