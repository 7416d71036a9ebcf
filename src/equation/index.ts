export { type Derivatives, noDerivatives } from "./derivatives.js";
export { Equation, type Evaluation, noEvaluation } from "./equation.js";
export * from "./properties.js";
