import { type GaugePressure, InputError, type Pressure, parsePressure } from "../../../units/index.js";

/** Reads a gauge pressure whose text says that it is one: in a job a bare `0.8 MPa` would leave it to a guess. */
export function explicitGaugePressure(text: string): GaugePressure {
  const { kind, pressure } = parsePressure(text);
  if (kind === "gauge") return pressure;
  throw new InputError([{ path: "", value: text, expected: "a gauge pressure, such as 0.8 MPa gauge" }]);
}

/** Reads an absolute pressure whose text says that it is one, or whose unit does: `66.7 Pa abs`, `500 micron`. */
export function explicitAbsolutePressure(text: string): Pressure {
  const { kind, pressure } = parsePressure(text);
  if (kind === "absolute") return pressure;
  throw new InputError([
    { path: "", value: text, expected: "an absolute pressure, such as 66.7 Pa abs or 500 micron" },
  ]);
}
