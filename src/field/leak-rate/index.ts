export * from "./bubbles.js";
export * from "./capillary.js";
export * from "./detection.js";
export * from "./leak-rate.js";
export * from "./leak-scaling.js";
