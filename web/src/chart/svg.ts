/** A piece of a drawing, as plain data: a mark returns these, a component shows them, a test prints them. */
export interface SvgNode {
  readonly tag: string;
  readonly attributes: Readonly<Record<string, string | number>>;
  readonly children: readonly (SvgNode | string)[];
}

export function node(
  tag: string,
  attributes: Readonly<Record<string, string | number>> = {},
  ...children: readonly (SvgNode | string)[]
): SvgNode {
  return { tag, attributes, children };
}

/** Coordinates are rounded to a tenth of a pixel, which keeps drawings short and their snapshots steady. */
export function px(value: number): number {
  return Math.round(value * 10) / 10;
}

const escapes: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };

function escaped(text: string): string {
  return text.replace(/[&<>"]/g, (character) => escapes[character] ?? character);
}

/** The drawing as SVG text, one element a line. */
export function svgText(drawing: SvgNode, indent = ""): string {
  const attributes = Object.entries(drawing.attributes)
    .map(([name, value]) => ` ${name}="${escaped(String(value))}"`)
    .join("");
  if (drawing.children.length === 0) return `${indent}<${drawing.tag}${attributes}/>`;
  const [only] = drawing.children;
  if (drawing.children.length === 1 && typeof only === "string") {
    return `${indent}<${drawing.tag}${attributes}>${escaped(only)}</${drawing.tag}>`;
  }
  const inner = drawing.children.map((child) =>
    typeof child === "string" ? `${indent}  ${escaped(child)}` : svgText(child, `${indent}  `),
  );
  return [`${indent}<${drawing.tag}${attributes}>`, ...inner, `${indent}</${drawing.tag}>`].join("\n");
}
