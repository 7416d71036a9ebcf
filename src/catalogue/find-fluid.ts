import { InputError } from "../units/index.js";
import type { Blend } from "./blend.js";
import { UnknownRefrigerantError } from "./errors.js";
import { findBlendIn } from "./find-blend.js";
import type { Fluid } from "./fluid.js";
import { LEFT_OUT } from "./left-out.js";
import { keysOf, nameKey } from "./name-key.js";
import { nearNames } from "./near-names.js";

/** Which of several equations of one refrigerant to take. */
export interface FindOptions {
  /** Short name of the equation, such as `gao-2023`; by default the first listed. */
  readonly equation?: string;
}

/**
 * Finds a fluid of a list by designation, chemical name, CAS number, or formula.
 *
 * Spelling is forgiven (case, hyphens, spaces, brackets: `r1234ZE E`), meaning is not: a name that fits two
 * refrigerants, such as `R-1234ze` or `C4H10`, finds neither.
 *
 * @param fluids - Where to look; of two equations of one refrigerant the first listed is the default.
 * @param name - What to look for.
 * @param blends - Blends that the caller knows: a name that leads to none of the fluids may have meant one of them.
 * @throws {@link UnknownRefrigerantError} `unknown-refrigerant`, with near designations.
 * @throws {@link InputError} `malformed-input` for a name without letters or digits, or an equation the refrigerant
 * does not have.
 */
export function findFluidIn(
  fluids: readonly Fluid[],
  name: string,
  options: FindOptions = {},
  blends: readonly Blend[] = [],
): Fluid {
  if (typeof name !== "string" || nameKey(name) === "") {
    throw new InputError([
      { path: "name", value: name, expected: "a designation, chemical name, formula or CAS number" },
    ]);
  }
  const found = candidates(fluids, name);
  const designations = [...new Set(found.map(({ designation }) => designation))];
  if (designations.length > 1) {
    throw new UnknownRefrigerantError(name, designations, "fits more than one refrigerant");
  }
  const [first] = found;
  if (first === undefined) throw unknown(fluids, blends, name);
  return options.equation === undefined ? first : withEquation(found, options.equation);
}

/** Every equation of the refrigerants that a name fits: by CAS number, else designation, else name, else formula. */
function candidates(fluids: readonly Fluid[], name: string): readonly Fluid[] {
  const cas = name.trim();
  const byCas = fluids.filter((fluid) => fluid.cas !== "" && fluid.cas === cas);
  if (byCas.length > 0) return byCas;
  const key = nameKey(name);
  const keyed = fluids.map((fluid) => ({ fluid, keys: keysOf(fluid) }));
  for (const kind of ["designations", "names", "formulas"] as const) {
    const found = keyed.filter(({ keys }) => keys[kind].includes(key)).map(({ fluid }) => fluid);
    if (found.length > 0) return found;
  }
  return [];
}

function withEquation(found: readonly Fluid[], equation: string): Fluid {
  const match =
    typeof equation === "string"
      ? found.find((fluid) => nameKey(fluid.equation) === nameKey(equation))
      : undefined;
  if (match !== undefined) return match;
  const names = found.map((fluid) => `"${fluid.equation}"`).join(" or ");
  throw new InputError([
    {
      path: "equation",
      value: equation,
      expected: `${names} for ${found[0]?.designation ?? "this refrigerant"}`,
    },
  ]);
}

/** Says as exactly as possible why nothing was found. */
function unknown(fluids: readonly Fluid[], blends: readonly Blend[], name: string): UnknownRefrigerantError {
  const blend = findBlendIn(blends, name);
  if (blend !== undefined) {
    return new UnknownRefrigerantError(name, [], `is the blend ${blend.designation}, not a single fluid`);
  }
  // `HFO-1234ze`, `R1234ze` and `1234ze` all ask for the number, whatever stands before it.
  const withR = nameKey(name).replace(/^[a-z]{0,4}(?=\d)/, "r");
  const isomers = fluids.filter(({ designation }) => isomerless(designation) === withR);
  if (isomers.length > 0) {
    const designations = [...new Set(isomers.map(({ designation }) => designation))];
    return new UnknownRefrigerantError(name, designations, "does not say which isomer is meant");
  }
  const leftOut = LEFT_OUT.find(
    ({ designation }) => nameKey(designation) === withR || isomerless(designation) === withR,
  );
  if (leftOut !== undefined) return new UnknownRefrigerantError(name, [], leftOut.reason);
  // ISO 817: R-400 series zeotropic, R-500 series azeotropic blends, with a capital letter for the composition.
  if (/^r[45]\d\d[a-z]?$/.test(withR)) {
    return new UnknownRefrigerantError(
      name,
      nearNames([], blends, name),
      "is a blend that the catalogue does not hold; blend([...]) takes any composition",
    );
  }
  return new UnknownRefrigerantError(name, nearNames(fluids, blends, name));
}

/** `R-1234ze(E)` → `r1234ze`; undefined for a designation without an isomer letter. */
function isomerless(designation: string): string | undefined {
  const [, stem] = /^(.*)\([EZ]\)$/.exec(designation) ?? [];
  return stem === undefined ? undefined : nameKey(stem);
}
