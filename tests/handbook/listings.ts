import { readFileSync } from "node:fs";
import { glide, type Refrigerant, refrigerant } from "../../src/state/index.js";
import { atmosphere } from "./named-values.js";
import type { Row } from "./rows.js";

/** What a listing says about a blend's parameters, as explained in `listings.json`. */
export type ListingRole = "independent" | "fitted" | "older";

/** A listed temperature beside what Dewline gives. */
export interface Listed {
  readonly blend: string;
  readonly role: ListingRole;
  readonly what: "bubble" | "dew" | "glide";
  /** The digits: °C for a point, K for a glide. */
  readonly printed: string;
  /** In the unit of the print. */
  readonly computed: number;
  /** Computed less listed as it was stated when the parameters were settled, K. */
  readonly stated: string;
  readonly source: string;
  readonly status: Row["status"];
  readonly remark?: string;
}

interface Point {
  readonly listed: string;
  readonly deviation: string;
}

interface Listing {
  readonly blend: string;
  readonly role: ListingRole;
  readonly source: string;
  readonly bubble: Point;
  readonly dew: Point;
  readonly remark?: string;
}

interface ListingsFile {
  readonly sources: Readonly<Record<string, { readonly text: string; readonly status: Row["status"] }>>;
  readonly entries: readonly Listing[];
  readonly glides: readonly (Point & Pick<Listing, "blend" | "source">)[];
}

/** 0 °C, K. */
const zeroCelsius = 273.15;

/** Every listed bubble and dew point. */
export function listedPoints(): readonly Listed[] {
  const file = readListings();
  return file.entries.flatMap((entry) => {
    const asked = refrigerant(entry.blend);
    return (["bubble", "dew"] as const).map((what): Listed => {
      const { temperature } = asked[what]({ pressure: atmosphere });
      return listed(file, entry, what, entry[what], temperature - zeroCelsius);
    });
  });
}

/** The glides that are compared; a blend's role is that of its listing, unless its glide comes from elsewhere. */
export function listedGlides(): readonly Listed[] {
  const file = readListings();
  return file.glides.map((point) => {
    const entry = file.entries.find(({ blend }) => blend === point.blend);
    if (entry === undefined) throw new Error(`no listing of ${point.blend}`);
    return listed(
      file,
      { ...entry, source: point.source },
      "glide",
      point,
      glideOf(refrigerant(entry.blend)),
    );
  });
}

/** True if the temperature of a bubble or dew row at the standard atmosphere is one a parameter was fitted to. */
export function isFittedTo({ fluid, kind, inputs, expected }: Row): boolean {
  if (kind !== "bubble" && kind !== "dew") return false;
  const { temperature } = expected;
  if (temperature === undefined || inputs["pressure"] !== atmosphere) return false;
  const ofBlend = readListings().entries.filter(({ blend, role }) => blend === fluid && role === "fitted");
  return ofBlend.some((entry) => Math.abs(Number(entry[kind].listed) + zeroCelsius - temperature) < 1e-6);
}

function listed(
  { sources }: ListingsFile,
  { blend, role, source, remark }: Listing,
  what: Listed["what"],
  point: Point,
  computed: number,
): Listed {
  const from = sources[source];
  if (from === undefined) throw new Error(`no source ${source}`);
  return {
    ...{ blend, role, what, computed, printed: point.listed, stated: point.deviation },
    source: from.text,
    status: from.status,
    ...(remark === undefined ? {} : { remark }),
  };
}

function glideOf(asked: Refrigerant): number {
  return glide(asked, { pressure: atmosphere }).glide;
}

let file: ListingsFile | undefined;

function readListings(): ListingsFile {
  file ??= JSON.parse(readFileSync(new URL("listings.json", import.meta.url), "utf8")) as ListingsFile;
  return file;
}
