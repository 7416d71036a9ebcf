/** Items with the same name, in the order they come. */
export function grouped<Item>(
  items: readonly Item[],
  nameOf: (item: Item) => string,
): readonly (readonly [string, readonly Item[]])[] {
  const groups = new Map<string, Item[]>();
  for (const item of items) {
    const name = nameOf(item);
    const group = groups.get(name);
    if (group === undefined) groups.set(name, [item]);
    else group.push(item);
  }
  return [...groups];
}

/** A relative deviation with its sign, in two digits. */
export function percent(deviation: number): string {
  const size = Number((Math.abs(deviation) * 100).toPrecision(2));
  return `${deviation < 0 ? "−" : ""}${size} %`;
}

/** A number with a true minus sign, and as many decimals. */
export function signed(value: number, decimals: number): string {
  const text = Math.abs(value).toFixed(decimals);
  return value < 0 && Number(text) !== 0 ? `−${text}` : text;
}

/** A Markdown table; columns whose head begins with `>` are set to the right. */
export function markdownTable(heads: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]): string => `| ${cells.join(" | ")} |`;
  return [
    line(heads.map((head) => head.replace(/^>/, ""))),
    line(heads.map((head) => (head.startsWith(">") ? "---:" : "---"))),
    ...rows.map(line),
  ].join("\n");
}
