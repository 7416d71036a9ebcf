export * from "./leak-rate.js";
