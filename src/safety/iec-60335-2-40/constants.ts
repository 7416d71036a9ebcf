import data from "../../../data/safety/iec-60335-2-40.json" with { type: "json" };

/** Editions of IEC 60335-2-40 whose rule for rooms without ventilation is known here. */
export type IecEdition = "4" | "5.0" | "5.1" | "6";

/** How the indoor unit is mounted. */
export type Mounting = "floor" | "window" | "wall" | "ceiling";

/** Formula that limits the charge: the square-root rule, or the linear rule of edition 5.1 and later. */
export type ChargeBranch = "root" | "linear";

/** Every edition, for lists and forms. */
export const IEC_EDITIONS: readonly IecEdition[] = ["4", "5.0", "5.1", "6"];

/** Every mounting, for lists and forms. */
export const MOUNTINGS: readonly Mounting[] = ["floor", "window", "wall", "ceiling"];

/** Room volumes, m3, that give the charge bands when multiplied by the lower flammability limit. */
interface BandFactors {
  readonly m1: number;
  readonly m2: number;
  readonly m3: number;
}

/** The constants of IEC 60335-2-40 as kept in `data/safety/iec-60335-2-40.json`. */
export interface IecConstants {
  readonly standard: string;
  readonly clause: string;
  readonly editions: Readonly<
    Record<
      IecEdition,
      {
        readonly title: string;
        readonly branches: readonly ChargeBranch[];
        readonly class2LBands: boolean;
        readonly releaseOffset: boolean;
      }
    >
  >;
  readonly bands: { readonly general: BandFactors; readonly class2L: BandFactors };
  readonly linearSafetyFactor: { readonly value: number };
  readonly minimumMolarMass: { readonly value: number };
  readonly releaseHeight: {
    readonly mounting: Readonly<Record<Mounting, number>>;
    readonly reference: Readonly<Record<Mounting, number>>;
    readonly lowest: number;
    readonly unusualAbove: number;
  };
  readonly altitudeFactor: {
    readonly rule: string;
    readonly edition: string;
    readonly table: readonly (readonly [elevation: number, factor: number])[];
  };
}

/** The constants, typed. A function, so that a bundle that does not ask leaves the data out. */
export function iecConstants(): IecConstants {
  // JSON knows no literal types and no tuples; tests/safety/iec-60335-2-40.test.ts checks the values.
  return data as unknown as IecConstants;
}
