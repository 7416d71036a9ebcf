import { describe, expect, it } from "vitest";
import { steadySeries, trySteadySeries } from "../../../src/field/index.js";
import { InputError } from "../../../src/units/index.js";

const seriesOf = (values: readonly number[], step = 60) =>
  values.map((value, index) => ({ time: step * index, value }));

describe("a logged series", () => {
  it("of independent readings has the standard error of the mean of any textbook", () => {
    // Residuals alternate, so their correlation is negative and all count. Mean 6, line flat by symmetry.
    const values = [5.9, 6.1, 5.9, 6.1, 6.1, 5.9, 6.1, 5.9];
    const { mean, standardUncertainty, drift, steady } = steadySeries({
      samples: seriesOf(values),
      allowedDrift: 1,
    });
    expect(mean).toBeWithin(6, 1e-12);
    expect(Math.abs(drift)).toBeLessThan(1e-12);
    // √(Σr²/(n − 2)/n): two parameters of the line are lost.
    expect(standardUncertainty).toBeWithin(Math.sqrt((8 * 0.01) / 6 / 8), 1e-9);
    expect(steady).toBe("pass");
  });

  it("that drifts is not steady, and one too noisy to say is inconclusive", () => {
    const ramp = [0, 1, 2, 3, 4, 5, 6, 7].map((each) => 4 + each * 0.5);
    expect(steadySeries({ samples: seriesOf(ramp), allowedDrift: 1 })).toMatchObject({ steady: "fail" });
    const noisy = [4, 8, 4, 8, 4, 8];
    expect(steadySeries({ samples: seriesOf(noisy), allowedDrift: 1 }).steady).toBe("inconclusive");
  });

  it("whose neighbours move together counts as fewer readings", () => {
    const slow = Array.from({ length: 40 }, (_, index) => 6 + Math.sin(index / 6));
    const scrambled = slow.map((_, index) => slow[(index * 17) % 40]!);
    const u = (values: readonly number[]) =>
      steadySeries({ samples: seriesOf(values), allowedDrift: 9 }).standardUncertainty;
    expect(u(slow)).toBeGreaterThan(2 * u(scrambled));
  });

  it("does not care when its clock begins", () => {
    const values = [5.9, 6.2, 6.0, 5.7, 6.1, 6.0];
    const late = seriesOf(values).map(({ time, value }) => ({ time: time + 1e9, value }));
    const early = steadySeries({ samples: seriesOf(values), allowedDrift: 1 });
    expect(steadySeries({ samples: late, allowedDrift: 1 }).drift).toBeWithin(early.drift, 1e-6);
  });

  it("is refused where it says nothing", () => {
    const pathsOf = (series: unknown) => {
      const outcome = trySteadySeries(series as never);
      return outcome.ok ? [] : (outcome.error as InputError).problems.map(({ path }) => path);
    };
    expect(pathsOf(undefined)).toEqual([""]);
    expect(pathsOf({ samples: seriesOf([1, 2]), allowedDrift: 0 })).toEqual(["allowedDrift", "samples"]);
    expect(pathsOf({ samples: [...seriesOf([1, 2, 3]), { time: 5, value: Number.NaN }], allowedDrift: 1 })).toEqual([
      "samples[3].value",
      "samples[3].time",
    ]);
  });
});
