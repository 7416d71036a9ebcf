import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  IEC_EDITIONS,
  MOUNTINGS,
  tryUnventilatedRoom,
  type UnventilatedRoom,
  unventilatedMaximumCharge,
  unventilatedMinimumArea,
  unventilatedRoom,
} from "../../src/safety/index.js";
import "../support/fuzz-seed.js";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const situations = fc.record({
  edition: fc.constantFrom(...IEC_EDITIONS),
  lowerFlammabilityLimit: between(0.02, 0.5),
  releaseHeight: between(0.6, 3),
});
const areas = between(0.5, 500);
const charges = between(0.01, 50);
const growth = between(1.000001, 10);

/** Two powers and a root in double precision. */
const ROUNDING = 1e-12;

describe("limits of an unventilated room", () => {
  it("undo each other: the largest charge of the smallest area is the charge", () => {
    fc.assert(
      fc.property(situations, charges, (situation, charge) => {
        const { area } = unventilatedMinimumArea(situation, charge);
        expect(unventilatedMaximumCharge(situation, area).charge).toBeWithin(charge, ROUNDING);
      }),
    );
  });

  it("undo each other the other way round", () => {
    fc.assert(
      fc.property(situations, areas, (situation, area) => {
        const { charge } = unventilatedMaximumCharge(situation, area);
        expect(unventilatedMinimumArea(situation, charge).area).toBeWithin(area, ROUNDING);
      }),
    );
  });

  it("grow with area, height and flammability limit", () => {
    fc.assert(
      fc.property(situations, areas, growth, (situation, area, factor) => {
        const { charge } = unventilatedMaximumCharge(situation, area);
        const { lowerFlammabilityLimit: lfl, releaseHeight } = situation;
        const larger = [
          unventilatedMaximumCharge(situation, area * factor),
          unventilatedMaximumCharge({ ...situation, releaseHeight: releaseHeight * factor }, area),
          unventilatedMaximumCharge({ ...situation, lowerFlammabilityLimit: lfl * factor }, area),
        ];
        for (const each of larger) expect(each.charge).toBeGreaterThan(charge);
      }),
    );
  });

  it("pass smoothly over the crossing of the branches", () => {
    fc.assert(
      fc.property(situations, (situation) => {
        const crossing = ((2.5 * situation.lowerFlammabilityLimit ** 0.25) / 0.75) ** 2;
        const below = unventilatedMaximumCharge(situation, crossing * (1 - 1e-9)).charge;
        const above = unventilatedMaximumCharge(situation, crossing * (1 + 1e-9)).charge;
        // 2e-9 of area is at most 2e-9 of charge on the steeper, linear branch.
        expect(below).toBeWithin(above, 2.1e-9);
      }),
    );
  });

  it("never allow more with the linear rule than without", () => {
    fc.assert(
      fc.property(situations, areas, (situation, area) => {
        const root = unventilatedMaximumCharge({ ...situation, edition: "5.0" }, area).charge;
        const both = unventilatedMaximumCharge({ ...situation, edition: "6" }, area).charge;
        expect(both).toBeLessThanOrEqual(root);
      }),
    );
  });
});

const rooms: fc.Arbitrary<UnventilatedRoom> = fc.record({
  edition: fc.constantFrom(...IEC_EDITIONS),
  refrigerant: fc.constantFrom("R-32", "R-290", "R-1234yf", "R-152a"),
  charge: charges,
  floorArea: areas,
  mounting: fc.constantFrom(...MOUNTINGS),
});

describe("the verdict on an unventilated room", () => {
  it("agrees with both limits", () => {
    fc.assert(
      fc.property(rooms, (room) => {
        const result = unventilatedRoom(room);
        if (result.verdict === "outside-clause") {
          expect(room.charge).toBeGreaterThan(result.bands.m2);
          return;
        }
        const sign = result.verdict === "pass" ? 1 : -1;
        expect(sign * result.chargeMargin!).toBeGreaterThanOrEqual(0);
        expect(sign * result.areaMargin!).toBeGreaterThanOrEqual(-ROUNDING * room.floorArea);
      }),
    );
  });

  it("never turns bad by taking less charge or a larger room", () => {
    fc.assert(
      fc.property(rooms, growth, (room, factor) => {
        if (unventilatedRoom(room).verdict !== "pass") return;
        expect(unventilatedRoom({ ...room, charge: room.charge / factor }).verdict).toBe("pass");
        expect(unventilatedRoom({ ...room, floorArea: room.floorArea * factor }).verdict).toBe("pass");
      }),
    );
  });

  it("is an answer or a typed error, whatever comes in", () => {
    const anything = fc.oneof(
      fc.double(),
      fc.string(),
      fc.constant(undefined),
      fc.constant(null),
      fc.object(),
    );
    const any = <T>(good: fc.Arbitrary<T>) => fc.oneof(good, anything) as fc.Arbitrary<T>;
    fc.assert(
      fc.property(
        fc.record({
          edition: any(fc.constantFrom(...IEC_EDITIONS)),
          refrigerant: any(fc.constantFrom("R-32", "R-134a")),
          charge: any(charges),
          floorArea: any(areas),
          mounting: any(fc.constantFrom(...MOUNTINGS)),
          releaseOffset: any(between(0, 1)),
          roomHeight: any(between(2, 3)),
        }),
        (input) => {
          const outcome = tryUnventilatedRoom(input as UnventilatedRoom);
          if (!outcome.ok) return;
          for (const number of [outcome.value.maximumCharge, outcome.value.minimumArea]) {
            if (number !== undefined) expect(Number.isFinite(number)).toBe(true);
          }
        },
      ),
    );
  });
});
