import { Refusal } from "./client";

export interface BackgroundChoice {
  /** How long nothing must move before anything is asked. */
  readonly restMs: number;
  /** How many questions are on their way at once; few, so that the sliders' own questions never wait for a connection. */
  readonly atOnce: number;
  /** How long to wait before asking again when the program was too busy. */
  readonly againMs: number;
}

export const unhurried: BackgroundChoice = { restMs: 150, atOnce: 2, againMs: 400 };
const most_tries = 8;

/**
 * Asks a list of long questions after a rest, few at a time. Each start is a new round: the round before is called off
 * and nothing of it is heard any more, however late its answers come.
 */
export function inBackground<Question, Answer>(
  asking: (question: Question, signal: AbortSignal) => Promise<Answer>,
  hear: (answer: Answer, question: Question) => void,
  complain: (trouble: unknown) => void,
  { restMs, atOnce, againMs }: BackgroundChoice = unhurried,
): { start: (questions: readonly Question[]) => void; stop: () => void } {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let round = 0;
  let running: AbortController | undefined;

  const stop = (): void => {
    clearTimeout(timer);
    round += 1;
    running?.abort();
    running = undefined;
  };

  const pause = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms));

  const asked = async (question: Question, signal: AbortSignal): Promise<Answer> => {
    for (let tries = 1; ; tries += 1) {
      try {
        return await asking(question, signal);
      } catch (trouble) {
        if (!(trouble instanceof Refusal && trouble.busy) || tries >= most_tries || signal.aborted) throw trouble;
        await pause(againMs);
        if (signal.aborted) throw trouble;
      }
    }
  };

  const run = (questions: readonly Question[]): void => {
    const mine = round;
    const calledOff = new AbortController();
    running = calledOff;
    const waiting = [...questions];
    const one = async (): Promise<void> => {
      for (let question = waiting.shift(); question !== undefined && mine === round; question = waiting.shift()) {
        try {
          const answer = await asked(question, calledOff.signal);
          if (mine === round) hear(answer, question);
        } catch (trouble) {
          if (mine !== round) return;
          stop();
          complain(trouble);
        }
      }
    };
    for (let i = 0; i < atOnce; i += 1) void one();
  };

  const start = (questions: readonly Question[]): void => {
    stop();
    timer = setTimeout(() => run(questions), restMs);
  };

  return { start, stop };
}
