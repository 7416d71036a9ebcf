/** Up to here a product of n factors is quicker than `**`. */
const longestProduct = 16;

/** x^n for small whole n ≥ 0; `x ** n` costs twenty times as much. Other exponents fall back to `**`. */
export function integerPower(x: number, n: number): number {
  switch (n) {
    case 0:
      return 1;
    case 1:
      return x;
    case 2:
      return x * x;
    case 3:
      return x * x * x;
    case 4: {
      const square = x * x;
      return square * square;
    }
    default: {
      if (!(n > 4 && n <= longestProduct && Number.isInteger(n))) return x ** n;
      let power = x * x * x * x;
      for (let k = 4; k < n; k++) power *= x;
      return power;
    }
  }
}
