import { afterAll } from "vitest";

/** The largest deviation seen, where it was seen, and the limit it is held to. */
interface Record {
  deviation: number;
  where: string;
  readonly limit: number;
}

/**
 * Keeps the worst deviation of each named check and prints it when the file is through, so that a loss of accuracy
 * shows long before a limit is reached.
 */
export function trackWorst(
  title: string,
): (check: string, deviation: number, limit: number, where: string) => void {
  const records = new Map<string, Record>();
  afterAll(() => {
    const lines = [...records].map(
      ([check, { deviation, limit, where }]) =>
        `  ${check}: ${deviation.toExponential(1)} of ${limit.toExponential(1)} at ${where}`,
    );
    console.log([`${title}, worst deviation seen:`, ...lines].join("\n"));
  });
  return (check, deviation, limit, where) => {
    const record = records.get(check);
    if (record === undefined) records.set(check, { deviation, where, limit });
    else if (!(deviation <= record.deviation)) Object.assign(record, { deviation, where });
    if (!(deviation <= limit)) {
      throw new Error(`${title}, ${check}: ${deviation} is more than ${limit} at ${where}`);
    }
  };
}
