import { readdirSync, readFileSync } from "node:fs";
import { afterAll, describe, expect, test } from "vitest";
import { listBlends } from "../../src/catalogue/index.js";
import { type Listed, listedGlides, listedPoints } from "./listings.js";

/*
 * Bubble and dew points at 101.325 kPa of every designated blend, as ANSI/ASHRAE 34 and ISO 817 list them (from memory, to
 * 0.1 K; R-454B and R-454C newer values, second hand). How far the model lies from each was stated when its parameters
 * were settled; a unit of the last digit of that, 0.01 K, is allowed, for it is the difference of rounded temperatures.
 */
const allowed = 0.01;
const points = listedPoints();
const glides = listedGlides();

const deviationOf = ({ computed, printed }: Listed): number => computed - Number(printed);

function problemOf(point: Listed): string | undefined {
  const { blend, what, printed, computed, stated } = point;
  if (Math.abs(deviationOf(point) - Number(stated)) <= allowed) return undefined;
  return `${what} of ${blend}: got ${computed}, listed ${printed}, stated to deviate by ${stated}`;
}

function problemsOf(list: readonly Listed[]): readonly string[] {
  return list.map(problemOf).filter((problem) => problem !== undefined);
}

describe("listed bubble and dew points deviate as stated, to 0.01 K", () => {
  const blends = (role: Listed["role"]): readonly string[] => [
    ...new Set(points.filter((point) => point.role === role).map(({ blend }) => blend)),
  ];

  test("independent: no parameter of the blend saw its listing", () => {
    expect(blends("independent")).toEqual(
      "R-404A R-407A R-407C R-407F R-410A R-438A R-448A R-449A R-507A".split(" "),
    );
    expect(problemsOf(points.filter(({ role }) => role === "independent"))).toEqual([]);
  });

  test("fitted: proves nothing", () => {
    expect(blends("fitted")).toHaveLength(16);
    expect(problemsOf(points.filter(({ role }) => role === "fitted"))).toEqual([]);
  });

  test("older listings of R-32 with R-1234yf, which newer values contradict", () => {
    expect(blends("older")).toEqual(["R-454A", "R-454B", "R-454C"]);
    expect(problemsOf(points.filter(({ role }) => role === "older"))).toEqual([]);
  });

  test("are of all designated blends", () => {
    const listed = new Set(points.map(({ blend }) => blend));
    expect([...listed].sort()).toEqual(
      listBlends()
        .map(({ designation }) => designation)
        .sort(),
    );
  });
});

describe("published glides", () => {
  test("deviate as stated, to 0.01 K", () => {
    expect(glides.map(({ blend }) => blend)).toEqual(
      "R-407C R-448A R-449A R-454B R-454C R-455A R-513A".split(" "),
    );
    expect(problemsOf(glides)).toEqual([]);
  });

  // Both ends of a listed glide are rounded to 0.1 K. R-407C: 0.102 K, its listing is from the 1990s; R-448A: its listed
  // bubble point lies above that of R-449A; R-455A: its listing was fitted with older parameters of R-32 with R-1234yf.
  test("agree within their rounding, but for R-407C, R-448A and R-455A", () => {
    const missed = glides.filter((one) => !(Math.abs(deviationOf(one)) <= 0.1));
    expect(missed.map(({ blend }) => blend)).toEqual(["R-407C", "R-448A", "R-455A"]);
  });
});

test("a blend counts as fitted if the data of one of its pairs says so", () => {
  const folder = new URL("../../data/pairs/", import.meta.url);
  const fits = readdirSync(folder).flatMap((name) => {
    const { between, fittedTo } = JSON.parse(
      readFileSync(new URL(encodeURIComponent(name), folder), "utf8"),
    ) as { readonly between: readonly string[]; readonly fittedTo?: { readonly remark: string } };
    return fittedTo === undefined ? [] : [{ between, to: fittedTo.remark }];
  });
  const fitted = listBlends().filter(({ designation, components }) => {
    const names = components.map(({ fluid }) => fluid.designation);
    const saw = (to: string): boolean => to.split(/[ ,:]+/).includes(designation);
    return fits.some(({ between, to }) => between.every((name) => names.includes(name)) && saw(to));
  });
  // R-427A: the parameter of R-32 with R-143a, an estimate, was chosen by hand with an eye on its listing.
  const byData = [...fitted.map(({ designation }) => designation), "R-427A"];
  const byRole = points.filter(({ role, what }) => role === "fitted" && what === "bubble");
  expect(byRole.map(({ blend }) => blend).sort()).toEqual(byData.sort());
});

afterAll(() => {
  const show = (point: Listed): string => {
    const { blend, what, role, printed, computed, stated } = point;
    const unit = what === "glide" ? "K" : "°C";
    const off = `${deviationOf(point).toFixed(3)} K, stated ${stated}`;
    return `  ${blend} ${what} (${role}): ${computed.toFixed(3)} ${unit}, listed ${printed}: ${off}`;
  };
  console.log(["listings at 101.325 kPa:", ...[...points, ...glides].map(show)].join("\n"));
});
