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
  const left = misses.reduce((sum, miss, index) => sum + weights[index]! * miss * miss, 0);
  const variance = Math.max(leastError * leastError, freedom > 0 ? left / freedom : 0);
  return inverseDiagonal(information(slopes, weights)).map((one) => Math.sqrt(variance * one));
}

function information(slopes: readonly (readonly number[])[], weights: readonly number[]): number[][] {
  return slopes.map((row) =>
    slopes.map((other) =>
      row.reduce((sum, slope, index) => sum + weights[index]! * slope * other[index]!, 0),
    ),
  );
}

/**
 * The diagonal of the inverse of a symmetric matrix that is positive or nearly so: for each parameter what is left of
 * its own information once the others have taken theirs (Schur complement), inverted. Infinite where nothing is left.
 */
function inverseDiagonal(matrix: readonly (readonly number[])[]): number[] {
  return matrix.map((_, parameter) => {
    const order = [...matrix.keys()].filter((one) => one !== parameter);
    order.push(parameter);
    const rows = order.map((row) => order.map((column) => matrix[row]![column]!));
    for (let pivot = 0; pivot + 1 < rows.length; pivot++) {
      const here = rows[pivot]![pivot]!;
      if (!(here > 1e-12)) continue;
      for (let row = pivot + 1; row < rows.length; row++) {
        const factor = rows[row]![pivot]! / here;
        for (let column = pivot; column < rows.length; column++)
          rows[row]![column] = rows[row]![column]! - factor * rows[pivot]![column]!;
      }
    }
    const own = matrix[parameter]![parameter]!;
    const left = rows.at(-1)!.at(-1)!;
    return left > Math.max(1e-12, 1e-7 * own) ? 1 / left : Number.POSITIVE_INFINITY;
  });
}
