// Runs in a folder where the packed package is installed, as an ES module; prints what the two doors answer.
import { createRequire } from "node:module";
import { isDewlineError, refrigerant } from "dewline";
import { refrigerantFrom } from "dewline/core";
import { r32 } from "dewline/fluids/r-32";

const at = { temperature: 293.15 };
const byName = refrigerant("R-32").saturation(at).pressure;
const byLiteral = refrigerantFrom(r32).saturation(at).pressure;

// The same program may also load the CommonJS copy; its errors must be known here too.
const { refrigerant: other } = createRequire(import.meta.url)("dewline");
let recognised = false;
try {
  other("no such refrigerant");
} catch (error) {
  recognised = isDewlineError(error);
}
console.log(JSON.stringify({ byName, byLiteral, recognised }));
