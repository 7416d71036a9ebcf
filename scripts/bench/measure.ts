/**
 * Times one case of one refrigerant and prints the result as JSON: `measure <designation> <case>`. It runs as a
 * process of its own, because in one process the first case measures differently from the rest.
 */
import { performance } from "node:perf_hooks";
import { findFluid } from "../../src/catalogue/index.js";
import { makers } from "./cases.js";

/** Nanoseconds a call over the rounds. */
export interface Measurement {
  readonly minimum: number;
  readonly median: number;
  /** Kept and printed so that no engine can drop the work. */
  readonly sum: number;
}

const warmUp = 500;
const rounds = 15;
const roundLength = 60;

/** Runs a case for at least so many milliseconds and says how many nanoseconds a call took. */
function timeRound(run: () => number, inputs: number, milliseconds: number): { ns: number; sum: number } {
  let calls = 0;
  let sum = 0;
  const start = performance.now();
  let elapsed = 0;
  while (elapsed < milliseconds) {
    sum += run();
    calls += inputs;
    elapsed = performance.now() - start;
  }
  return { ns: (elapsed * 1e6) / calls, sum };
}

function measure(designation: string, name: string): Measurement {
  const make = makers[name];
  if (make === undefined) throw new Error(`no case "${name}"`);
  const { inputs, run } = make(findFluid(designation));
  let { sum } = timeRound(run, inputs, warmUp);
  const times: number[] = [];
  for (let round = 0; round < rounds; round++) {
    const { ns, sum: kept } = timeRound(run, inputs, roundLength);
    times.push(ns);
    sum += kept;
  }
  times.sort((a, b) => a - b);
  return { minimum: times[0]!, median: times[(rounds - 1) / 2]!, sum };
}

const [, , designation = "", name = ""] = process.argv;
console.log(JSON.stringify(measure(designation, name)));
