/** Seed and number of runs of every property test. */
export interface FuzzSettings {
  /** Seed of the random values, a 32-bit integer. */
  readonly seed: number;
  /** Random cases a property. */
  readonly runs: number;
}

/** What runs when nothing is asked for: always the same cases, so that a failure is the change's own. */
const USUAL: FuzzSettings = { seed: 20261124, runs: 2000 };

/**
 * Reads `FC_SEED` and `FC_RUNS`. A variable that is set must hold a whole number: an empty or misspelt one would
 * quietly run the usual cases and look like a longer run that passed.
 */
export function readFuzzSettings(variables: Readonly<Record<string, string | undefined>>): FuzzSettings {
  const seed = readWhole("FC_SEED", variables["FC_SEED"], -(2 ** 31), 2 ** 31 - 1) ?? USUAL.seed;
  const runs = readWhole("FC_RUNS", variables["FC_RUNS"], 1, 1e9) ?? USUAL.runs;
  return { seed, runs };
}

function readWhole(name: string, text: string | undefined, least: number, most: number): number | undefined {
  if (text === undefined) return undefined;
  const value = Number(text);
  if (!/^[+-]?\d+$/.test(text) || !(value >= least && value <= most)) {
    throw new Error(`${name} must be a whole number from ${least} to ${most}, got ${JSON.stringify(text)}`);
  }
  return value;
}
