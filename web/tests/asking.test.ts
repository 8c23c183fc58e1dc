import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { inBackground } from "../src/api/background";
import { Refusal } from "../src/api/client";
import { newest } from "../src/api/newest";

/** Answers that arrive when the test says so. */
class Slow {
  readonly asked: {
    question: string;
    signal: AbortSignal;
    answer: (text: string) => void;
    fail: (e: unknown) => void;
  }[] = [];
  readonly ask = (question: string, signal: AbortSignal): Promise<string> =>
    new Promise((answer, fail) => {
      this.asked.push({ question, signal, answer, fail });
    });
  at(i: number) {
    const found = this.asked[i];
    if (!found) throw new Error(`question ${i} was not asked`);
    return found;
  }
}

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

const settled = () => vi.advanceTimersByTimeAsync(0);

describe("the newest question", () => {
  test("is asked at once, and while one is on its way only the newest of the rest is kept", async () => {
    const slow = new Slow();
    const heard: string[] = [];
    const asking = newest(
      slow.ask,
      (answer) => heard.push(answer),
      () => undefined,
    );
    asking.ask("a");
    asking.ask("b");
    asking.ask("c");
    expect(slow.asked.map(({ question }) => question)).toEqual(["a"]);
    slow.at(0).answer("A");
    await settled();
    expect(slow.asked.map(({ question }) => question)).toEqual(["a", "c"]);
    slow.at(1).answer("C");
    await settled();
    expect(heard).toEqual(["A", "C"]);
  });

  test("is not heard after it was called off", async () => {
    const slow = new Slow();
    const heard: string[] = [];
    const asking = newest(
      slow.ask,
      (answer) => heard.push(answer),
      () => undefined,
    );
    asking.ask("a");
    asking.ask("b");
    asking.stop();
    expect(slow.at(0).signal.aborted).toBe(true);
    slow.at(0).answer("A");
    await settled();
    expect(heard).toEqual([]);
    expect(slow.asked).toHaveLength(1);
  });

  test("is asked also after one was refused", async () => {
    const slow = new Slow();
    const heard: string[] = [];
    const refused: unknown[] = [];
    const asking = newest(
      slow.ask,
      (answer) => heard.push(answer),
      (trouble) => refused.push(trouble),
    );
    asking.ask("a");
    asking.ask("b");
    slow.at(0).fail(new Refusal("a: no"));
    await settled();
    slow.at(1).answer("B");
    await settled();
    expect(refused).toHaveLength(1);
    expect(heard).toEqual(["B"]);
  });
});

describe("questions in the background", () => {
  const hurried = { restMs: 150, atOnce: 2, againMs: 400 };

  test("wait for a rest and go two at a time", async () => {
    const slow = new Slow();
    const heard: string[] = [];
    const work = inBackground(
      slow.ask,
      (answer: string) => heard.push(answer),
      () => undefined,
      hurried,
    );
    work.start(["1", "2", "3"]);
    await vi.advanceTimersByTimeAsync(149);
    expect(slow.asked).toHaveLength(0);
    await vi.advanceTimersByTimeAsync(1);
    expect(slow.asked.map(({ question }) => question)).toEqual(["1", "2"]);
    slow.at(1).answer("two");
    await settled();
    expect(slow.asked.map(({ question }) => question)).toEqual(["1", "2", "3"]);
    slow.at(0).answer("one");
    slow.at(2).answer("three");
    await settled();
    expect(heard).toEqual(["two", "one", "three"]);
  });

  test("of a round that was called off are not heard, however late they come", async () => {
    const slow = new Slow();
    const heard: string[] = [];
    const work = inBackground(
      slow.ask,
      (answer: string) => heard.push(answer),
      () => undefined,
      hurried,
    );
    work.start(["old"]);
    await vi.advanceTimersByTimeAsync(150);
    work.start(["new"]);
    expect(slow.at(0).signal.aborted).toBe(true);
    await vi.advanceTimersByTimeAsync(150);
    slow.at(1).answer("NEW");
    await settled();
    slow.at(0).answer("OLD");
    await settled();
    expect(heard).toEqual(["NEW"]);
  });

  test("are asked again when the program is busy, and given up when it refuses", async () => {
    const slow = new Slow();
    const heard: string[] = [];
    const refused: unknown[] = [];
    const work = inBackground(
      slow.ask,
      (answer: string) => heard.push(answer),
      (e) => refused.push(e),
      hurried,
    );
    work.start(["1"]);
    await vi.advanceTimersByTimeAsync(150);
    slow.at(0).fail(new Refusal("6 questions are waiting already; ask again", true));
    await vi.advanceTimersByTimeAsync(400);
    slow.at(1).answer("one");
    await settled();
    expect(heard).toEqual(["one"]);
    work.start(["2"]);
    await vi.advanceTimersByTimeAsync(150);
    slow.at(2).fail(new Refusal("relief_mm: 9 mm is outside -1.5..3 mm"));
    await settled();
    expect(refused).toHaveLength(1);
  });
});
