import fc from "fast-check";
import { readFuzzSettings } from "./read-fuzz-settings.js";

const { seed, runs } = readFuzzSettings(process.env);
fc.configureGlobal({ seed, numRuns: runs });
