/**
 * Solves A x = b in place by elimination with row exchange: `b` becomes x, `A` (row by row, n × n) is used up.
 *
 * Rows are scaled by their largest entry when pivots are chosen: equations of chemical potentials and of pressure stand in
 * one system. Returns false where the matrix is singular.
 */
export function solveLinear(A: Float64Array, b: Float64Array, n: number): boolean {
  for (let column = 0; column < n; column++) {
    let pivot = -1;
    let best = 0;
    for (let row = column; row < n; row++) {
      let size = 0;
      for (let k = column; k < n; k++) size = Math.max(size, Math.abs(A[row * n + k]!));
      const candidate = size === 0 ? 0 : Math.abs(A[row * n + column]!) / size;
      if (candidate > best) {
        best = candidate;
        pivot = row;
      }
    }
    if (pivot < 0) return false;
    if (pivot !== column) {
      for (let k = column; k < n; k++) {
        const kept = A[column * n + k]!;
        A[column * n + k] = A[pivot * n + k]!;
        A[pivot * n + k] = kept;
      }
      const kept = b[column]!;
      b[column] = b[pivot]!;
      b[pivot] = kept;
    }
    const scale = 1 / A[column * n + column]!;
    for (let row = column + 1; row < n; row++) {
      const factor = A[row * n + column]! * scale;
      if (factor === 0) continue;
      for (let k = column + 1; k < n; k++) A[row * n + k]! -= factor * A[column * n + k]!;
      b[row]! -= factor * b[column]!;
    }
  }
  for (let row = n - 1; row >= 0; row--) {
    let sum = b[row]!;
    for (let k = row + 1; k < n; k++) sum -= A[row * n + k]! * b[k]!;
    b[row] = sum / A[row * n + row]!;
    if (!Number.isFinite(b[row]!)) return false;
  }
  return true;
}
