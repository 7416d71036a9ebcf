export type * from "./fluid.js";
