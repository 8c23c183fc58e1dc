import { groundAxis, heightAxis, type Tick } from "../chart/axes";
import { drawing, frame, type Mark } from "../chart/frame";
import { curve, type Point } from "../chart/marks";
import { node, px } from "../chart/svg";
import type { Notation } from "../trade/length";
import type { Sample } from "./contours";
import { heightTicks, unitWord } from "./heightTicks";

export interface SectionChoice {
  /** In stretches, parted at the hole. */
  readonly recorded: readonly (readonly Sample[])[];
  readonly changed: readonly (readonly Sample[])[] | undefined;
  /** From where to where the picture runs. */
  readonly from: number;
  readonly to: number;
  readonly ends: readonly [string, string];
  /** Where the bridge lies on it. */
  readonly bridge: readonly [number, number];
  readonly notation: Notation;
  readonly width: number;
}

function points(stretch: readonly Sample[]): Point[] {
  return stretch.map(({ at, value }) => ({ x: at, y: value }));
}

function highAndLow(stretches: readonly (readonly Sample[])[]): [number, number] {
  const all = stretches.flat().map(({ value }) => value);
  const [low, high] = [Math.min(0, ...all), Math.max(0, ...all)];
  const room = Math.max((high - low) * 0.08, 0.01);
  return [low - room, high + room];
}

/** A cut through the top, its heights drawn many times as high as long and said so. */
export function sectionPicture(choice: SectionChoice): ReturnType<typeof drawing> {
  const { recorded, changed, from, to, ends, notation, width } = choice;
  const within = frame({
    width,
    height: 210,
    margin: { top: 28, right: 12, bottom: 30, left: notation === "sixtyFourths" ? 56 : 48 },
    x: [from, to],
    y: highAndLow([...recorded, ...(changed ?? [])]),
  });
  const perMm = (scale: typeof within.x): number => Math.abs(scale(1) - scale(0));
  const times = Math.round(perMm(within.y) / perMm(within.x));
  const [low, high] = within.y.domain();
  const bridge: Mark = ({ x, y }) => {
    const [bottom = 0, top = 0] = y.range();
    const [start, end] = [px(x(choice.bridge[0])), px(x(choice.bridge[1]))];
    return [node("rect", { class: "under-bridge", x: start, y: top, width: px(end - start), height: bottom - top })];
  };
  const ground: Tick[] = [
    { at: from, label: ends[0], anchor: "start" },
    { at: (choice.bridge[0] + choice.bridge[1]) / 2, label: "bridge", strong: true },
    { at: to, label: ends[1], anchor: "end" },
  ];
  return drawing(within, [
    bridge,
    heightAxis(
      heightTicks(low ?? 0, high ?? 1, notation, 6),
      `${unitWord[notation]}, drawn ${times} times as high as long`,
    ),
    groundAxis(ground),
    curve(
      [
        { x: from, y: 0 },
        { x: to, y: 0 },
      ],
      "unloaded",
    ),
    ...recorded.map((stretch) => curve(points(stretch), "as-recorded")),
    ...(changed ?? []).map((stretch) => curve(points(stretch), "as-changed")),
  ]);
}
