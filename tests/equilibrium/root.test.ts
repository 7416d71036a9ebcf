import { describe, expect, it, test } from "vitest";
import { findRoot, type Sample } from "../../src/equilibrium/root.js";

interface Search {
  readonly root: number;
  /** Where the function was looked at, in order. */
  readonly visited: readonly number[];
}

/** Runs a search over a function and its slope and keeps where it looked. */
function search(
  value: (x: number) => number,
  slope: (x: number) => number,
  [low, high, start]: readonly [number, number, number],
): Search {
  const visited: number[] = [];
  const sample = (x: number, out: Sample): void => {
    visited.push(x);
    out.value = value(x);
    out.slope = slope(x);
  };
  return { root: findRoot(sample, low, high, start), visited };
}

describe("findRoot", () => {
  test.each<[what: string, f: (x: number) => number, slope: (x: number) => number, root: number]>([
    ["a straight line", (x) => 3 * (x - 1.7), () => 3, 1.7],
    ["a parabola's branch", (x) => x * x - 2, (x) => 2 * x, Math.SQRT2],
    [
      "one that is flat on both sides",
      (x) => Math.tanh(200 * (x - 1.3)),
      (x) => 200 / Math.cosh(200 * (x - 1.3)) ** 2,
      1.3,
    ],
    ["one that is flat at its root", (x) => (x - 1.3) ** 3, (x) => 3 * (x - 1.3) ** 2, 1.3],
    [
      "one that is steep at its root",
      (x) => Math.cbrt(x - 1.3),
      (x) => 1 / (3 * Math.cbrt(x - 1.3) ** 2),
      1.3,
    ],
    ["an exponential", (x) => Math.exp(8 * x) - 100, (x) => 8 * Math.exp(8 * x), Math.log(100) / 8],
    ["one with a kink", (x) => (x < 1.3 ? 1e-3 : 1e3) * (x - 1.3), (x) => (x < 1.3 ? 1e-3 : 1e3), 1.3],
    ["one whose slope is unknown", (x) => x ** 5 - 2, () => Number.NaN, 2 ** 0.2],
    ["one whose slope has the wrong sign", (x) => x ** 5 - 2, () => -1, 2 ** 0.2],
  ])("finds the root of %s from anywhere, looking nowhere outside", (_, f, slope, root) => {
    for (let start = 0; start <= 3; start += 0.05) {
      const found = search(f, slope, [0.1, 2.9, start]);
      // The cubic is below the smallest double within 1e-108 of its root, but its values shrink with the third power.
      expect(Math.abs(found.root - root), `from ${start}`).toBeLessThan(1e-9);
      expect(Math.min(...found.visited)).toBeGreaterThanOrEqual(0.1);
      expect(Math.max(...found.visited)).toBeLessThanOrEqual(2.9);
      expect(found.visited.length).toBeLessThanOrEqual(200);
      expect(found.root).toBe(found.visited[found.visited.length - 1]);
    }
  });

  it("takes few steps where Newton's method is at home", () => {
    const { visited } = search((x) => Math.exp(x) - 2, Math.exp, [0, 5, 0.7]);
    expect(visited.length).toBeLessThanOrEqual(5);
  });

  test.each([
    [1, 3],
    [4, 3],
    [1, 1],
    [4, 4],
  ])("finds a root at the end %d, started at %d", (end, start) => {
    const { root } = search(
      (x) => x - end,
      () => 1,
      [1, 4, start],
    );
    expect(root).toBe(end);
  });

  it("says on which side the root lies when it lies outside", () => {
    for (const start of [1, 2, 3.999, 4, -7, 12]) {
      expect(
        search(
          (x) => x,
          () => 1,
          [1, 4, start],
        ).root,
      ).toBe(Number.NEGATIVE_INFINITY);
      expect(
        search(
          (x) => x - 5,
          () => 1,
          [1, 4, start],
        ).root,
      ).toBe(Number.POSITIVE_INFINITY);
      expect(search((x) => Math.exp(x), Math.exp, [1, 4, start]).root).toBe(Number.NEGATIVE_INFINITY);
      expect(
        search(
          (x) => -Math.exp(-x),
          (x) => Math.exp(-x),
          [1, 4, start],
        ).root,
      ).toBe(Number.POSITIVE_INFINITY);
    }
  });

  it("takes a root beyond an end by rounding for one at the end, and no farther one", () => {
    for (const [beyond, low, high] of [
      [1e-15, 1, 4],
      [1e-12, 1, 4],
      [9e-11, 1, 4],
    ] as const) {
      expect(
        search(
          (x) => x - low * (1 - beyond),
          () => 1,
          [low, high, 2],
        ).root,
      ).toBe(low);
      expect(
        search(
          (x) => x - high * (1 + beyond),
          () => 1,
          [low, high, 2],
        ).root,
      ).toBe(high);
    }
    expect(
      search(
        (x) => x - (1 - 1e-9),
        () => 1,
        [1, 4, 2],
      ).root,
    ).toBe(Number.NEGATIVE_INFINITY);
    expect(
      search(
        (x) => x - 4 * (1 + 1e-9),
        () => 1,
        [1, 4, 2],
      ).root,
    ).toBe(Number.POSITIVE_INFINITY);
  });

  it("turns back where the function is infinite, whose slope means nothing", () => {
    const cut = (x: number): number => (x > 2 ? Number.POSITIVE_INFINITY : x - 1.3);
    for (const start of [0.1, 1, 1.9, 2.1, 2.9]) {
      const found = search(cut, (x) => (x > 2 ? Number.NaN : 1), [0.1, 2.9, start]);
      expect(found.root).toBeWithin(1.3, 1e-15);
    }
  });

  it("ends at a jump over zero, next to it, when there is no root", () => {
    const { root, visited } = search(
      (x) => (x < 1.3 ? -1 : 1),
      () => 0,
      [0.1, 2.9, 2],
    );
    expect(root).toBeWithin(1.3, 1e-15);
    expect(visited.length).toBeLessThanOrEqual(80);
  });

  it("ends on a function that is no number", () => {
    const { root, visited } = search(
      () => Number.NaN,
      () => Number.NaN,
      [0.1, 2.9, 2],
    );
    expect(Number.isFinite(root)).toBe(false);
    expect(visited.length).toBeLessThanOrEqual(200);
  });

  it("stops in the noise of the function", () => {
    // Noise of 1e-13 on a slope of one: no step gets below it.
    let count = 0;
    const noisy = (x: number): number => x - 1.3 + 1e-13 * Math.sin(1e5 * ++count);
    const { root, visited } = search(noisy, () => 1, [0.1, 2.9, 2]);
    expect(Math.abs(root - 1.3)).toBeLessThan(1e-12);
    expect(visited.length).toBeLessThan(60);
  });

  it("finds a root at zero between ends of both signs", () => {
    for (const start of [-0.9, -0.2, 0.4, 1.7]) {
      expect(Math.abs(search((x) => Math.sinh(x), Math.cosh, [-1, 2, start]).root)).toBeLessThan(1e-15);
    }
  });
});
