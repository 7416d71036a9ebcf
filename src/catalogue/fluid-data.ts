/** Where a number comes from: `read` on the page, `recalled` from memory of it, or `computed` from other facts. */
export type FactStatus = "read" | "recalled" | "computed";

/** One fact of a data file. The number is text, so that its digits stay as they were written down. */
export interface Fact {
  /** Digits, such as `369.89` or `70e6`. */
  readonly value: string;
  /** Unit of the value, such as `g/mol`; `1` for a pure number. */
  readonly unit: string;
  /** Key into the bibliography. */
  readonly source: string;
  /** How the number got here. */
  readonly status: FactStatus;
  /** How it was computed, or what else to know. */
  readonly remark?: string;
}

/** Rows of coefficients as text; the columns are those of the same field of {@link Fluid}. */
export type TextRows = readonly (readonly string[])[];

/** What every block of coefficients carries besides its numbers. */
export interface Provenance {
  /** Key into the bibliography. */
  readonly source: string;
  /** How the numbers got here. */
  readonly status: FactStatus;
  /** How they were computed, or what else to know. */
  readonly remark?: string;
}

/** Ideal-gas part of a data file; the forms are explained at {@link IdealPart}. */
export type IdealData = Provenance &
  (
    | {
        readonly form: "alpha0";
        readonly logTau: string;
        readonly power: TextRows;
        readonly planckEinstein: TextRows;
      }
    | {
        readonly form: "cp0";
        readonly constant: string;
        readonly power: TextRows;
        readonly planckEinstein: TextRows;
      }
  );

/**
 * Residual part of a data file. A row of `power` may leave out l (no exponential), a row of `doubleExp` may leave
 * out g and k (both 1).
 */
export interface ResidualData extends Provenance {
  readonly power: TextRows;
  readonly doubleExp?: TextRows;
  readonly gaussian?: TextRows;
  readonly reciprocalBell?: TextRows;
  readonly nonAnalytic?: TextRows;
}

/**
 * A saturation curve published beside an equation: a second route to the same numbers, for tests.
 *
 * With θ = 1 − T/temperature and S = Σ n θ^t, the quantity y (pressure, Pa, or density, mol/m3) is
 * `log`: ln(y/y₀) = S; `log-over-temperature`: ln(y/y₀) = (temperature/T) S; `ratio`: y/y₀ = 1 + S.
 */
export interface CurveData extends Provenance {
  readonly form: "log" | "log-over-temperature" | "ratio";
  /** T at which θ vanishes, K. */
  readonly temperature: string;
  /** y₀ of a pressure curve, Pa. */
  readonly pressure?: string;
  /** y₀ of a density curve, mol/m3. */
  readonly density?: string;
  /** Rows [n, t]. */
  readonly terms: TextRows;
  /** Largest relative deviation from the equation itself, computed: everywhere, and above half the critical temperature. */
  readonly agreement?: { readonly overall: string; readonly aboveHalfCritical?: string };
}

/** What a catalogue file and a reference file have in common. */
interface EquationData {
  /** Designation of ISO 817. */
  readonly designation: string;
  /** Short name of the equation: first author and year. */
  readonly equation: string;
  /** Chemical name. */
  readonly name: string;
  readonly molarMass: Fact;
  readonly gasConstant: Fact;
  readonly reducing: { readonly temperature: Fact; readonly density: Fact };
  readonly critical: { readonly temperature: Fact; readonly density: Fact; readonly pressure: Fact };
  readonly limits: {
    readonly minimumTemperature: Fact;
    readonly maximumTemperature: Fact;
    readonly maximumPressure: Fact;
  };
  readonly acentricFactor: Fact;
  readonly referenceState: "iir" | "nbp";
  readonly ideal: IdealData;
  readonly residual: ResidualData;
  /** Doubts and corrections, in sentences. */
  readonly notes: readonly string[];
}

/** A file of `data/fluids/`: one pure refrigerant with one equation of state. */
export interface FluidData extends EquationData {
  /** Other names it is asked for by. */
  readonly synonyms: readonly string[];
  /** Molecular formula. */
  readonly formula: string;
  /** CAS registry number. */
  readonly cas: string;
  /** Saturation curves published with the equation. */
  readonly curves?: {
    readonly vapourPressure?: CurveData;
    readonly liquidDensity?: CurveData;
    readonly vapourDensity?: CurveData;
  };
}

/** A file of `data/references/`: a designated blend treated as one fluid, a yardstick for tests only. */
export interface ReferenceData extends EquationData {
  /** Rows [designation, mass fraction]. */
  readonly composition: TextRows;
  /** Bubble and dew pressure curves published with the equation. */
  readonly curves: { readonly bubblePressure: CurveData; readonly dewPressure: CurveData };
}
