/**
 * Solves J x = b in place for a matrix whose columns are dominated by their diagonals, so that no pivoting is needed.
 * Source: Gauss; such matrices keep their dominance through the elimination
 */
export function solveDominant(n: number, matrix: Float64Array, x: Float64Array): void {
  if (n === 1) {
    x[0] = x[0]! / matrix[0]!;
    return;
  }
  if (n === 2) {
    const a = matrix[0]!;
    const b = matrix[1]!;
    const c = matrix[2]!;
    const d = matrix[3]!;
    const determinant = a * d - b * c;
    const first = x[0]!;
    const second = x[1]!;
    x[0] = (d * first - b * second) / determinant;
    x[1] = (a * second - c * first) / determinant;
    return;
  }
  eliminate(n, matrix, x);
}

function eliminate(n: number, matrix: Float64Array, x: Float64Array): void {
  for (let k = 0; k < n; k += 1) {
    const pivot = matrix[k * n + k]!;
    for (let i = k + 1; i < n; i += 1) {
      const factor = matrix[i * n + k]! / pivot;
      if (factor === 0) continue;
      for (let j = k + 1; j < n; j += 1) matrix[i * n + j] = matrix[i * n + j]! - factor * matrix[k * n + j]!;
      x[i] = x[i]! - factor * x[k]!;
    }
  }
  for (let i = n - 1; i >= 0; i -= 1) {
    let sum = x[i]!;
    for (let j = i + 1; j < n; j += 1) sum -= matrix[i * n + j]! * x[j]!;
    x[i] = sum / matrix[i * n + i]!;
  }
}
