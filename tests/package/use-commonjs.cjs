// Runs in a folder where the packed package is installed, as CommonJS; prints what the two doors answer.
const { isDewlineError, refrigerant } = require("dewline");
const { refrigerantFrom } = require("dewline/core");
const { r32 } = require("dewline/fluids/r-32");

const at = { temperature: 293.15 };
const byName = refrigerant("R-32").saturation(at).pressure;
const byLiteral = refrigerantFrom(r32).saturation(at).pressure;

let recognised = false;
import("dewline").then(({ refrigerant: other }) => {
  try {
    other("no such refrigerant");
  } catch (error) {
    recognised = isDewlineError(error);
  }
  console.log(JSON.stringify({ byName, byLiteral, recognised }));
});
