import type { InputCheck, LocalAtmosphere } from "../../units/index.js";

/** Records what is wrong with the air pressure of a site; true when it can be used. */
export function checkAtmosphere(check: InputCheck, path: string, atmosphere: LocalAtmosphere): boolean {
  const pressure = check.positive(`${path}.pressure`, atmosphere?.pressure);
  const uncertainty = check.notNegative(`${path}.standardUncertainty`, atmosphere?.standardUncertainty);
  if (!(pressure && uncertainty)) return false;
  return check.require(
    typeof atmosphere?.because === "string",
    `${path}.because`,
    atmosphere?.because,
    "where the air pressure is from, in words, as localAtmosphere says it",
  );
}
