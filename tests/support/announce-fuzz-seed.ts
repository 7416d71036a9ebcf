import { readFuzzSettings } from "./read-fuzz-settings.js";

/** Prints seed and runs once, before the first property; a failure can then be run again with the same cases. */
export default function announceFuzzSeed(): void {
  const { seed, runs } = readFuzzSettings(process.env);
  console.log(`properties: FC_SEED=${seed} FC_RUNS=${runs}`);
}
