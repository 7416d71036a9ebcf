import type { Problem } from "../units/index.js";

/** The part of a schema library's issue that is needed here. */
interface Issue {
  readonly code?: string | undefined;
  readonly path: readonly PropertyKey[];
  readonly message: string;
  readonly keys?: readonly string[] | undefined;
}

/**
 * Turns the issues of a refused schema into problems with paths.
 *
 * The schemas of this room give as message the words for what would have been right. A field that does not belong
 * becomes one problem of its own, because a misspelt optional field would otherwise be dropped in silence.
 */
export function problemsOf(issues: readonly Issue[], input: unknown): Problem[] {
  return issues.flatMap((issue) =>
    issue.code === "unrecognized_keys"
      ? (issue.keys ?? []).map((key) => ({
          path: pathText([...issue.path, key]),
          value: valueAt(input, [...issue.path, key]),
          expected: "no such field",
        }))
      : [{ path: pathText(issue.path), value: valueAt(input, issue.path), expected: issue.message }],
  );
}

/** The value at a path of an unknown structure, or undefined where the path ends early. */
export function valueAt(input: unknown, path: readonly PropertyKey[]): unknown {
  let value = input;
  for (const key of path) {
    if (typeof value !== "object" || value === null) return undefined;
    value = (value as Readonly<Record<PropertyKey, unknown>>)[key];
  }
  return value;
}

function pathText(path: readonly PropertyKey[]): string {
  return path.reduce<string>((text, key) => {
    if (typeof key === "number") return `${text}[${key}]`;
    return text === "" ? String(key) : `${text}.${String(key)}`;
  }, "");
}
