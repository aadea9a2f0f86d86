import { elementAt, figureAt, lastOf } from '../../text/element.ts';
/**
 * Standard errors of fitted parameters from the slopes of the model (one row a parameter, one column a reading) and
 * what the readings miss it by: the root of the diagonal of s²·(J W Jᵀ)⁻¹, W being the weights of the readings (1 where absent) and
 * s what is left over by the degrees of freedom, but never less than `leastError`. Infinite where the readings do not
 * determine a parameter.
 */
export function standardErrors(
  slopes: readonly (readonly number[])[],
  misses: readonly number[],
  leastError: number,
  weights: readonly number[] = misses.map(() => 1),
): number[] {
  const freedom = misses.length - slopes.length;
  const left = misses.reduce((sum, miss, index) => sum + figureAt(weights, index) * miss * miss, 0);
  const variance = Math.max(leastError * leastError, freedom > 0 ? left / freedom : 0);
  return inverseDiagonal(information(slopes, weights)).map((one) => Math.sqrt(variance * one));
}

function information(slopes: readonly (readonly number[])[], weights: readonly number[]): number[][] {
  return slopes.map((row) =>
    slopes.map((other) =>
      row.reduce((sum, slope, index) => sum + figureAt(weights, index) * slope * figureAt(other, index), 0),
    ),
  );
}

/**
 * The diagonal of the inverse of a symmetric matrix that is positive or nearly so: for each parameter what is left of
 * its own information once the others have taken theirs (Schur complement), inverted. Infinite where nothing is left.
 */
function inverseDiagonal(matrix: readonly (readonly number[])[]): number[] {
  return matrix.map((information, parameter) => {
    const order = [...matrix.keys()].filter((one) => one !== parameter);
    order.push(parameter);
    const rows = order.map((row) => {
      const from = elementAt(matrix, row);
      return order.map((column) => figureAt(from, column));
    });
    for (const [pivot, upper] of rows.entries()) {
      const here = figureAt(upper, pivot);
      if (!(here > 1e-12)) continue;
      for (const row of rows.slice(pivot + 1)) {
        const factor = figureAt(row, pivot) / here;
        for (let column = pivot; column < rows.length; column++)
          row[column] = figureAt(row, column) - factor * figureAt(upper, column);
      }
    }
    const left = lastOf(lastOf(rows));
    return left > Math.max(1e-12, 1e-7 * figureAt(information, parameter))
      ? 1 / left
      : Number.POSITIVE_INFINITY;
  });
}
