import { type Length, OutOfRangeError } from "../../units/index.js";
import { iecConstants } from "./constants.js";

/**
 * Factor by which the minimum area grows with altitude, interpolated linearly in the table.
 *
 * @param elevation - Above sea level, 0 to 3200 m.
 * @throws {@link OutOfRangeError} `out-of-range` outside the table, NaN included.
 * @source UL/CSA 60335-2-40, 3rd edition (2019); table in `data/safety/iec-60335-2-40.json`
 */
export function altitudeFactor(elevation: Length): number {
  const { rule, table } = iecConstants().altitudeFactor;
  const minimum = table[0]![0];
  const maximum = table[table.length - 1]![0];
  if (!(elevation >= minimum && elevation <= maximum)) {
    throw new OutOfRangeError({
      quantity: "elevation",
      value: elevation,
      minimum,
      maximum,
      unit: "m",
      subject: `the altitude factor of ${rule}`,
    });
  }
  const upper = Math.max(
    table.findIndex(([height]) => elevation <= height),
    1,
  );
  const [lowHeight, lowFactor] = table[upper - 1]!;
  const [highHeight, highFactor] = table[upper]!;
  return lowFactor + ((highFactor - lowFactor) * (elevation - lowHeight)) / (highHeight - lowHeight);
}
