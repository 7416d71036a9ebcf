import { RECORD_FORMAT } from "./record.js";

type Fields = Readonly<Record<string, unknown>>;

/**
 * A record of the form `dewline-record/1` as one of today's: that form knew one visit, an installation, said nothing of
 * what to do next, and named the refrigerant in its facts only. Anything else is returned as it is.
 */
export function fromFirstForm(document: unknown): unknown {
  if (!isFields(document) || document["format"] !== "dewline-record/1") return document;
  const { steps } = document;
  return {
    ...document,
    format: RECORD_FORMAT,
    kind: "installation",
    system: { refrigerant: refrigerantIn(document["facts"]) },
    steps: Array.isArray(steps)
      ? steps.map((step) => (isFields(step) ? { ...step, next: [] } : step))
      : steps,
    next: [],
    earlier: [],
  };
}

/** Its first fact is the refrigerant: designation, name and class. */
function refrigerantIn(facts: unknown): unknown {
  const first: unknown = Array.isArray(facts) ? facts[0] : undefined;
  if (!isFields(first) || typeof first["text"] !== "string") return undefined;
  return first["text"].split(", ")[0];
}

function isFields(value: unknown): value is Fields {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
