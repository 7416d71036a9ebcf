import { describe, expect, test } from "vitest";
import { isPrinted } from "./printed.js";
import { ammoniaRecorded, type Recorded, waterRecorded } from "./reference-library.js";

/*
 * Numbers recorded from a general-purpose library of steam properties that has ammonia too (Debian package
 * python3-iapws; reference-library/generate.py wrote them): another program, written by other people. Ammonia in ten
 * digits, its saturation in seven, water in eleven.
 */
const everything = [...ammoniaRecorded(), ...waterRecorded()];
const groups = [...new Set(everything.map(({ substance, group }) => `${substance}: ${group}`))].map(
  (name) => [name, everything.filter(({ substance, group }) => `${substance}: ${group}` === name)] as const,
);

const describeRecorded = ({ where, property, computed, printed }: Recorded): string =>
  `${property} at ${where}: got ${computed}, recorded ${printed}`;

describe("the reference library, to half a unit of the last digit recorded", () => {
  test.each(groups)("%s", (_, values) => {
    const failed = values.filter(({ computed, printed }) => !isPrinted(computed, printed));
    expect(failed.map(describeRecorded)).toEqual([]);
  });

  test("covers both phases, supercritical states and saturation of ammonia, water and ice", () => {
    expect(groups.map(([name, values]) => [name, values.length])).toEqual([
      ["ammonia: liquid", 72],
      ["ammonia: vapour", 68],
      ["ammonia: supercritical", 28],
      ["ammonia: saturation", 33],
      ["water: pressure over liquid", 14],
      ["water: boiling temperature", 10],
      ["water: pressure over ice", 15],
    ]);
  });
});
