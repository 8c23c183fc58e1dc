import { bench, improvedBench } from "../api/benchCalls";
import type { BenchAnswer } from "../api/benchShapes";
import { lineFor } from "../api/client";
import { minutesAt } from "../trade/clock";
import { compared, movedWords } from "./benchCompared";

const idleMs = 1500;
const refreshMs = 300_000;
const tickMs = 15_000;
const worthSwapping = 0.001; // of the cost: less is not worth moving the picture for

/**
 * The bench's plan, kept up with the book: asked for anew after every tap and when the page is looked at again. An answer
 * to an older question is dropped. While nothing is being done the program searches on, and a cheaper plan is put in its
 * place.
 */
export class BenchWatch {
  answer = $state.raw<BenchAnswer>();
  trouble = $state<string>();
  /** Minutes since 1970 by the shop's clock, which runs on between answers. */
  now = $state(0);
  improving = $state(false);
  /** What the longer search's plan moved; empty: nothing. */
  found = $state("");
  #round = 0;
  #heardAt = 0;
  #running: AbortController | undefined;
  #idle: ReturnType<typeof setTimeout> | undefined;
  /** Whether the page is in the middle of something that a new picture would disturb. */
  readonly #busy: () => boolean;

  constructor(busy: () => boolean = () => false) {
    this.#busy = busy;
  }

  start(): () => void {
    void this.load();
    const tick = setInterval(() => this.#tick(), tickMs);
    const refresh = setInterval(() => this.#unlessBusy(), refreshMs);
    const seen = (): void => {
      if (document.visibilityState === "visible") this.#unlessBusy();
    };
    document.addEventListener("visibilitychange", seen);
    return () => {
      clearInterval(tick);
      clearInterval(refresh);
      document.removeEventListener("visibilitychange", seen);
      this.#callOff();
    };
  }

  async load(): Promise<void> {
    this.#callOff();
    const mine = this.#round;
    const calledOff = new AbortController();
    this.#running = calledOff;
    try {
      const answer = await bench(undefined, calledOff.signal);
      if (mine !== this.#round) return;
      this.#hear(answer);
      this.trouble = undefined;
      if (answer.plan) this.#idle = setTimeout(() => void this.#improve(mine), idleMs);
    } catch (refused) {
      if (mine === this.#round) this.trouble = lineFor(refused);
    }
  }

  /** Loads, and says what moved since the plan before; undefined where there is nothing to compare. */
  async loadAndCompare(): Promise<string | undefined> {
    const before = this.answer;
    await this.load();
    return before?.plan && this.answer?.plan && this.answer !== before ? movedWords(before, this.answer) : undefined;
  }

  async #improve(mine: number): Promise<void> {
    const calledOff = new AbortController();
    this.#running = calledOff;
    this.improving = true;
    try {
      const better = await improvedBench(calledOff.signal);
      const before = this.answer;
      if (mine !== this.#round || this.#busy() || !before?.plan || !better.plan) return;
      if (better.plan.cost.total >= before.plan.cost.total * (1 - worthSwapping)) return;
      this.#hear(better);
      if (compared(before, better, 0).delayed.length > 0)
        this.found = `A better plan was found. ${movedWords(before, better)}`;
    } catch {
      // The plan there is stands; a longer search is a kindness and no answer is owed.
    } finally {
      if (mine === this.#round) this.improving = false;
    }
  }

  #hear(answer: BenchAnswer): void {
    this.answer = answer;
    this.#heardAt = Date.now();
    this.now = minutesAt(answer.now);
  }

  #tick(): void {
    if (this.answer) this.now = minutesAt(this.answer.now) + (Date.now() - this.#heardAt) / 60_000;
  }

  #unlessBusy(): void {
    if (!this.#busy()) void this.load();
  }

  #callOff(): void {
    this.#round += 1;
    clearTimeout(this.#idle);
    this.#running?.abort();
    this.found = "";
    this.improving = false;
  }
}
