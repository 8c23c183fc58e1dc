import type { SvgNode } from "../chart/svg";
import { node, px } from "../chart/svg";

/** Neck, heel and bridge from the side, one string of it. Lengths along the neck are true to each other; heights, the turn
 * of the neck and the wedge are drawn `times` as large. All in mm. */
export interface NeckChoice {
  readonly scaleLength: number;
  readonly joint: number;
  readonly tongueEnd: number;
  readonly heelDepth: number;
  /** What the fret plane gains at the saddle. */
  readonly rise: number;
  readonly removal: number;
  readonly shim: number;
  readonly nut: number;
  readonly saddleBefore: number;
  readonly exposureBefore: number;
  readonly exposureAfter: number;
  readonly write: (mm: number) => string;
  readonly width: number;
}

export const times = 8;

interface Spot {
  readonly x: number;
  readonly y: number;
}

export function neckPicture(choice: NeckChoice): SvgNode {
  const { scaleLength, joint, tongueEnd, heelDepth, rise, removal, shim, nut, write, width } = choice;
  const { saddleBefore, exposureBefore, exposureAfter } = choice;
  const narrow = width < 560;
  const lever = scaleLength - joint;
  const bridgeTop = (saddleBefore - exposureBefore) * times;
  const saddleAfter = bridgeTop + exposureAfter * times;
  const turn = (rise * times) / lever;
  const board = 7;
  /** On a phone the far end of the neck is left out. */
  const start = narrow ? joint - 170 : 0;
  const left = start - 14;
  const right = scaleLength + 34;
  const scale = (width - 16) / (right - left);
  const highest = Math.max(saddleAfter, saddleBefore * times, rise * times, nut * times) + 14;
  const lowest = Math.min(-heelDepth, -turn * (joint - start) - 26) - 26;
  const at = ({ x, y }: Spot): string => `${px(8 + (x - left) * scale)},${px(26 + (highest - y) * scale)}`;
  const shape = (spots: readonly Spot[], className: string, close = true): SvgNode =>
    node("path", {
      class: className,
      d: `M${spots.map(at).join("L")}${close ? "Z" : ""}`,
      ...(close ? {} : { fill: "none" }),
    });
  /** Turned about the edge under the board, small angles as slopes. */
  const turned = ({ x, y }: Spot): Spot => ({ x: x + (-board - y) * turn, y: y + (x - joint) * turn });
  const neck: Spot[] = [
    { x: start, y: 0 },
    { x: tongueEnd, y: 0 },
    { x: tongueEnd, y: -board },
    { x: joint, y: -board },
    { x: joint, y: -heelDepth },
    { x: joint - 26, y: -heelDepth },
    { x: joint - 48, y: -30 },
    { x: joint - 90, y: -22 },
    { x: start, y: -18 },
  ];
  const nutAt = turned({ x: 0, y: nut * times });
  const share = (start - nutAt.x) / (scaleLength - nutAt.x);
  const stringFrom = narrow ? { x: start, y: nutAt.y + share * (saddleAfter - nutAt.y) } : nutAt;
  const cut = removal * times;
  const label = (spot: Spot, text: string, className = "label", anchor = "start", dx = 0, dy = 0): SvgNode => {
    const [x = 0, y = 0] = at(spot).split(",").map(Number);
    return node("text", { class: className, x: px(x + dx), y: px(y + dy), "text-anchor": anchor }, text);
  };
  const saddle = (top: number, className: string): SvgNode =>
    shape(
      [
        { x: scaleLength - 2, y: top },
        { x: scaleLength + 2, y: top },
        { x: scaleLength + 2, y: bridgeTop },
        { x: scaleLength - 2, y: bridgeTop },
      ],
      className,
    );
  const bodyTop = -board;
  const height = px(26 + (highest - lowest) * scale + 10);
  return node(
    "svg",
    { viewBox: `0 0 ${width} ${height}`, width, height },
    shape(
      [
        { x: joint, y: bodyTop },
        { x: right, y: bodyTop },
        { x: right, y: -heelDepth },
        { x: joint, y: -heelDepth },
      ],
      "body-side",
    ),
    shape(
      [
        { x: scaleLength - 16, y: bridgeTop },
        { x: scaleLength + 20, y: bridgeTop },
        { x: scaleLength + 22, y: bodyTop },
        { x: scaleLength - 18, y: bodyTop },
      ],
      "bridge",
    ),
    shape(neck, "neck-before"),
    shape(neck.map(turned), "neck-after"),
    ...(Math.abs(cut) > 0.01
      ? [shape([{ x: joint, y: -board }, turned({ x: joint, y: -heelDepth }), { x: joint, y: -heelDepth }], "wedge")]
      : []),
    ...(Math.abs(shim) > 0.005
      ? [shape([{ x: joint, y: -board }, turned({ x: tongueEnd, y: -board }), { x: tongueEnd, y: -board }], "wedge")]
      : []),
    saddle(saddleBefore * times, "saddle before"),
    saddle(saddleAfter, "saddle"),
    shape(
      [
        { x: start, y: 0 },
        { x: scaleLength, y: 0 },
      ],
      "edge-before",
      false,
    ),
    shape([turned({ x: start, y: 0 }), turned({ x: scaleLength, y: 0 })], "edge-after", false),
    shape([stringFrom, { x: scaleLength, y: saddleAfter }], "string", false),
    label(
      { x: joint - cut, y: -heelDepth },
      `${write(Math.abs(removal))} ${removal < 0 ? "on" : "off"} at the cap`,
      "label figure",
      "middle",
      0,
      16,
    ),
    ...(Math.abs(shim) > 0.005
      ? [label({ x: tongueEnd, y: -board }, `shim ${write(Math.abs(shim))}`, "label", "start", 6, 14)]
      : []),
    node(
      "text",
      { class: "unit", x: 0, y: 13 },
      narrow ? `heights and angle ×${times}` : `heights, turn and wedges drawn ${times} times as large as lengths`,
    ),
    ...(narrow ? [] : [label({ x: scaleLength, y: saddleAfter }, "saddle", "label", "end", -8, -4)]),
  );
}
