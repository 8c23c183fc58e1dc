import { type ScaleLinear, scaleLinear } from "d3-scale";
import { node, type SvgNode } from "./svg";

export interface Margin {
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly left: number;
}

/** Where a picture's data lies on the page: marks read their scales from here. */
export interface Frame {
  readonly width: number;
  readonly height: number;
  readonly margin: Margin;
  readonly x: ScaleLinear<number, number>;
  readonly y: ScaleLinear<number, number>;
}

/** A mark takes its data when made and the frame when drawn. */
export type Mark = (frame: Frame) => readonly SvgNode[];

export interface FrameChoice {
  readonly width: number;
  readonly height: number;
  readonly margin: Margin;
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
}

/** y grows upward, as heights do. */
export function frame({ width, height, margin, x, y }: FrameChoice): Frame {
  return {
    width,
    height,
    margin,
    x: scaleLinear([...x], [margin.left, width - margin.right]),
    y: scaleLinear([...y], [height - margin.bottom, margin.top]),
  };
}

/** A picture is a list of marks, drawn in order. */
export function drawing(within: Frame, marks: readonly Mark[]): SvgNode {
  return node(
    "svg",
    { viewBox: `0 0 ${within.width} ${within.height}`, width: within.width, height: within.height },
    ...marks.flatMap((mark) => mark(within)),
  );
}
