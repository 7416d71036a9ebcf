// Type-checked in a folder where the packed package is installed, without this project's settings; also run as .cts.
import { celsius, type Pressure, refrigerant, type State } from "dewline";
import { refrigerantFrom } from "dewline/core";
import { r32 } from "dewline/fluids/r-32";

const temperature = celsius(20);
const pressure: Pressure = refrigerant("R-32").saturation({ temperature }).pressure;
const state: State = refrigerantFrom(r32).state({ pressure, quality: 0.5 });

// @ts-expect-error: a pressure where a temperature belongs
refrigerantFrom(r32).saturation({ temperature: pressure });

export { state };
