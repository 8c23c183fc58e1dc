import { describe, expect, test } from "vitest";
import { dayNumber, isoDay, monthStarts, shortDay, spokenDay } from "../src/trade/day";
import { inTrade, nearestSixtyFourth } from "../src/trade/length";
import { signedNumber } from "../src/trade/signed";

// From the definition of the inch, 25.4 mm; that the program prints the same is checked in tests/browser/length.test.ts.
describe("a length is printed three ways", () => {
  const cases: [number, string, string, string][] = [
    [(5 * 25.4) / 64, "5/64", ".078", "1.98 mm"],
    [2.06, "5/64 + .003", ".081", "2.06 mm"],
    [3.175, "8/64", ".125", "3.18 mm"],
    [25.4, "1 in", "1.000 in", "25.40 mm"],
    [28.7, "1 8/64 + .005", "1.130 in", "28.70 mm"],
    [0.05, ".002", ".002", "0.05 mm"],
    [0, "0", ".000", "0.00 mm"],
    [-2.06, "-5/64 - .003", "-.081", "-2.06 mm"],
    [-0.001, "0", ".000", "0.00 mm"],
  ];
  for (const [mm, sixtyFourths, thousandths, millimetres] of cases) {
    test(`${mm} mm`, () => expect(inTrade(mm)).toEqual({ sixtyFourths, thousandths, mm: millimetres }));
  }

  test("a tick shows the nearest 64th alone", () => {
    expect(nearestSixtyFourth(2.0)).toBe("5/64");
    expect(nearestSixtyFourth(-0.4)).toBe("-1/64");
    expect(nearestSixtyFourth(0.1)).toBe("0");
  });
});

describe("days", () => {
  test("go to a number and back, leap days too", () => {
    for (const iso of ["1999-12-31", "2024-02-29", "2026-03-29", "2100-03-01"])
      expect(isoDay(dayNumber(iso))).toBe(iso);
    expect(dayNumber("2024-03-01") - dayNumber("2024-02-28")).toBe(2);
  });

  test("are spoken without a locale", () => {
    expect(spokenDay("2026-02-04")).toBe("4 Feb 2026");
    expect(shortDay("2026-12-31")).toBe("31 Dec");
  });

  test("months begin once each, over the turn of a year", () => {
    expect(monthStarts(dayNumber("2025-11-15"), dayNumber("2026-02-01")).map(isoDay)).toEqual([
      "2025-12-01",
      "2026-01-01",
      "2026-02-01",
    ]);
  });
});

describe("changes", () => {
  test("carry their sign unless they round to nothing", () => {
    expect([0.004, -0.004, 0.006, -1.25].map((value) => signedNumber(value, 2))).toEqual([
      "0.00",
      "0.00",
      "+0.01",
      "−1.25",
    ]);
  });
});
