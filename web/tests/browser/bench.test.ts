import { readFile } from "node:fs/promises";
import type { Browser, Page } from "playwright-core";
import { afterEach, beforeEach, expect, test } from "vitest";
import {
  accessibilityTrouble,
  desktop,
  layoutTrouble,
  openPage,
  overlappingWords,
  phone,
  shoot,
  startBrowser,
  visit,
} from "./browser";
import { type RunningShop, startShop } from "./shop";

/** A Friday in the invented shop, at twenty to eleven: one person at the frets, two instruments curing. */
const friday = "2026-02-20";
const morning = "10:40";

let shop: RunningShop;
let browser: Browser;

beforeEach(async () => {
  [shop, browser] = await Promise.all([startShop(friday, morning), startBrowser()]);
});

afterEach(async () => {
  await browser?.close();
  await shop?.stop();
});

interface Plan {
  readonly work: {
    operation: string;
    instrument: string;
    operation_id: string;
    pinned?: { day: string; minute: number };
  }[];
  readonly plan?: {
    operations: { instrument: string; operation: string; person: string; starts: { day: string; minute: number } }[];
  };
}

async function planned(): Promise<Plan> {
  return (await (await fetch(`${shop.address}/api/bench`)).json()) as Plan;
}

async function look(page: Page, name: string): Promise<void> {
  await shoot(page, name);
  expect(await layoutTrouble(page)).toEqual([]);
  expect(await overlappingWords(page)).toEqual([]);
  expect(await accessibilityTrouble(page)).toEqual([]);
}

test.each([
  { name: "phone", viewport: phone, scheme: "light" },
  { name: "desktop", viewport: desktop, scheme: "light" },
  { name: "desktop-dark", viewport: desktop, scheme: "dark" },
] as const)("Today, Bench and Shop are whole on a $name", async ({ name, viewport, scheme }) => {
  const { context, page, complaints } = await openPage(browser, shop.address, viewport, scheme);
  try {
    await visit(page, "/");
    await page.getByRole("heading", { name: "Curing" }).waitFor();
    expect(new URL(page.url()).pathname).toBe("/today");
    await look(page, `today-${name}`);
    await visit(page, "/bench");
    await page.locator("svg .hands").first().waitFor({ state: "attached" });
    await look(page, `bench-${name}`);
    await visit(page, "/shop");
    await page.getByRole("heading", { name: "People" }).waitFor();
    await look(page, `shop-${name}`);
    expect(complaints).toEqual([]);
  } finally {
    await context.close();
  }
});

test("a newcomer stops what hands are at, reads the caution, starts the next and sees it run", async () => {
  const { context, page, complaints } = await openPage(browser, shop.address, phone);
  try {
    await visit(page, "/today");
    const ines = page.getByRole("article", { name: "Ines" });
    await ines.getByText("25 min at it").waitFor();
    const curing = page.getByRole("region", { name: "Curing" });
    expect(await curing.getByRole("listitem").count()).toBe(1);
    expect(await curing.textContent()).toMatch(/1 day 23 h left/);
    await ines.getByText("Tapped late? Which glue?").click();
    await ines.getByLabel("Minutes hands were at it").fill("20");
    await ines.getByRole("button", { name: /^Done/ }).click();
    await page.getByText("Level frets is done.").waitFor();
    const start = ines.locator("button.big", { hasText: "Start" });
    await start.waitFor();
    const stop = await start.boundingBox();
    expect(stop?.height ?? 0).toBeGreaterThanOrEqual(48);

    const tobias = page.getByRole("article", { name: "Tobias" });
    const [caution, tap] = await Promise.all([
      tobias.locator(".caution").first().boundingBox(),
      tobias.locator("button.big").boundingBox(),
    ]);
    expect(caution?.y ?? 1e9).toBeLessThan(tap?.y ?? 0);
    await start.click();
    await page.getByText(/^Ines began /).waitFor();
    await ines.getByRole("button", { name: /^Done/ }).waitFor();
    const finished = (await planned()).work.filter((work) => work.operation_id === "level_frets");
    expect(finished).toEqual([]);
    expect(complaints).toEqual([]);
  } finally {
    await context.close();
  }
});

