import { type Density, InputCheck, InputError } from "../../units/index.js";
import { type FlammabilityFacts, flammabilityFacts, type SafetySource } from "../flammability.js";
import { isFlammable, SAFETY_CLASSES, type SafetyClass, toxicityClass } from "../safety-class.js";
import { IEC_EDITIONS, iecConstants, MOUNTINGS } from "./constants.js";
import type { UnventilatedRoom } from "./unventilated-room.js";

/** All that can be wrong with the input, before anything is computed. */
export function examineRoom(room: UnventilatedRoom): {
  readonly facts: FlammabilityFacts;
  readonly safetyClass: SafetyClass;
  readonly limit: SafetySource & { readonly value: Density };
} {
  const check = new InputCheck();
  const { minimumMolarMass, altitudeFactor: altitudeRule } = iecConstants();
  check.oneOf("edition", room.edition, IEC_EDITIONS);
  check.positive("charge", room.charge);
  check.positive("floorArea", room.floorArea);
  check.oneOf("mounting", room.mounting, MOUNTINGS);
  if (room.releaseOffset !== undefined) check.notNegative("releaseOffset", room.releaseOffset);
  if (room.roomHeight !== undefined) check.positive("roomHeight", room.roomHeight);
  if (room.altitude !== undefined) {
    check.oneOf("altitude.rule", room.altitude.rule, [altitudeRule.rule]);
    check.require(
      room.edition === altitudeRule.edition,
      "altitude",
      room.altitude,
      `nothing, or edition ${altitudeRule.edition}: the factor is one of ${altitudeRule.rule}, which follows it`,
    );
  }
  const own = room.lowerFlammabilityLimit;
  if (own !== undefined) {
    check.positive("lowerFlammabilityLimit.value", own.value);
    check.require(
      typeof own.source === "string" && own.source !== "",
      "lowerFlammabilityLimit.source",
      own.source,
      "where the value comes from",
    );
  }
  const facts = knownFacts(room.refrigerant, check);
  if (facts === undefined) throw new InputError(check.problems);
  const safetyClass = facts.safetyClass.value;
  const { value: known, source, status, confidence } = facts.lowerFlammabilityLimit;
  const value = own?.value ?? known;
  if (
    check.require(
      safetyClass !== null && SAFETY_CLASSES.includes(safetyClass),
      "refrigerant.safetyClass",
      safetyClass,
      "a known safety class",
    ) &&
    safetyClass !== null
  ) {
    check.require(
      isFlammable(safetyClass),
      "refrigerant.safetyClass",
      safetyClass,
      "class 2L, 2 or 3: class 1 does not burn and has no flammability limit",
    );
    check.require(
      toxicityClass(safetyClass) === "A",
      "refrigerant.safetyClass",
      safetyClass,
      "toxicity class A: this rule says nothing on toxicity",
    );
    if (isFlammable(safetyClass) && own === undefined) {
      check.require(
        known !== null && known > 0,
        "refrigerant.lowerFlammabilityLimit",
        known,
        "a known lower flammability limit; give one with its source",
      );
    }
  }
  check.require(
    facts.molarMass.value > minimumMolarMass.value,
    "refrigerant.molarMass",
    facts.molarMass.value,
    `above ${minimumMolarMass.value} kg/mol: the rule is for vapours heavier than air`,
  );
  check.finish();
  return {
    facts,
    safetyClass: safetyClass as SafetyClass,
    limit:
      own === undefined
        ? { value: value as Density, source, status, confidence }
        : { value: own.value, source: own.source, status: "given", confidence: "given" },
  };
}

function knownFacts(
  refrigerant: string | FlammabilityFacts,
  check: InputCheck,
): FlammabilityFacts | undefined {
  if (typeof refrigerant !== "string") {
    const complete = isComplete(refrigerant);
    check.require(
      complete,
      "refrigerant",
      refrigerant,
      "a designation, or facts with designation, molarMass, safetyClass, lowerFlammabilityLimit and alternatives",
    );
    return complete ? refrigerant : undefined;
  }
  try {
    return flammabilityFacts(refrigerant);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    check.problems.push(...error.problems);
    return undefined;
  }
}

/** Facts can come from a caller's own file; a missing part must not end in a crash. */
function isComplete(facts: FlammabilityFacts | null | undefined): boolean {
  return (
    typeof facts === "object" &&
    facts !== null &&
    typeof facts.designation === "string" &&
    typeof facts.molarMass?.value === "number" &&
    facts.safetyClass?.value !== undefined &&
    facts.lowerFlammabilityLimit?.value !== undefined &&
    Array.isArray(facts.alternatives)
  );
}
