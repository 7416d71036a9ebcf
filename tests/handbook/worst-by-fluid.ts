import type { Comparison } from "./comparisons.js";

/** A short table for the end of a test run: how near each fluid comes to what its sources allow, and where. */
export function worstByFluid(comparisons: readonly Comparison[]): string {
  const share = ({ deviation, allowed }: Comparison): number => Math.abs(deviation) / allowed;
  const groups = new Map<string, Comparison[]>();
  for (const comparison of comparisons) {
    const name = `${comparison.fluid} ${comparison.equation}`;
    const group = groups.get(name);
    if (group === undefined) groups.set(name, [comparison]);
    else group.push(comparison);
  }
  const lines = [...groups].map(([name, group]) => {
    const worst = group.reduce((left, right) => (share(right) > share(left) ? right : left));
    const percent = `${(100 * share(worst)).toFixed(0)} %`.padStart(6);
    return `  ${name.padEnd(26)}${String(group.length).padStart(5)} values,${percent} at ${worst.id} ${worst.property}`;
  });
  return ["tables in print, worst deviation as a share of what the source allows:", ...lines].join("\n");
}
