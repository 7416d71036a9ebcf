const LINE_WIDTH = 110;

/** A name that stands in a literal in place of a value, such as the literal of a fluid in that of a blend. */
export class Identifier {
  readonly text: string;

  constructor(text: string) {
    this.text = text;
  }
}

/** The source text of a literal, the way the formatter of this project would write it. */
export function literalText(value: unknown): string {
  return valueText(value, 0, 0);
}

function valueText(value: unknown, depth: number, column: number): string {
  if (value instanceof Identifier) return value.text;
  if (Array.isArray(value)) return arrayText(value, depth, column);
  if (typeof value === "object" && value !== null) return objectText(value, depth);
  return JSON.stringify(value);
}

function objectText(value: object, depth: number): string {
  const indent = "  ".repeat(depth + 1);
  const lines = Object.entries(value).map(([key, inner]) => {
    const column = indent.length + key.length + 2;
    const text = valueText(inner, depth + 1, column);
    // A text that is too long goes to a line of its own; it is not broken.
    const isLong = typeof inner === "string" && column + text.length + 1 > LINE_WIDTH;
    return `${indent}${key}:${isLong ? `\n${indent}  ` : " "}${text},`;
  });
  return `{\n${lines.join("\n")}\n${"  ".repeat(depth)}}`;
}

function arrayText(values: readonly unknown[], depth: number, column: number): string {
  const inline = inlineText(values);
  const isMatrix = values.length > 1 && values.every((value) => Array.isArray(value));
  if (inline !== undefined && !isMatrix && column + inline.length + 1 <= LINE_WIDTH) return inline;
  const indent = "  ".repeat(depth + 1);
  const lines = values.map((value) => `${indent}${valueText(value, depth + 1, indent.length)},`);
  return `[\n${lines.join("\n")}\n${"  ".repeat(depth)}]`;
}

/** Undefined for an object, which takes lines of its own. */
function inlineText(value: unknown): string | undefined {
  if (value instanceof Identifier) return value.text;
  if (Array.isArray(value)) {
    const texts = value.map(inlineText);
    return texts.includes(undefined) ? undefined : `[${texts.join(", ")}]`;
  }
  return typeof value === "object" && value !== null ? undefined : JSON.stringify(value);
}
