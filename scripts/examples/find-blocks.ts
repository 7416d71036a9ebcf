/** One fenced `ts` block of the documentation. */
export interface Block {
  /** The file it stands in, as given. */
  readonly file: string;
  /** Line of the block's first line of code, counted from 1. */
  readonly line: number;
  /** The code, without the fence. */
  readonly code: string;
  /** False for a block fenced as `ts no-run`, which is type-checked only. */
  readonly runs: boolean;
}

const FENCE = /^(\s*)```(\S*)[ \t]*(.*)$/;

/** The `ts` blocks of a Markdown text. */
export function findMarkdownBlocks(file: string, text: string): Block[] {
  return blocksIn(file, text.split("\n"), 1);
}

/**
 * The `ts` blocks of the doc comments in a TypeScript source. An `@example` without one is refused: the docs would
 * show it as code, and nobody would have run it.
 */
export function findDocCommentBlocks(file: string, text: string): Block[] {
  const blocks: Block[] = [];
  for (const comment of text.matchAll(/\/\*\*[\s\S]*?\*\//g)) {
    const firstLine = text.slice(0, comment.index).split("\n").length;
    const lines = comment[0].split("\n").map((line) => line.replace(/^\s*(\/\*\*|\*\/|\*) ?/, ""));
    const found = blocksIn(file, lines, firstLine);
    const examples = lines.filter((line) => /^\s*@example\b/.test(line)).length;
    if (examples > found.length) {
      throw new Error(`${file}:${firstLine}: ${examples} @example but ${found.length} fenced ts blocks`);
    }
    blocks.push(...found);
  }
  return blocks;
}

function blocksIn(file: string, lines: readonly string[], firstLine: number): Block[] {
  const blocks: Block[] = [];
  let open: { line: number; indent: string; language: string; info: string; code: string[] } | undefined;
  lines.forEach((text, index) => {
    const fence = FENCE.exec(text);
    if (open === undefined) {
      if (fence === null) return;
      const [, indent = "", language = "", info = ""] = fence;
      open = { line: firstLine + index + 1, indent, language, info: info.trim(), code: [] };
    } else if (text.trim() !== "```") {
      open.code.push(text.startsWith(open.indent) ? text.slice(open.indent.length) : text);
    } else {
      const { line, language, info, code } = open;
      if (language === "ts") {
        if (info !== "" && info !== "no-run") {
          throw new Error(`${file}:${line - 1}: expected "ts" or "ts no-run", got "ts ${info}"`);
        }
        blocks.push({ file, line, code: code.join("\n"), runs: info === "" });
      }
      open = undefined;
    }
  });
  if (open !== undefined) throw new Error(`${file}:${firstLine}: a code block is not closed`);
  return blocks;
}
