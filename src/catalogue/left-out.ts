/** A refrigerant that has a designation but no entry in the catalogue, and why. */
interface LeftOut {
  readonly designation: string;
  /** Continues the sentence "R-14 …". */
  readonly reason: string;
}

const NOT_RECALLED =
  "is left out of the catalogue because the coefficients of its published equation are not at hand";

/** Refrigerants left out on purpose; asking for one gives the reason instead of a bare "unknown". */
export const LEFT_OUT: readonly LeftOut[] = [
  {
    designation: "R-13",
    reason:
      "is left out of the catalogue because the coefficients at hand miss the conditions at the critical point; a wrong digit is likely",
  },
  {
    designation: "R-14",
    reason:
      "is left out of the catalogue because the coefficients at hand miss the critical pressure and its liquid speed of sound turns over at low temperature",
  },
  {
    designation: "R-115",
    reason: "is left out of the catalogue because no formal publication of the equation at hand is known",
  },
  { designation: "R-1123", reason: NOT_RECALLED },
  { designation: "R-1132a", reason: NOT_RECALLED },
  { designation: "R-1224yd(Z)", reason: NOT_RECALLED },
  { designation: "R-1243zf", reason: NOT_RECALLED },
];
