import type { IecEdition, Mounting } from "../../../safety/index.js";
import type {
  Area,
  GaugePressure,
  Length,
  LinearDensity,
  Mass,
  Temperature,
  Torque,
} from "../../../units/index.js";
import type { Stated } from "./stated.js";

/** What the room rule needs. */
export interface JobRoom {
  /** Edition of IEC 60335-2-40 that is followed. */
  readonly edition: IecEdition;
  /** Floor area. */
  readonly floorArea: Stated<Area>;
  /** How the indoor unit is mounted. */
  readonly mounting: Mounting;
  /** Height of the room. */
  readonly height?: Stated<Length>;
  /** Distance from the underside of the unit up to where refrigerant can escape. */
  readonly releaseOffset?: Stated<Length>;
}

/** Flared joints and how they were tightened. */
export interface JobJoints {
  /** How far the wrench may be off, per cent of what it shows. */
  readonly wrenchPercent: number;
  /** The joints. */
  readonly list: readonly JobJoint[];
}

/** One of them. */
export interface JobJoint {
  /** Which one, such as `indoor unit, gas side`. */
  readonly at: string;
  /** Outer diameter of the tube. */
  readonly outerDiameter: Stated<Length>;
  /** Torque that was applied. */
  readonly torque: Stated<Torque>;
  /** Lowest and highest torque of the manual; where it says nothing, the printed lists are compared. */
  readonly manual?: { readonly minimum: Stated<Torque>; readonly maximum: Stated<Torque> };
}

/** The line set and what was weighed in for it. */
export interface JobLineSet {
  /** Length, one way. */
  readonly length: Stated<Length>;
  /** Length that the nameplate covers, by the manual. */
  readonly chargeFreeLength: Stated<Length>;
  /** Extra charge per metre, by the manual. */
  readonly chargePerMetre: Stated<LinearDensity>;
  /** Longest line set allowed, by the manual. */
  readonly maximumLength: Stated<Length>;
  /** The liquid line. */
  readonly liquidLine: { readonly outerDiameter: Stated<Length>; readonly wall: Stated<Length> };
  /** Temperature of the liquid, for the most that the bore can hold. */
  readonly liquidTemperature: Stated<Temperature>;
  /** What was weighed in beyond the nameplate. */
  readonly added: Stated<Mass>;
  /** Name of the scale. */
  readonly scale: string;
  /** How far from the computed charge it may be, by the manual. */
  readonly tolerance: Stated<Mass>;
}

/** Refrigerant weighed in from a cylinder. */
export interface JobCharge {
  /** Name of the scale. */
  readonly scale: string;
  /** What the scale showed with the cylinder on it, before. */
  readonly before: Stated<Mass>;
  /** And after. */
  readonly after: Stated<Mass>;
  /** What was to be weighed in. */
  readonly wanted: Stated<Mass>;
  /** How far from it may be, by the manual. */
  readonly tolerance: Stated<Mass>;
  /** What left the cylinder and stayed in the hose; 0 where the hose was emptied into the system. */
  readonly hoseHoldUp: Stated<Mass>;
  /** Of the cylinder. */
  readonly cylinderTemperature: Stated<Temperature>;
  /** How it left the cylinder. */
  readonly drawnAs: "liquid" | "vapour";
}

/** The stop valves are opened, and the joints are searched for leaks under refrigerant. */
export interface JobOpening {
  /** Name of the gauge. */
  readonly gauge: string;
  /** What it shows with the valves open. */
  readonly pressure: Stated<GaugePressure>;
  /** How the leaks were looked for. */
  readonly search: {
    /** Smallest leak that the method sees for sure, in a year. */
    readonly seenPerYear: Stated<Mass>;
    /** Smallest leak that it has to see, by the manual or the code that is followed, in a year. */
    readonly requiredPerYear: Stated<Mass>;
    /** Joints that were searched. */
    readonly joints: number;
    /** Joints that leak. */
    readonly leaks: number;
  };
}
