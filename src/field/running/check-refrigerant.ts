import type { InputCheck } from "../../safety/index.js";
import type { Refrigerant } from "../../state/index.js";

/** Records a problem unless there is a refrigerant. */
export function checkRefrigerant(check: InputCheck, path: string, refrigerant: Refrigerant): boolean {
  return check.require(
    typeof refrigerant === "object" && refrigerant !== null && typeof refrigerant.dew === "function",
    path,
    refrigerant,
    "a refrigerant",
  );
}