test("the shop's air holds spraying back and says why", async () => {
  const { context, page } = await openPage(browser, shop.address, desktop);
  try {
    await visit(page, "/today");
    const air = page.getByRole("region", { name: "The air" });
    expect(await air.getByText(/Holds back: spray one lacquer coat/).count()).toBe(3);
    await air.getByLabel("Humidity, %").fill("71");
    await air.getByLabel("Temperature, °C").fill("20");
    await air.getByRole("button", { name: "Keep the air" }).click();
    await page.getByText("The air of today is kept.").waitFor();
    await air.getByText("71 %").waitFor();
    expect(await air.getByText(/Holds back: spray one lacquer coat. It wants at most 60 %/).count()).toBe(4);
    const spraying = (await planned()).plan?.operations.find((one) => one.operation.startsWith("Spray one lacquer"));
    expect(spraying?.starts.day).toBe("2026-02-24");
  } finally {
    await context.close();
  }
});

test("an operation is pinned on the bench by keys alone, shown so, and let go", async () => {
  const { context, page, complaints } = await openPage(browser, shop.address, desktop);
  try {
    await visit(page, "/bench");
    const first = page.getByRole("button", { name: /^Short intake.*tall through saddle; / });
    await first.focus();
    await page.keyboard.press("Enter");
    const ghost = async (): Promise<number> => {
      const text = (await page.locator(".ghost").textContent())?.trim() ?? "";
      const [, day = "", time = ""] = /^\w+ (\d+ \w+) (\d+:\d+)$/.exec(text) ?? [];
      return Date.parse(`${day} 2026 ${time.padStart(5, "0")} UTC`) / 60_000;
    };
    const before = await ghost();
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("ArrowRight");
    await page.keyboard.press("ArrowRight");
    const after = await ghost();
    expect(after - before).toBe(1440 + 30);
    await page.keyboard.press("Enter");
    await page.getByText(/is pinned to/).waitFor();
    await page.locator("svg .pin").waitFor({ state: "attached" });
    const pinned = (await planned()).work.find((work) => work.pinned)?.pinned;
    expect(Date.parse(`${pinned?.day}T00:00:00Z`) / 60_000 + (pinned?.minute ?? 0)).toBe(after);
    await shoot(page, "bench-pinned");
    await page.getByRole("button", { name: /^Short intake.*tall through saddle.*pinned$/ }).focus();
    await page.keyboard.press("Delete");
    await page
      .getByText(/is let go\. The small twelve-fret with the tall through saddle is ready 2 days sooner, Sat 7 Mar\./)
      .waitFor();
    expect((await planned()).work.some((work) => work.pinned)).toBe(false);
    await page.keyboard.press("t");
    await page.getByRole("table", { name: /Every operation of the plan/ }).waitFor();
    expect(await accessibilityTrouble(page)).toEqual([]);
    expect(complaints).toEqual([]);
  } finally {
    await context.close();
  }
});

