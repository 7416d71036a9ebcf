import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { listBlends } from "../../../src/catalogue/index.js";
import { ratioOf, slopeBy } from "../../../src/equilibrium/mixture/boundary-path.js";
import {
  type BoundaryPoint,
  criticalConditions,
  type IncipientPoint,
} from "../../../src/equilibrium/mixture/index.js";
import { blendModelOf } from "../../support/mixtures.js";
import { trackWorst } from "../../support/worst.js";

/* No outside source but for the critical points: what a boundary has to be. Limits are the worst seen. */
const worst = trackWorst("boundaries of designated blends");

/** Nearer to the highest temperature or pressure, relative, two points are not promised. */
const tooNear = 1e-5;
/** Nor as near as this to the critical point, where both phases are too alike. */
const isNear = (value: number, critical: number): boolean => Math.abs(value / critical - 1) < 1e-4;
const steps = 100;

const pressureOn = (points: readonly BoundaryPoint[], line: string): number =>
  points.find((each) => each.line === line)!.point.pressure;

/** A quantity of points as a function of another at 0, by Lagrange's polynomial. */
function interpolate(points: readonly (readonly [at: number, value: number])[]): number {
  return points.reduce(
    (sum, [a, value], i) =>
      sum + value * points.reduce((product, [b], j) => (i === j ? product : (product * b) / (b - a)), 1),
    0,
  );
}

describe.each(listBlends().map(({ designation }) => designation))("the boundary of %s", (designation) => {
  const { system, z, envelope, limits } = blendModelOf(designation);
  const { critical, cricondentherm, cricondenbar } = envelope;
  const coldestT = limits.minimumTemperature;
  const temperatures = Array.from(
    { length: steps + 1 },
    (_, k) => coldestT + (k / steps) * (cricondentherm.temperature * (1 - tooNear) - coldestT),
  );

  it("has two points at every temperature and pressure up to its ends, none beyond", () => {
    for (const T of temperatures.filter((each) => !isNear(each, critical.temperature))) {
      const found = envelope.atTemperature(T);
      expect(found, `${T} K`).toHaveLength(2);
      for (const { point } of found) expect(point.temperature).toBe(T);
      if (T >= critical.temperature) continue;
      expect(found.map(({ line }) => line)).toEqual(["bubble", "dew"]);
      // Equal at an azeotrope, to rounding.
      const ratio = pressureOn(found, "bubble") / pressureOn(found, "dew");
      expect(ratio, `${T} K`).toBeGreaterThan(1 - 1e-12);
    }
    const low = pressureOn(envelope.atTemperature(coldestT), "bubble");
    const high = cricondenbar.pressure * (1 - tooNear);
    for (let k = 0; k <= steps; k++) {
      const p = low * (high / low) ** (k / steps);
      if (isNear(p, critical.pressure)) continue;
      const found = envelope.atPressure(p);
      expect(found, `${p} Pa`).toHaveLength(2);
      for (const { point } of found) expect(point.pressure).toBe(p);
      const [one, other] = found.map(({ point }) => point.temperature);
      if (p < critical.pressure) expect(other, `${p} Pa`).toBeGreaterThan(one! * (1 - 1e-12));
    }
    for (const factor of [1 + 1e-9, 1.001, 1.3]) {
      expect(envelope.atTemperature(factor * cricondentherm.temperature)).toHaveLength(0);
      expect(envelope.atPressure(factor * cricondenbar.pressure)).toHaveLength(0);
    }
  });

  it("ends where no point lies higher, at or above the critical point", () => {
    expect(cricondentherm.temperature).toBeGreaterThanOrEqual(critical.temperature);
    expect(cricondenbar.pressure).toBeGreaterThanOrEqual(critical.pressure);
    for (const { point } of envelope.points) {
      const [hotter, above] = [
        point.temperature / cricondentherm.temperature,
        point.pressure / cricondenbar.pressure,
      ];
      worst("temperature above the highest", Math.max(hotter - 1, 0), 1e-12, designation);
      worst("pressure above the highest", Math.max(above - 1, 0), 1e-12, designation);
    }
  });

  it("passes through a critical point, where both conditions vanish and the lines meet", () => {
    const { curvature, skewness } = criticalConditions(system, z, critical.temperature, critical.density);
    worst("curvature at the critical point", Math.abs(curvature), 1e-14, designation);
    worst("skewness at the critical point", Math.abs(skewness), 5e-11, designation);
    // Along ln K of the first component, which changes sign there: three points of each line.
    const { points } = envelope;
    const first = points.findIndex(({ line }) => line === "dew");
    const near = points.slice(first - 3, first + 3).map(({ point }) => point);
    const meeting = (of: (point: IncipientPoint) => number): number =>
      interpolate(near.map((point) => [ratioOf(point, 0), of(point)] as const));
    const T = meeting(({ temperature }) => temperature);
    const p = meeting(({ pressure }) => pressure);
    const rho = meeting(({ density }) => density);
    worst("temperature where the lines meet", Math.abs(T / critical.temperature - 1), 5e-5, designation);
    worst("pressure where the lines meet", Math.abs(p / critical.pressure - 1), 4e-4, designation);
    worst("density where the lines meet", Math.abs(rho / critical.density - 1), 3e-3, designation);
  });

  it("rises as difference quotients of its points do", () => {
    for (const T of temperatures.filter(
      (each) => each > coldestT + 0.1 && each < 0.99 * critical.temperature,
    )) {
      const h = 2e-4 * T;
      const [a, b, here, c, d] = [-2, -1, 0, 1, 2].map((k) => envelope.atTemperature(T + k * h));
      for (const line of ["bubble", "dew"] as const) {
        const p = (points: readonly BoundaryPoint[] | undefined): number =>
          Math.log(pressureOn(points!, line));
        const quotient = (8 * (p(c) - p(b)) - p(d) + p(a)) / (12 * h);
        const { point } = here!.find((each) => each.line === line)!;
        const slope = slopeBy(system, point, 0)!;
        const analytic = slope[z.length + 2]! / slope[z.length + 1]! / T;
        worst(`dp/dT of the ${line} line`, Math.abs(quotient / analytic - 1), 2e-8, `${designation} ${T} K`);
      }
    }
  });
});

describe("critical points of blends", () => {
  /*
   * Lemmon, E. W., J. Phys. Chem. Ref. Data 32 (2003), with the one-fluid equations of these blends: `data/references/`,
   * recalled. One fluid has one critical point, which there is the highest temperature at which liquid and vapour coexist
   * in the mixture model, not its critical point: the two are 0.06 K apart for R-407C, and less than their digits for
   * the others. The pair parameters are that author's too: this tests the recall of both and the solver.
   */
  it.each(["R-404A", "R-407C", "R-410A", "R-507A"])(
    "%s has that of its one-fluid equation",
    (designation) => {
      const text = readFileSync(
        new URL(`../../../data/references/${designation}.json`, import.meta.url),
        "utf8",
      );
      const published = (
        JSON.parse(text) as { critical: Record<"temperature" | "pressure", { value: string }> }
      ).critical;
      const { temperature, pressure } = blendModelOf(designation).envelope.cricondentherm;
      const deviation = Math.abs(temperature - Number(published.temperature.value));
      worst("critical temperature, K", deviation, 2.5e-3, designation);
      worst(
        "critical pressure",
        Math.abs(pressure / Number(published.pressure.value) - 1),
        2e-4,
        designation,
      );
    },
  );
});
