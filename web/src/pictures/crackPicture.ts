import { groundAxis, heightAxis } from "../chart/axes";
import { drawing, frame } from "../chart/frame";
import { band, curve, level, words } from "../chart/marks";
import { node, px, type SvgNode } from "../chart/svg";

/** The chance of a new crack when the driest week comes to a humidity; the names are those of the API's `ChanceAt`. */
export interface DrawnChance {
  readonly lowest_week_relative_humidity: number;
  readonly chance: number;
  readonly chance_low: number;
  readonly chance_high: number;
}

export interface CrackChoice {
  readonly curve: readonly DrawnChance[];
  readonly here: DrawnChance;
  readonly keep: number | undefined;
  readonly width: number;
  readonly height: number;
}

const percent = (share: number): number => 100 * share;

/** Up to the next round figure over the likeliest chance drawn, never under 10 in 100. */
function topOf(curve: readonly DrawnChance[]): number {
  const most = Math.max(...curve.map(({ chance_high }) => percent(chance_high)));
  return [10, 20, 50, 100].find((top) => most <= top) ?? 100;
}

export function crackPicture({ curve: points, here, keep, width, height }: CrackChoice): SvgNode {
  const humidities = points.map((one) => percent(one.lowest_week_relative_humidity));
  const [from, to] = [Math.min(...humidities), Math.max(...humidities)];
  const top = topOf(points);
  const within = frame({
    width,
    height,
    margin: { top: 34, right: 16, bottom: 44, left: 44 },
    x: [from, to],
    y: [0, top],
  });
  const at = percent(here.lowest_week_relative_humidity);
  return drawing(within, [
    heightAxis(
      [0, 0.2, 0.4, 0.6, 0.8, 1].map((share) => ({ at: share * top, label: String(Math.round(share * top)) })),
      "chance of a new crack in the year, in 100",
    ),
    groundAxis(
      Array.from(
        { length: Math.floor(to / 10) - Math.ceil(from / 10) + 1 },
        (_, i) => (Math.ceil(from / 10) + i) * 10,
      ).map((tick) => ({ at: tick, label: `${tick} %` })),
    ),
    words([
      {
        x: (from + to) / 2,
        y: 0,
        text: "lowest humidity held for a week",
        className: "soft",
        anchor: "middle",
        dy: 38,
      },
    ]),
    band(
      points.map((one, i) => ({ x: humidities[i] ?? 0, low: percent(one.chance_low), high: percent(one.chance_high) })),
      "band half",
    ),
    curve(
      points.map((one, i) => ({ x: humidities[i] ?? 0, y: percent(one.chance) })),
      "median",
    ),
    level({ y: 1, label: "", labelled: "above", className: "axis" }),
    ({ x, y }) => [node("line", { class: "gap measure", x1: px(x(at)), x2: px(x(at)), y1: px(y(0)), y2: px(y(top)) })],
    words([
      {
        x: at,
        y: top,
        text: "its driest week",
        className: "strong",
        anchor: at > (from + to) / 2 ? "end" : "start",
        dx: at > (from + to) / 2 ? -6 : 6,
        dy: 12,
      },
      ...(keep === undefined
        ? []
        : [
            {
              x: percent(keep),
              y: 0,
              text: "keep at least",
              className: "soft",
              anchor: "start" as const,
              dx: 4,
              dy: -8,
            },
          ]),
    ]),
  ]);
}