test("a block dragged to another day is pinned there, and what that moves is said", async () => {
  const { context, page, complaints } = await openPage(browser, shop.address, desktop);
  try {
    await visit(page, "/bench");
    const block = page.getByRole("button", { name: /^Short intake.*tall through saddle; / });
    await block.scrollIntoViewIfNeeded();
    const from = await block.boundingBox();
    if (!from) throw new Error("the block is not there");
    await page.mouse.move(from.x + 5, from.y + 12);
    await page.mouse.down();
    await page.mouse.move(from.x + 200, from.y + 14, { steps: 8 });
    await page.locator(".ghost").waitFor();
    await page.mouse.move(from.x + 420, from.y + 14, { steps: 8 });
    await page.mouse.up();
    await page.getByText(/is pinned to .*(is ready|No instrument's day moves)/).waitFor();
    expect((await planned()).work.filter((work) => work.pinned).length).toBe(1);
    expect(await page.getByText(/made without this pin|cannot be had/).count()).toBe(0);
    await shoot(page, "bench-dragged");
    expect(complaints).toEqual([]);
  } finally {
    await context.close();
  }
});

test("a pin that the plan cannot keep is told once and is not said to be pinned", async () => {
  const { context, page, complaints } = await openPage(browser, shop.address, desktop);
  try {
    await visit(page, "/bench");
    await page.getByRole("button", { name: /^Short intake.*tall through saddle; / }).focus();
    await page.getByLabel("Pin to day").fill("2026-03-01");
    await page.getByRole("button", { name: "Pin", exact: true }).click();
    await page.getByText(/cannot be had Sun 1 Mar at .*as said above/).waitFor();
    await page.getByText(/is pinned to Sun 1 Mar .*but nobody who can do it is there/).waitFor();
    await shoot(page, "bench-not-kept");
    expect(complaints).toEqual([]);
  } finally {
    await context.close();
  }
});

test("a part that comes late holds its instrument back, and how much its lateness counts is kept", async () => {
  const { context, page, complaints } = await openPage(browser, shop.address, phone);
  try {
    await visit(page, "/bench");
    await page.getByRole("button", { name: /^Short intake.*tall through saddle; / }).focus();
    await page.getByText("When the instrument is wanted").click();
    await page.getByLabel("Waits for a part or the owner until").fill("2026-03-09");
    await page.getByLabel("Its lateness counts").selectOption({ label: "3 times as much" });
    await page.getByRole("button", { name: "Keep", exact: true }).click();
    await page.getByText(/Kept; the bench is planned anew\. .*tall through saddle.* is ready \d+ days later/).waitFor();
    const answer = (await (await fetch(`${shop.address}/api/bench`)).json()) as {
      instruments: { instrument: string; weight: number; waits_until?: string }[];
    };
    const held = answer.instruments.find((one) => one.waits_until !== undefined);
    expect(held).toMatchObject({ weight: 3, waits_until: "2026-03-09" });
    await shoot(page, "bench-part-late");
    expect(complaints).toEqual([]);
  } finally {
    await context.close();
  }
});

test("what the plan weighs is changed in plain words on the Shop page, and the plan costs by it", async () => {
  const { context, page, complaints } = await openPage(browser, shop.address, phone);
  const inShop = async (): Promise<number> => {
    const answer = (await (await fetch(`${shop.address}/api/bench`)).json()) as { plan: { cost: { in_shop: number } } };
    return answer.plan.cost.in_shop;
  };
  try {
    const before = await inShop();
    await visit(page, "/shop");
    const day = page.getByLabel("A day in the shop");
    expect(await day.inputValue()).toBe("1");
    await day.fill("100");
    await page.getByRole("button", { name: "Keep the shop" }).click();
    await page.getByText("Kept. The bench is planned by it from now on.").waitFor();
    expect(await inShop()).toBeGreaterThan(50 * before);
    await visit(page, "/shop");
    expect(await page.getByLabel("A day in the shop").inputValue()).toBe("100");
    expect(await accessibilityTrouble(page)).toEqual([]);
    expect(complaints).toEqual([]);
  } finally {
    await context.close();
  }
});

test("one more is tried on the bench, and a day is promised with its chance", async () => {
  const { context, page, complaints } = await openPage(browser, shop.address, desktop);
  try {
    await visit(page, "/bench");
    await page.getByLabel("Instrument whose jobs are not agreed").selectOption({ index: 0 });
    await page.getByRole("button", { name: "See whom it delays" }).click();
    await page.getByText(/would be ready .*could be promised for/).waitFor();
    expect(await page.getByText(/It delays nobody by a day|later|keep their days/).count()).toBeGreaterThan(0);
    await page.getByRole("button", { name: "Work out what can be promised" }).click();
    const promise = page.getByRole("button", { name: /^Promise it: the walnut mid-size/ }).first();
    await promise.click();
    await page.getByText(/the walnut mid-size .*: promised for /).waitFor();
    await shoot(page, "bench-promised");
    expect(await accessibilityTrouble(page)).toEqual([]);
    expect(complaints).toEqual([]);
  } finally {
    await context.close();
  }
});

test("promises and cure ends are taken along as a calendar file, and the address says who reaches it", async () => {
  const { context, page, complaints } = await openPage(browser, shop.address, phone);
  try {
    for (const path of ["/today", "/bench"]) {
      await visit(page, path);
      const link = page.getByRole("link", { name: /as a calendar file/ });
      await link.waitFor();
      const [file] = await Promise.all([page.waitForEvent("download"), link.click()]);
      expect(file.suggestedFilename()).toBe("bench.ics");
      const text = await readFile(await file.path(), "utf8");
      expect(text.startsWith("BEGIN:VCALENDAR\r\n")).toBe(true);
      expect(text.match(/^UID:cure-/gm)?.length).toBe(1);
      await page.getByText("Keep a diary up to date by itself").click();
      const feed = await page.getByLabel("Address of the calendar").inputValue();
      expect(feed).toBe(`${shop.address}/api/bench/calendar.ics`);
      await page.getByText(/a telephone or another computer does not/).waitFor();
      expect(await accessibilityTrouble(page)).toEqual([]);
    }
    expect(complaints).toEqual([]);
  } finally {
    await context.close();
  }
});

test("work that one leaves to the other on the Shop page is planned for the other, until one is alone", async () => {
  const { context, page, complaints } = await openPage(browser, shop.address, phone);
  const ofNuts = ["take_nut_off", "fit_nut_blank", "slot_nut", "make_through_saddle", "shape_saddle_crown"];
  const handsAtNuts = async (): Promise<Set<string>> => {
    const { plan, work } = await planned();
    const nuts = work.filter((one) => ofNuts.includes(one.operation_id));
    const done = plan?.operations.filter((one) =>
      nuts.some((nut) => nut.instrument === one.instrument && nut.operation === one.operation),
    );
    return new Set(done?.map((one) => one.person));
  };
  const left = (who: string) =>
    page.getByRole("group", { name: who }).getByRole("checkbox", { name: /^nut and saddle work/ });
  const keep = () => page.getByRole("button", { name: "Keep the shop" }).click();
  try {
    expect(await handsAtNuts()).toContain("Tobias");
    await visit(page, "/shop");
    await left("Tobias").focus();
    await page.keyboard.press("Space");
    await look(page, "shop-left-to-others");
    await keep();
    await page.getByText("Kept. The bench is planned by it from now on.").waitFor();
    expect(await handsAtNuts()).toEqual(new Set(["Ines"]));

    await visit(page, "/shop");
    expect(await left("Tobias").isChecked()).toBe(true);
    await left("Ines").check();
    await keep();
    await page.getByText("leaves_to_others: nut and saddle work is left to others by everyone").waitFor();
    await page.getByRole("button", { name: "Remove Tobias" }).click();
    await page.getByText("Ines is alone now and leaves nothing to others any more.").waitFor();
    expect(await page.getByRole("group", { name: "Leaves to others" }).count()).toBe(0);
    await keep();
    await page.getByText("Kept. The bench is planned by it from now on.").waitFor();
    expect(complaints.filter((line) => !line.includes("422"))).toEqual([]);
  } finally {
    await context.close();
  }
});

test("hours written on the Shop page change the plan", async () => {
  const { context, page, complaints } = await openPage(browser, shop.address, desktop);
  try {
    await visit(page, "/shop");
    await page.getByLabel("Friday").first().fill("nine to five");
    await page.getByLabel("Friday").first().blur();
    await page.getByText("Write hours as 9:00-12:30, 13:00-17:30.").waitFor();
    await page.getByLabel("Friday").first().fill("");
    await page.getByLabel("Friday").first().blur();
    await page.getByRole("button", { name: "Keep the shop" }).click();
    await page.getByText("Kept. The bench is planned by it from now on.").waitFor();
    const answer = (await (await fetch(`${shop.address}/api/shop/settings`)).json()) as {
      people: { name: string; hours: { weekday: number }[] }[];
    };
    expect(answer.people[0]?.hours.filter((hours) => hours.weekday === 5)).toEqual([]);
    expect(complaints).toEqual([]);
  } finally {
    await context.close();
  }
});
