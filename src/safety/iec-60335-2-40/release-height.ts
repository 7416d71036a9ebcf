import { InputCheck, type Length } from "../../units/index.js";
import { IEC_EDITIONS, type IecEdition, iecConstants, MOUNTINGS, type Mounting } from "./constants.js";

/**
 * Release height h0: by mounting; from edition 5.1 on max(reference height + offset, 0.6 m).
 *
 * @param edition - Edition to follow.
 * @param mounting - How the indoor unit is mounted.
 * @param offset - From the underside of the unit up to the opening, m; edition 5.1 and later only.
 * @throws {@link InputError} `malformed-input`.
 * @source heights in `data/safety/iec-60335-2-40.json`
 */
export function releaseHeight(edition: IecEdition, mounting: Mounting, offset?: Length): Length {
  const check = new InputCheck();
  check.oneOf("edition", edition, IEC_EDITIONS);
  check.oneOf("mounting", mounting, MOUNTINGS);
  check.finish();
  const { editions, releaseHeight: heights } = iecConstants();
  if (offset !== undefined) {
    check.notNegative("releaseOffset", offset);
    check.require(
      editions[edition].releaseOffset,
      "releaseOffset",
      offset,
      `nothing: edition ${edition} fixes the height by mounting alone`,
    );
    check.finish();
  }
  if (!editions[edition].releaseOffset) return heights.mounting[mounting];
  return Math.max(heights.reference[mounting] + (offset ?? 0), heights.lowest);
}
