import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { refrigerant, type SinglePhaseState } from "../../src/state/index.js";
import { trackWorst } from "../support/worst.js";
import { lastDigit } from "./printed.js";

/*
 * GOST R ISO 17584-2015, Refrigerant properties, table 34: R-404A on its bubble and dew lines from 0.01 to 0.08 MPa, read.
 * Temperatures and every other column are met by the blend from its components in every digit, as they are not by its
 * equation as one fluid; so the table is of this mixture model. Nothing of it was fitted by us.
 */
interface PrintedRow {
  readonly id: string;
  readonly kind: "bubble" | "dew";
  readonly source: string;
  readonly inputs: { readonly pressure: number };
  readonly raw: Readonly<Record<string, number>>;
}

const rows = (
  JSON.parse(readFileSync(new URL("R-404A.json", import.meta.url), "utf8")) as readonly PrintedRow[]
).filter(({ source }) => source.includes("ISO 17584"));

/** Columns by their heads, in the units of the print, and their decimals on the bubble and the dew line, zeros too. */
const columns: Readonly<
  Record<string, readonly [value: (state: SinglePhaseState) => number, bubble: number, dew: number]>
> = {
  T_C: [({ temperature }) => temperature - 273.15, 2, 2],
  rho: [({ density }) => density, 1, 3],
  u: [({ internalEnergy }) => internalEnergy / 1e3, 2, 2],
  h: [({ enthalpy }) => enthalpy / 1e3, 2, 2],
  s: [({ entropy }) => entropy / 1e3, 4, 4],
  cv: [({ cv }) => cv / 1e3, 4, 4],
  cp: [({ cp }) => cp / 1e3, 4, 4],
  w: [({ speedOfSound }) => speedOfSound, 1, 2],
  jt_K_per_MPa: [({ jouleThomson }) => jouleThomson * 1e6, 4, 2],
};

const track = trackWorst("R-404A from its components and ISO 17584, units of the last digit");
const asked = refrigerant("R-404A", { referenceState: "iir" });

test("the table has ten rows of nine values", () => {
  expect(rows.map(({ raw }) => Object.keys(raw).length - 1)).toEqual(Array(10).fill(9));
});

test.each(rows)("$id is met in every digit", ({ id, kind, inputs, raw }) => {
  const state = kind === "bubble" ? asked.bubble(inputs).liquid : asked.dew(inputs).vapour;
  for (const [head, [value, ...decimals]] of Object.entries(columns)) {
    const printed = (raw[head] ?? Number.NaN).toFixed(decimals[kind === "bubble" ? 0 : 1]);
    const off = Math.abs(value(state) - Number(printed)) / lastDigit(printed);
    track(`${kind} line`, off, 0.5, `${id} ${head}`);
  }
});
