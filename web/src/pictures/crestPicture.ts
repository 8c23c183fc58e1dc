import type { SvgNode } from "../chart/svg";
import { node, px } from "../chart/svg";

/** One crest on the saddle, all of it behind the scale length, in mm. */
export interface DrawnCrest {
  readonly string: number;
  readonly name: string;
  /** Absent where nobody read it. */
  readonly now?: number;
  readonly wanted: number;
  readonly low: number;
  readonly high: number;
  readonly fits: boolean;
  /** Where it is wanted, in words. */
  readonly words: string;
}

export interface CrestChoice {
  /** String 1 first. */
  readonly crests: readonly DrawnCrest[];
  readonly spread: number;
  /** The saddle's top, where it was measured. */
  readonly top?: { readonly frontBass: number; readonly frontTreble: number; readonly thickness: number };
  readonly width: number;
}

/** mm of saddle beyond the outer strings. */
const beyond = 8;

/** Across: from the bass end of the saddle. Back: behind the scale length. Both in mm. */
interface Place {
  readonly across: number;
  readonly back: number;
}

interface Plan {
  readonly upright: boolean;
  readonly scale: number;
  readonly first: number;
  readonly last: number;
  readonly left: number;
  readonly top: number;
}

/** Upright, the neck is to the left and the bass on top; else the neck is above and the bass to the left. */
function at({ upright, scale, first, left, top }: Plan, { across, back }: Place): { x: number; y: number } {
  const [along, deep] = [(across + beyond) * scale, (back - first) * scale];
  return upright ? { x: px(left + deep), y: px(top + along) } : { x: px(left + along), y: px(top + deep) };
}

function line(plan: Plan, className: string, from: Place, to: Place): SvgNode {
  const [a, b] = [at(plan, from), at(plan, to)];
  return node("line", { class: className, x1: a.x, y1: a.y, x2: b.x, y2: b.y });
}

function planOf({ crests, spread, top, width }: CrestChoice): Plan {
  const back = crests.flatMap(({ now, low, high }) => (now === undefined ? [low, high] : [now, low, high]));
  if (top) back.push(top.frontBass, top.frontTreble, top.frontBass + top.thickness, top.frontTreble + top.thickness);
  const first = Math.min(0, ...back) - 1;
  const last = Math.max(...back) + 1;
  const upright = width < 560;
  if (upright) return { upright, scale: 7.5, first, last, left: 58, top: 22 };
  return { upright, scale: (width - 16) / (spread + 2 * beyond), first, last, left: 8, top: 40 };
}

function topMark(plan: Plan, spread: number, top: NonNullable<CrestChoice["top"]>): SvgNode {
  const slope = (top.frontTreble - top.frontBass) / spread;
  const corner = (across: number, deep: number): string => {
    const { x, y } = at(plan, { across, back: top.frontBass + slope * across + deep });
    return `${x},${y}`;
  };
  const [bass, treble] = [1 - beyond, spread + beyond - 1];
  const corners = [corner(bass, 0), corner(treble, 0), corner(treble, top.thickness), corner(bass, top.thickness)];
  return node("path", { class: "saddle-top", d: `M${corners.join("L")}Z` });
}

function crestMarks(plan: Plan, across: number, crest: DrawnCrest, bottom: number): SvgNode[] {
  const [nearest, farthest] = [at(plan, { across, back: crest.low }), at(plan, { across, back: crest.high })];
  const dot = at(plan, { across, back: crest.wanted });
  const half = 9 / plan.scale;
  const name = at(plan, { across, back: plan.first });
  const words = at(plan, { across, back: plan.last });
  const className = crest.fits ? "label" : "label broken";
  return [
    line(plan, "string-seen", { across, back: plan.first }, { across, back: plan.last }),
    node("rect", {
      class: "crest-range",
      x: plan.upright ? nearest.x : px(nearest.x - 4),
      y: plan.upright ? px(nearest.y - 4) : nearest.y,
      width: plan.upright ? px(farthest.x - nearest.x) : 8,
      height: plan.upright ? 8 : px(farthest.y - nearest.y),
    }),
    ...(crest.now === undefined
      ? []
      : [line(plan, "now", { across: across - half, back: crest.now }, { across: across + half, back: crest.now })]),
    node("circle", { class: crest.fits ? "after" : "after broken", cx: dot.x, cy: dot.y, r: 4.5 }),
    plan.upright
      ? node("text", { class: "label", x: px(name.x - 6), y: px(name.y + 4), "text-anchor": "end" }, crest.name)
      : node("text", { class: "label", x: name.x, y: 14, "text-anchor": "middle" }, crest.name),
    plan.upright
      ? node("text", { class: className, x: px(words.x + 8), y: px(words.y + 4) }, crest.words)
      : node("text", { class: className, x: words.x, y: px(bottom - 8), "text-anchor": "middle" }, crest.words),
  ];
}

/** The saddle from above, in true proportion. */
export function crestPicture(choice: CrestChoice): SvgNode {
  const { crests, spread, top, width } = choice;
  const plan = planOf(choice);
  const end = at(plan, { across: spread + beyond, back: plan.last });
  const height = plan.upright ? end.y + 6 : end.y + 26;
  const zero = at(plan, { across: -beyond, back: 0 });
  const across = (crest: DrawnCrest): number =>
    crests.length < 2 ? spread / 2 : (spread * (crests.length - crest.string)) / (crests.length - 1);
  return node(
    "svg",
    { viewBox: `0 0 ${width} ${px(height)}`, width, height: px(height) },
    ...(top ? [topMark(plan, spread, top)] : []),
    line(plan, "scale-length", { across: -beyond, back: 0 }, { across: spread + beyond, back: 0 }),
    ...crests.flatMap((crest) => crestMarks(plan, across(crest), crest, height)),
    plan.upright
      ? node("text", { class: "label soft", x: px(zero.x - 4), y: 14 }, "scale length")
      : node("text", { class: "label soft", x: 8, y: px(zero.y - 5) }, "scale length"),
  );
}
