export { type Derivatives, noDerivatives } from "./derivatives.js";
export { Equation, type Evaluation, noEvaluation } from "./equation.js";
export type { PairOf } from "./mixing-pairs.js";
export { Mixture } from "./mixture.js";
export * from "./mixture-evaluation.js";
export * from "./properties.js";
