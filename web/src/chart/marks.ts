import { area, curveLinear, line } from "d3-shape";
import type { Mark } from "./frame";
import { node, px, type SvgNode } from "./svg";

/** Every mark is named by the class it is drawn with; colours live in the stylesheet. */
export interface Span {
  readonly x: number;
  readonly low: number;
  readonly high: number;
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

function shortPath(path: string | null): string {
  return (path ?? "").replace(/-?\d+\.\d+/g, (number) => String(px(Number(number))));
}

/** The area between two edges. */
export function band(spans: readonly Span[], className: string): Mark {
  return ({ x, y }) => {
    const path = area<Span>()
      .x((span) => x(span.x))
      .y0((span) => y(span.low))
      .y1((span) => y(span.high))
      .curve(curveLinear)([...spans]);
    return [node("path", { class: className, d: shortPath(path) })];
  };
}

export function curve(points: readonly Point[], className: string): Mark {
  return ({ x, y }) => {
    const path = line<Point>()
      .x((point) => x(point.x))
      .y((point) => y(point.y))([...points]);
    return [node("path", { class: className, d: shortPath(path), fill: "none" })];
  };
}

export interface Level {
  readonly y: number;
  readonly label: string;
  /** Which side of the line the label stands on. */
  readonly labelled: "above" | "below";
  readonly anchor?: "start" | "middle" | "end";
  readonly className: string;
}

/** A line across at one height, labelled on itself. */
export function level({ y: height, label, labelled, className, anchor = "end" }: Level): Mark {
  return ({ x, y }) => {
    const [left = 0, right = 0] = x.range();
    const at = px(y(height));
    return [
      node("line", { class: className, x1: px(left), x2: px(right), y1: at, y2: at }),
      node(
        "text",
        {
          class: `${className} label`,
          x: px(anchor === "end" ? right - 2 : anchor === "start" ? left + 6 : (left + right) / 2),
          y: at + (labelled === "above" ? -5 : 14),
          "text-anchor": anchor,
        },
        label,
      ),
    ];
  };
}

export interface Moment {
  readonly x: number;
  readonly label: string;
  readonly className: string;
  /** Lines down from the top of the plot, so that neighbours do not write over each other. */
  readonly row?: number;
}

/** A line up and down at one moment, labelled at its top. */
export function moment({ x: at, label, className, row = 0 }: Moment): Mark {
  return ({ x, y, width, margin }) => {
    const [bottom = 0, top = 0] = y.range();
    const place = px(x(at));
    const nearRight = place > width - margin.right - label.length * 6;
    return [
      node("line", { class: className, x1: place, x2: place, y1: px(bottom), y2: px(top) }),
      node(
        "text",
        {
          class: `${className} label`,
          x: place + (nearRight ? -5 : 5),
          y: px(top + 11 + row * 14),
          "text-anchor": nearRight ? "end" : "start",
        },
        label,
      ),
    ];
  };
}

export interface Dot extends Point {
  /** Half the length of the error bar, in the unit of y; 0 draws none. */
  readonly error: number;
  readonly className: string;
  readonly title: string;
}

/** Measured values with the error of their gauge. */
export function dots(measured: readonly Dot[], radius = 4.5): Mark {
  return ({ x, y }) =>
    measured.map((dot) => {
      const across = px(x(dot.x));
      const parts: SvgNode[] = [node("title", {}, dot.title)];
      if (dot.error > 0) {
        const [top, bottom] = [px(y(dot.y + dot.error)), px(y(dot.y - dot.error))];
        parts.push(node("path", { class: "error-bar", d: errorBar(across, top, bottom) }));
      }
      parts.push(node("circle", { cx: across, cy: px(y(dot.y)), r: radius }));
      return node("g", { class: dot.className }, ...parts);
    });
}

function errorBar(across: number, top: number, bottom: number): string {
  return `M${across - 3},${top}H${across + 3}M${across},${top}V${bottom}M${across - 3},${bottom}H${across + 3}`;
}

export interface Word extends Point {
  readonly text: string;
  readonly className: string;
  readonly anchor?: "start" | "middle" | "end";
  readonly dx?: number;
  readonly dy?: number;
}

/** Words set straight on the picture, where a legend would be. */
export function words(list: readonly Word[]): Mark {
  return ({ x, y }) =>
    list.map((word) =>
      node(
        "text",
        {
          class: `label ${word.className}`,
          x: px(x(word.x) + (word.dx ?? 0)),
          y: px(y(word.y) + (word.dy ?? 0)),
          "text-anchor": word.anchor ?? "start",
        },
        word.text,
      ),
    );
}
