import { describe, expect, it } from "vitest";
import { decide, tryDecide, worstVerdict } from "../../../src/field/index.js";
import { InputError } from "../../../src/units/index.js";

describe("decision with uncertainty", () => {
  it("counts the edges of the guard bands as stated: inside passes, outside has to be beyond", () => {
    const at = (value: number) => decide(value, 1, { minimum: 4, maximum: 8 }).verdict;
    expect([2.99, 3, 4.99, 5, 7, 7.01, 9, 9.01].map(at)).toEqual([
      "fail",
      "inconclusive",
      "inconclusive",
      "pass",
      "pass",
      "inconclusive",
      "inconclusive",
      "fail",
    ]);
  });

  it("takes one limit alone", () => {
    expect(decide(60, 5, { maximum: 66.7 }).verdict).toBe("pass");
    expect(decide(60, 5, { minimum: 66.7 }).verdict).toBe("fail");
  });

  it("says when the instrument can never confirm the limits, but can still refute them", () => {
    const decision = decide(6, 3, { minimum: 4, maximum: 8 }, { quantity: "superheat", unit: "K" });
    expect(decision).toMatchObject({ verdict: "inconclusive", canPass: false });
    expect(decision.because).toMatch(/superheat 6\.0 ± 3\.0 K.*4 to 8 K.*cannot be confirmed/);
    expect(decide(20, 3, { minimum: 4, maximum: 8 })).toMatchObject({ verdict: "fail", canPass: false });
    expect(decide(6, 2, { minimum: 4, maximum: 8 })).toMatchObject({ verdict: "pass", canPass: true });
  });

  it("refuses nonsense, all of it at once", () => {
    const outcome = tryDecide(Number.NaN, -1, { minimum: 3, maximum: 2 });
    expect(outcome.ok).toBe(false);
    if (outcome.ok) return;
    expect((outcome.error as InputError).problems.map(({ path }) => path)).toEqual([
      "value",
      "expandedUncertainty",
      "limits.minimum",
    ]);
    expect(() => decide(1, 1, {})).toThrow(InputError);
    expect(() => decide(1, 1, { minimum: Number.NaN })).toThrow(InputError);
  });
});

describe("several verdicts together", () => {
  it("are as bad as the worst", () => {
    expect(worstVerdict(["pass", "pass"])).toBe("pass");
    expect(worstVerdict(["pass", "inconclusive"])).toBe("inconclusive");
    expect(worstVerdict(["inconclusive", "fail", "pass"])).toBe("fail");
    expect(worstVerdict([])).toBe("inconclusive");
  });
});
