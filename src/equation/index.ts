export { type Derivatives, noDerivatives } from "./derivatives.js";
export { Equation, type Evaluation, noEvaluation } from "./equation.js";
export {
  Mixture,
  type MixtureEvaluation,
  type MixtureIdeal,
  noMixtureEvaluation,
  noMixtureIdeal,
  type PairOf,
} from "./mixture.js";
export * from "./properties.js";
