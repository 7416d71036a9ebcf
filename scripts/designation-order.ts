/** By number, then by letters: R-32, R-134a, R-1234ze(E); letters before digits (R-E170) come last. */
export function compareDesignations(left: string, right: string): number {
  const key = (designation: string): number =>
    Number(/^R-(\d+)/.exec(designation)?.[1] ?? Number.POSITIVE_INFINITY);
  const difference = key(left) - key(right);
  if (difference !== 0 && !Number.isNaN(difference)) return difference;
  if (left === right) return 0;
  return left < right ? -1 : 1;
}
