import type { Provenance, ResidualData } from "./fluid-data.js";
import type { PairGrade } from "./pair.js";

/** A file of `data/departures/`: a departure function; its tables are those of a fluid's residual part. */
export interface DepartureData {
  /** Name of the file too. */
  readonly name: string;
  readonly residual: ResidualData;
}

/** A number as text, with its unit. */
interface Quantity {
  readonly value: string;
  readonly unit: string;
}

/** Reducing functions of a data file; the forms are explained at {@link PairReducing}. */
export type ReducingData = Provenance &
  (
    | {
        readonly form: "kunz-wagner";
        readonly betaT: string;
        readonly gammaT: string;
        readonly betaV: string;
        readonly gammaV: string;
      }
    | {
        readonly form: "lemmon-jacobsen";
        /** In K. */
        readonly zeta: Quantity;
        /** In dm3/mol, as printed. */
        readonly xi: Quantity;
      }
  );

/** Relative deviation of bubble and dew pressures, as text, and on what it rests. */
interface DeviationData {
  readonly relative: string;
  readonly basis: string;
}

/** A file of `data/pairs/`. */
export interface PairData {
  readonly between: readonly [string, string];
  readonly grade: PairGrade;
  readonly reducing: ReducingData;
  /** Factor, and name of a file of `data/departures/`. */
  readonly departure?: Provenance & { readonly factor: string; readonly function: string };
  /** What a regression used. */
  readonly fittedTo?: Provenance;
  readonly deviation: DeviationData;
  readonly notes: readonly string[];
}

/** A file of `data/blends/`. */
export interface BlendData {
  readonly designation: string;
  readonly synonyms: readonly string[];
  readonly components: readonly {
    /** Designation. */
    readonly fluid: string;
    readonly massFraction: string;
    readonly tolerance?: { readonly above: string; readonly below: string };
  }[];
  /** Where the mass fractions are from; the first is cited first. */
  readonly composition: readonly Provenance[];
  /** Where the tolerances are from, if there are any. */
  readonly tolerances?: Provenance;
  readonly notes: readonly string[];
}

/** The file `data/mixing/class-values.json`. */
export interface ClassData extends Provenance {
  readonly about: string;
  readonly classes: readonly { readonly name: string; readonly fluids: readonly string[] }[];
  readonly estimates: readonly {
    /** Names of both classes, in any order. */
    readonly between: readonly [string, string];
    /** One number of the form; the others are 1 in the first, and there are no others in the second. */
    readonly reducing:
      | { readonly form: "kunz-wagner"; readonly gammaT: string }
      | { readonly form: "lemmon-jacobsen"; readonly zeta: string; readonly xi: string };
    /** How many pairs the spread is from, and what it is, relative. */
    readonly tested?: { readonly pairs: string; readonly rms: string };
    readonly deviation: DeviationData;
    readonly remark?: string;
  }[];
  readonly notes: readonly string[];
}
