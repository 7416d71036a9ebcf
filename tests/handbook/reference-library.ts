import { readFileSync } from "node:fs";
import {
  iceSublimationPressure,
  waterSaturationPressure,
  waterSaturationTemperature,
} from "../../src/field/index.js";
import { refrigerant } from "../../src/state/index.js";
import { saturationValue, stateValue } from "./named-values.js";

/** One number recorded from the reference library beside what Dewline gives, both SI. */
export interface Recorded {
  readonly substance: "ammonia" | "water";
  readonly group: string;
  readonly where: string;
  readonly property: string;
  /** The digits. */
  readonly printed: string;
  readonly computed: number;
}

/** Inputs are numbers, recorded values are text. */
type Entry = Readonly<Record<string, number | string>>;
interface Recording {
  readonly source: string;
}

/** Package and version that the numbers of a substance come from. */
export function recordingSource(substance: "ammonia" | "water"): string {
  return (read(substance) as Recording).source;
}

/** Every number that was recorded of ammonia: single-phase states, then saturation. */
export function ammoniaRecorded(): readonly Recorded[] {
  const { states, saturation } = read("ammonia") as Record<"states" | "saturation", readonly Entry[]>;
  const asked = refrigerant("R-717", { equation: "tillner-roth-1993" });
  return [
    ...states.flatMap((entry) => {
      const [temperature, density] = [Number(entry["temperature"]), Number(entry["density"])];
      const state = asked.state({ temperature, density });
      if (state.phase === "two-phase") throw new Error(`two phases at ${temperature} K, ${density} kg/m3`);
      return recorded(entry, { substance: "ammonia", group: state.phase }, (property) =>
        stateValue(state, property),
      );
    }),
    ...saturation.flatMap((entry) => {
      const point = asked.saturation({ temperature: Number(entry["temperature"]) });
      return recorded(entry, { substance: "ammonia", group: "saturation" }, (property) =>
        saturationValue(point, property),
      );
    }),
  ];
}

/** Every number that was recorded of the vapour pressure of water and ice. */
export function waterRecorded(): readonly Recorded[] {
  const { liquid, boiling, ice } = read("water") as Record<"liquid" | "boiling" | "ice", readonly Entry[]>;
  const over = (group: string, entries: readonly Entry[], input: string, value: (at: number) => number) =>
    entries.flatMap((entry) =>
      recorded(entry, { substance: "water", group }, () => value(Number(entry[input]))),
    );
  return [
    ...over("pressure over liquid", liquid, "temperature", waterSaturationPressure),
    ...over("boiling temperature", boiling, "pressure", waterSaturationTemperature),
    ...over("pressure over ice", ice, "temperature", iceSublimationPressure),
  ];
}

function recorded(
  entry: Entry,
  what: Pick<Recorded, "substance" | "group">,
  value: (property: string) => number,
): Recorded[] {
  const inputs = Object.entries(entry).filter(([, given]) => typeof given === "number");
  const where = inputs.map(([name, given]) => `${name} ${given}`).join(", ");
  return Object.entries(entry).flatMap(([property, printed]) =>
    typeof printed === "string" ? [{ ...what, where, property, printed, computed: value(property) }] : [],
  );
}

function read(substance: string): unknown {
  return JSON.parse(readFileSync(new URL(`reference-library/${substance}.json`, import.meta.url), "utf8"));
}
